#include "tariff_reader.hpp"

#include <algorithm>
#include <utility>

#include "blocks.hpp"
#include "ids.hpp"
#include "numbers.hpp"

namespace wattweek::read {

namespace {

constexpr NumberRule kTax{Bounds::not_negative, Unit::fraction};
constexpr NumberRule kMinimum{Bounds::not_negative, Unit::money};
constexpr std::string_view kCurrencyAccepted =
    "the three capital letters of a currency (ISO 4217) in quotes, such as \"EUR\"";

bool is_letter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); }

std::string upper_case(std::string_view text) {
  std::string upper(text);
  for (char& c : upper) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return upper;
}

std::string currency_hint(std::string_view text) {
  if (text.size() == 3 && std::all_of(text.begin(), text.end(), is_letter)) {
    return "write " + in_quotes(upper_case(text));
  }
  return "";
}

std::string read_currency(const Table& table) {
  const auto value = table.require("currency", kCurrencyAccepted);
  if (!value) return "";
  const std::string text = value->node().value_exact<std::string>().value_or("");
  const bool letters = std::all_of(text.begin(), text.end(), is_letter);
  if (text.size() == 3 && letters && text == upper_case(text)) return text;
  value->refuse(kCurrencyAccepted, currency_hint(text));
  return "";
}

std::optional<model::MoneyRange> read_money(const Table& table, std::string_view key,
                                            NumberRule rule) {
  const auto value = table.find(key);
  if (!value) return std::nullopt;
  const auto range = read_range(*value, rule);
  return range ? std::optional(as<units::Money>(*range)) : std::nullopt;
}

// One window by its keys, or several in `when`.
std::vector<model::Window> read_band_windows(const Table& band) {
  const auto when = band.find("when");
  if (!when) return {read_window(band)};
  if (has_window_keys(band)) {
    band.file().report(band.key_place("when"),
                       band.name_of("when") +
                           ": the band has days, hours, months or dates of its own as well; "
                           "expected either these or when");
  }
  std::vector<model::Window> windows;
  for (const Table& window : band.repeated("when")) windows.push_back(read_window(window));
  if (when->node().is_array() && when->elements().empty()) {
    when->refuse("at least one window, such as [ { days = \"sat,sun\" } ]");
  }
  return windows;
}

model::Band read_band(const Table& table, Names& names) {
  model::Band band;
  band.place = table.place();
  if (const auto name = table.require("name", "the band's name in quotes")) {
    band.name = read_text(*name, "the band's name in quotes").value_or("");
    if (!band.name.empty()) names.add(*name, band.name);
  }
  if (const auto price = table.require("price", accepted_range(kPrice))) {
    band.price = as<units::UnitPrice>(read_range(*price, kPrice).value_or(units::Range<double>()));
    band.price_place = price->place();
  }
  band.when = read_band_windows(table);
  return band;
}

// A contract of blocks alone has one band at no price.
model::Band free_band(const diag::Place& place) {
  model::Band band;
  band.name = "all";
  band.when = {model::Window()};
  band.when.front().place = place;
  band.place = place;
  band.price_place = place;
  return band;
}

void read_bands(const Table& table, TariffDraft& draft) {
  Names names("band", "name");
  for (const Table& band : table.repeated("band")) {
    draft.tariff.bands.push_back(read_band(band, names));
  }
  draft.bands_place = table.place();
  if (const auto value = table.find("band")) {
    draft.bands_place = value->place();
    if (draft.tariff.bands.empty() && value->node().is_array()) {
      value->refuse("at least one [[" + table.name_of("band") + "]]");
    }
    return;
  }
  if (draft.tariff.blocks.empty() && !table.has("block")) {
    table.file().report(table.place(), table.name_of("band") +
                                           " is missing: expected at least one [[" +
                                           table.name_of("band") + "]] with name and price");
  }
  draft.tariff.bands.push_back(free_band(table.place()));
}

void read_charges(const Table& table, model::Tariff& tariff) {
  if (const auto tax = table.find("tax")) {
    tariff.tax = read_range(*tax, kTax).value_or(units::Range<double>());
  }
  tariff.standing_per_day =
      read_money(table, "standing_per_day", kMoney).value_or(model::MoneyRange());
  tariff.standing_per_month =
      read_money(table, "standing_per_month", kMoney).value_or(model::MoneyRange());
  tariff.minimum_per_month = read_money(table, "minimum_per_month", kMinimum);
}

void read_tariff_holidays(const Table& table, const model::Holidays& of_study,
                          model::Tariff& tariff) {
  HolidayList own = read_holidays(table);
  tariff.has_own_holidays = own.is_given;
  tariff.holidays = std::move(own.holidays);
  if (own.is_given) return;
  tariff.holidays.dates = of_study.dates;
  tariff.holidays.places = of_study.places;
}

}  // namespace

TariffDraft read_tariff(const Table& table, const std::string& default_name,
                        const model::Holidays& study_holidays) {
  TariffDraft draft;
  model::Tariff& tariff = draft.tariff;
  tariff.place = table.place();
  tariff.name = default_name;
  if (const auto name = table.find("name")) {
    tariff.name = read_text(*name, "the tariff's name in quotes").value_or(default_name);
  }
  tariff.currency = read_currency(table);
  read_charges(table, tariff);
  read_tariff_holidays(table, study_holidays, tariff);
  tariff.blocks = read_blocks(table);
  if (const auto per = table.find("blocks_per")) {
    const auto word = read_word(*per, {"month", "day"});
    if (word == std::size_t{1}) tariff.blocks_per = model::BlocksPer::day;
  }
  read_bands(table, draft);
  return draft;
}

TariffDraft read_tariff_file(File& file, const toml::table& root,
                             const model::Holidays& study_holidays) {
  return read_tariff(Table(file, root, ""), stem(file.name()), study_holidays);
}

}  // namespace wattweek::read
