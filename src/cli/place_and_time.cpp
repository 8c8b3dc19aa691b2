#include "cli/place_and_time.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <system_error>

#include "wattweek/calendar/zone_database.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

constexpr int kMonths = 12;
constexpr int kFirstYear = 1970;
constexpr int kLastYear = 9998;  // The study's last day is then still a date of TOML.
constexpr std::string_view kFallback = "Etc/UTC";

bool exists(const std::string& zone) {
  const auto any_start = std::chrono::year(2027) / std::chrono::January;
  return std::holds_alternative<calendar::ZoneRules>(
      calendar::zone_rules(zone, any_start, kMonths));
}

/// What stands behind the database's folder in a path; else the whole.
std::string name_in(const std::string& path) {
  constexpr std::string_view kFolder = "zoneinfo/";
  const std::size_t at = path.rfind(kFolder);
  return at == std::string::npos ? path : path.substr(at + kFolder.size());
}

std::variant<std::chrono::year_month, Misuse> month(const std::string& text) {
  constexpr std::string_view kShape = "0000-00";
  bool fits = text.size() == kShape.size();
  for (std::size_t i = 0; fits && i < text.size(); ++i) {
    fits = kShape[i] == '-' ? text[i] == '-' : text[i] >= '0' && text[i] <= '9';
  }
  const int year = fits ? std::stoi(text.substr(0, 4)) : 0;
  const int month = fits ? std::stoi(text.substr(5)) : 0;
  if (year >= kFirstYear && year <= kLastYear && month >= 1 && month <= kMonths) {
    return std::chrono::year(year) / month;
  }
  return Misuse{
      fmt::format("--start: found '{}', accepted is a month such as 2027-01, in the years {} to {}",
                  text, kFirstYear, kLastYear)};
}

std::optional<Misuse> read_zone(const Arguments& arguments, PlaceAndTime& all) {
  if (const auto name = arguments.value("zone")) {
    const auto rules = calendar::zone_rules(*name, all.start, kMonths);
    if (const auto* missing = std::get_if<calendar::NoZone>(&rules)) {
      return Misuse{fmt::format("--zone: found '{}': {}", *name, missing->reason)};
    }
    all.zone = *name;
    all.zone_source = Source::given;
    return std::nullopt;
  }
  const auto own = zone_of_machine(std::getenv("TZ"), "/etc/localtime");
  all.zone = own.value_or(std::string(kFallback));
  all.zone_source = own ? Source::machine : Source::guess;
  return std::nullopt;
}

}  // namespace

std::optional<std::string> zone_of_machine(const char* tz, const std::string& local_time) {
  std::string named = tz != nullptr ? tz : "";
  if (named.compare(0, 1, ":") == 0) named.erase(0, 1);
  std::error_code no_link, no_file;
  // The link itself comes first: its end may be the file of another name of the zone.
  const std::array<std::string, 3> names = {name_in(named),
                                            name_in(fs::read_symlink(local_time, no_link).string()),
                                            name_in(fs::canonical(local_time, no_file).string())};
  for (const std::string& name : names) {
    if (exists(name)) return name;
  }
  return std::nullopt;
}

std::variant<PlaceAndTime, Misuse> place_and_time_of(const Arguments& arguments,
                                                     std::chrono::year_month_day today) {
  PlaceAndTime all;
  all.start = today.year() / std::chrono::January;
  if (const auto text = arguments.value("start")) {
    const auto start = month(*text);
    if (const auto* misuse = std::get_if<Misuse>(&start)) return *misuse;
    all.start = std::get<std::chrono::year_month>(start);
    all.is_start_given = true;
  }
  if (const auto misuse = read_zone(arguments, all)) return *misuse;
  return all;
}

}  // namespace wattweek::cli
