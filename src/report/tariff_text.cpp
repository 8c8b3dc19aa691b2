#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "day_words.hpp"
#include "document.hpp"
#include "numbers.hpp"
#include "tariff_terms.hpp"
#include "wattweek/billing/tariff_law.hpp"
#include "wattweek/calendar/tariff_time.hpp"
#include "wattweek/diag/printable.hpp"
#include "wattweek/report/file_alone.hpp"
#include "wattweek/report/words.hpp"
#include "wattweek/units/currency.hpp"

namespace wattweek::report {
namespace {

constexpr std::size_t kMostLines = 120;  // More are no table that anybody reads.
constexpr std::size_t kMostDates = 6;
constexpr const char* kNoBandHolds = "no band";

bool has_tax(const model::Tariff& tariff) { return tariff.tax.low != 0 || tariff.tax.high != 0; }

/// For each band its name, and its price before tax and, where there is one, with tax.
struct PricedBands {
  std::vector<std::string> names;
  std::vector<std::vector<std::string>> prices;
};

PricedBands priced_bands(const model::Tariff& tariff) {
  std::vector<units::Range<double>> before;
  std::vector<units::Range<double>> with;
  for (const model::Band& band : tariff.bands) {
    before.push_back({in_currency_per_kilowatt_hour(band.price.low),
                      in_currency_per_kilowatt_hour(band.price.high)});
    with.push_back(billing::with_tax(before.back(), tariff.tax));
  }
  const int decimals = decimals_that_show(before, units::minor_digits(tariff.currency), 6);
  const int with_decimals = decimals_that_show(with, decimals, std::max(decimals, 4));
  PricedBands bands;
  for (std::size_t b = 0; b < before.size(); ++b) {
    bands.names.push_back(tariff.bands[b].name);
    bands.prices.push_back({range_text(before[b], decimals)});
    if (has_tax(tariff)) bands.prices.back().push_back(range_text(with[b], with_decimals));
  }
  return bands;
}

Table empty_table(const model::Tariff& tariff) {
  Table table;
  table.columns = {{"days", Align::left}, {"hours", Align::left}, {"band", Align::left}};
  if (has_tax(tariff)) {
    table.columns.push_back({"before tax"});
    table.columns.push_back({"with tax"});
  } else {
    table.columns.push_back({"price"});
  }
  return table;
}

/// The hours of a day in one band, in the order in which the day meets the bands.
struct BandHours {
  std::uint32_t band = 0;
  std::vector<std::string> hours;
};

std::vector<BandHours> by_band(const std::vector<calendar::Stretch>& stretches) {
  std::vector<BandHours> all;
  for (const calendar::Stretch& stretch : stretches) {
    auto of_band = std::find_if(all.begin(), all.end(), [&stretch](const BandHours& known) {
      return known.band == stretch.band;
    });
    if (of_band == all.end()) of_band = all.insert(all.end(), {stretch.band, {}});
    of_band->hours.push_back(clock_words(stretch.begin_min) + "-" + clock_words(stretch.end_min));
  }
  return all;
}

/// So many stretches of hours to a row; what is said once is not said again below.
void append_days(Table& table, const PricedBands& bands, const calendar::PricedDays& priced,
                 std::size_t hours_in_row) {
  std::string label = day_words(priced);
  for (const auto& [band, hours] : by_band(priced.stretches)) {
    const bool held = band != calendar::kNoBand;
    for (std::size_t i = 0; i < hours.size(); i += hours_in_row) {
      std::vector<std::string> row = {std::exchange(label, ""), hours[i]};
      if (hours_in_row == 2 && i + 1 < hours.size()) row.back() += ", " + hours[i + 1];
      if (i == 0) row.push_back(held ? bands.names[band] : kNoBandHolds);
      if (i == 0 && held)
        row.insert(row.end(), bands.prices[band].begin(), bands.prices[band].end());
      row.resize(table.columns.size());
      table.rows.push_back(std::move(row));
    }
  }
}

/// The first kinds of day, until the table grows too long, and how many are left out.
struct DaysTable {
  Table table;
  std::size_t left_out = 0;
};

DaysTable days_in_rows_of(const model::Tariff& tariff, const calendar::TariffWalk& walk,
                          std::size_t hours_in_row) {
  const PricedBands bands = priced_bands(tariff);
  DaysTable all{empty_table(tariff)};
  for (std::size_t i = 0; i < walk.days.size(); ++i) {
    if (all.table.rows.size() >= kMostLines) {
      all.left_out = walk.days.size() - i;
      break;
    }
    append_days(all.table, bands, walk.days[i], hours_in_row);
  }
  return all;
}

/// Columns that all but the first column of a table take.
std::size_t width_of_figures(const Table& table) {
  std::size_t width = 0;
  for (std::size_t i = 1; i < table.columns.size(); ++i) {
    std::size_t widest = 0;
    for (const auto& row : table.rows) {
      widest = std::max(widest, diag::column_count(diag::printable(row[i])));
    }
    width += widest + 2;
  }
  return width;
}

/// Two stretches of hours to a row where that leaves room to name the days.
DaysTable days_table(const model::Tariff& tariff, const calendar::TariffWalk& walk, int columns) {
  constexpr std::size_t kRoomForDays = 20;
  DaysTable wide = days_in_rows_of(tariff, walk, 2);
  const std::size_t needed = width_of_figures(wide.table) + kRoomForDays;
  if (needed <= static_cast<std::size_t>(std::max(columns, 0))) return wide;
  return days_in_rows_of(tariff, walk, 1);
}

std::vector<std::string> carried_over_days(const calendar::CarriedOver& carried_over) {
  std::vector<std::string> days;
  if (carried_over.after_holidays) days.emplace_back("the day after a holiday");
  for (unsigned m = 0; m < 12; ++m) {
    if (carried_over.first_of[m]) days.push_back("1 " + month_word(m));
  }
  const std::size_t count = carried_over.dates.size();
  for (std::size_t i = 0; i < std::min(count, kMostDates); ++i) {
    days.push_back(calendar::to_text(carried_over.dates[i]));
  }
  if (count > kMostDates) days.push_back(fmt::format("{} more", count - kMostDates));
  return days;
}

void append_remarks(List& list, const calendar::TariffWalk& walk) {
  if (walk.carried_over.until_min > 0) {
    list.items.push_back(fmt::format(
        "Hours over midnight belong to the day on which they start. So until {} these begin as the "
        "day before goes on: {}.",
        clock_words(walk.carried_over.until_min), listed(carried_over_days(walk.carried_over))));
  }
  for (const calendar::PricedDays& priced : walk.days) {
    for (const calendar::Stretch& stretch : priced.stretches) {
      if (stretch.band != calendar::kNoBand) continue;
      list.items.emplace_back(
          "Where it says no band, none holds: a study in which such a day occurs is refused.");
      return;
    }
  }
}

}  // namespace

std::string tariff_text(const model::Tariff& tariff, const calendar::TariffWalk& walk,
                        const Style& style) {
  Document said;
  said.title =
      tariff.blocks.empty()
          ? fmt::format("What the next kWh costs, in {}", tariff.currency)
          : fmt::format("What the bands add to the price of the next kWh, in {}", tariff.currency);
  Section section;
  List list;
  auto [table, left_out] = days_table(tariff, walk, style.columns);
  if (!table.rows.empty()) section.blocks.emplace_back(std::move(table));
  if (left_out > 0) list.items.push_back(fmt::format("{} more kinds of day.", left_out));
  if (walk.days.empty()) {
    list.items.push_back(fmt::format("The bands name {} spans of dates: too many for a table.",
                                     calendar::date_spans(tariff).size()));
  }
  append_remarks(list, walk);
  for (std::string& term : terms(tariff)) list.items.push_back(std::move(term));
  section.blocks.emplace_back(std::move(list));
  said.sections.push_back(std::move(section));
  return lay_out_text(said, style);
}

}  // namespace wattweek::report
