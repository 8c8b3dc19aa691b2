#include "cli/fit_options.hpp"

#include <fmt/format.h>

#include <array>
#include <chrono>

#include "cli/outcome.hpp"
#include "wattweek/calendar/zone_database.hpp"

namespace wattweek::cli {
namespace {

// Logs lie within these years.
constexpr auto kFirstMonth = std::chrono::year(1970) / std::chrono::January;
constexpr int kMonths = 131 * 12;
constexpr double kLongestGap_s = 366 * 86'400.0;

template <class T, std::size_t N>
using Choices = std::array<std::pair<std::string_view, T>, N>;

constexpr Choices<logs::Kind, 3> kKinds = {{{"power", logs::Kind::power},
                                            {"energy", logs::Kind::energy},
                                            {"counter", logs::Kind::counter}}};
constexpr Choices<logs::Stamps, 2> kStamps = {
    {{"start", logs::Stamps::start}, {"end", logs::Stamps::end}}};
constexpr Choices<logs::DateOrder, 3> kOrders = {
    {{"dmy", logs::DateOrder::dmy}, {"mdy", logs::DateOrder::mdy}, {"ymd", logs::DateOrder::ymd}}};
constexpr Choices<logs::Unit, 4> kUnits = {{{"W", logs::Unit::w},
                                            {"kW", logs::Unit::kw},
                                            {"Wh", logs::Unit::wh},
                                            {"kWh", logs::Unit::kwh}}};
constexpr Choices<char, 2> kDecimals = {{{".", '.'}, {",", ','}}};
constexpr Choices<char, 8> kDelimiters = {{{",", ','},
                                           {";", ';'},
                                           {"\t", '\t'},
                                           {" ", ' '},
                                           {"|", '|'},
                                           {"tab", '\t'},
                                           {"blank", ' '},
                                           {"blanks", ' '}}};

template <class T, std::size_t N>
std::optional<Misuse> choose(const Arguments& arguments, std::string_view option,
                             const Choices<T, N>& choices, std::optional<T>& chosen) {
  const auto text = arguments.value(option);
  if (!text) return std::nullopt;
  std::vector<std::string_view> accepted;
  for (const auto& [word, value] : choices) {
    accepted.push_back(word);
    if (word != *text) continue;
    chosen = value;
    return std::nullopt;
  }
  return Misuse{fmt::format("--{}: found '{}'{}", option, *text, suggestion(*text, accepted))};
}

// A list of marks would be one of commas among commas: it is said in words.
template <std::size_t N>
std::optional<Misuse> choose_mark(const Arguments& arguments, std::string_view option,
                                  const Choices<char, N>& choices, std::string_view accepted,
                                  std::optional<char>& chosen) {
  if (!choose(arguments, option, choices, chosen)) return std::nullopt;
  return Misuse{
      fmt::format("--{}: found '{}', accepted is {}", option, *arguments.value(option), accepted)};
}

// Begins of `time=`, `power=` and `energy=`, each at the front or behind a comma: a name may hold
// commas.
std::size_t next_key(const std::string& text, std::size_t from) {
  for (std::size_t at = from; at < text.size(); ++at) {
    if (at > 0 && text[at - 1] != ',') continue;
    for (const std::string_view key : {"time=", "power=", "energy="}) {
      if (text.compare(at, key.size(), key) == 0) return at;
    }
  }
  return text.size();
}

std::optional<Misuse> read_columns(const Arguments& arguments, logs::LogOptions& options) {
  const auto text = arguments.value("columns");
  if (!text) return std::nullopt;
  const auto wrong = [&] {
    return Misuse{fmt::format(
        "--columns: found '{}', accepted is time=NAME,power=NAME or time=NAME,energy=NAME, or one "
        "of the two parts",
        *text)};
  };
  if (next_key(*text, 0) != 0) return wrong();
  for (std::size_t at = 0; at < text->size();) {
    const std::size_t next = next_key(*text, at + 1);
    const std::size_t equals = text->find('=', at);
    const std::size_t end = next < text->size() ? next - 1 : next;
    const std::string key = text->substr(at, equals - at);
    const std::string name = text->substr(equals + 1, end - equals - 1);
    auto& column = key == "time"    ? options.time_column
                   : key == "power" ? options.power_column
                                    : options.energy_column;
    if (name.empty() || column) return wrong();
    column = name;
    at = next;
  }
  if (options.power_column && options.energy_column) return wrong();
  return std::nullopt;
}

std::optional<Misuse> read_where(const Arguments& arguments, logs::LogOptions& options) {
  const auto text = arguments.value("where");
  if (!text) return std::nullopt;
  const std::size_t equals = text->find('=');
  if (equals == std::string::npos || equals == 0) {
    return Misuse{fmt::format("--where: found '{}', accepted is COLUMN=VALUE", *text)};
  }
  options.where.emplace(text->substr(0, equals), text->substr(equals + 1));
  return std::nullopt;
}

std::optional<Misuse> read_gap(const Arguments& arguments, FitRequest& request) {
  const auto text = arguments.value("gap");
  if (!text) return std::nullopt;
  const auto gap = number("gap", *text, {0, kLongestGap_s, "a number of seconds, up to a year"});
  if (const auto* misuse = std::get_if<Misuse>(&gap)) return *misuse;
  request.gap_s = std::get<double>(gap);
  return std::nullopt;
}

std::optional<Misuse> read_meter(const Arguments& arguments, FitRequest& request) {
  const auto text = arguments.value("meter-error");
  if (!text) return std::nullopt;
  const std::size_t comma = text->find(',');
  if (comma == std::string::npos || text->find(',', comma + 1) != std::string::npos) {
    return Misuse{fmt::format(
        "--meter-error: found '{}', accepted is PERCENT,WATTS with decimal points, such as 2,0.5",
        *text)};
  }
  const auto percent =
      number("meter-error", text->substr(0, comma), {0, 100, "a percentage from 0 to 100"});
  if (const auto* misuse = std::get_if<Misuse>(&percent)) return *misuse;
  const auto watts = number("meter-error", text->substr(comma + 1), {0, 1'000, "watts, 0 to 1000"});
  if (const auto* misuse = std::get_if<Misuse>(&watts)) return *misuse;
  request.meter = metering::MeterError{std::get<double>(percent), std::get<double>(watts)};
  return std::nullopt;
}

std::optional<Misuse> read_zone(const Arguments& arguments, FitRequest& request) {
  const auto name = arguments.value("zone");
  if (!name) return std::nullopt;
  auto rules = calendar::zone_rules(*name, kFirstMonth, kMonths);
  if (const auto* missing = std::get_if<calendar::NoZone>(&rules)) {
    return Misuse{fmt::format("--zone: found '{}': {}", *name, missing->reason)};
  }
  request.zone_name = *name;
  request.zone = std::get<calendar::ZoneRules>(std::move(rules));
  request.options.zone = request.zone;
  return std::nullopt;
}

std::optional<Misuse> goes_together(const Arguments& arguments) {
  if (arguments.has("force") && !arguments.has("profile")) {
    return Misuse{"--force: goes with --profile"};
  }
  return std::nullopt;
}

}  // namespace

std::variant<FitRequest, Misuse> fit_request(const Arguments& arguments) {
  FitRequest request;
  request.log = arguments.operands.front();
  logs::LogOptions& options = request.options;
  const auto format = format_of(*command_named("fit"), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return *misuse;
  request.format = std::get<std::string>(format);
  if (auto wrong = goes_together(arguments)) return *wrong;
  if (auto wrong = read_zone(arguments, request)) return *wrong;
  if (auto wrong = choose(arguments, "kind", kKinds, options.kind)) return *wrong;
  if (auto wrong = choose(arguments, "stamps", kStamps, options.stamps)) return *wrong;
  if (auto wrong = choose(arguments, "date-order", kOrders, options.date_order)) return *wrong;
  if (auto wrong = choose(arguments, "unit", kUnits, options.unit)) return *wrong;
  if (auto wrong = choose_mark(arguments, "decimal", kDecimals, ". or ,", options.decimal)) {
    return *wrong;
  }
  if (auto wrong = choose_mark(arguments, "delimiter", kDelimiters,
                               "one of , ; | or the word tab or blank", options.delimiter)) {
    return *wrong;
  }
  if (auto wrong = read_columns(arguments, options)) return *wrong;
  if (auto wrong = read_where(arguments, options)) return *wrong;
  if (auto wrong = read_gap(arguments, request)) return *wrong;
  if (auto wrong = read_meter(arguments, request)) return *wrong;
  request.activity = arguments.value("activity");
  request.profile = arguments.value("profile");
  request.tariff = arguments.value("tariff");
  request.force = arguments.has("force");
  return request;
}

}  // namespace wattweek::cli
