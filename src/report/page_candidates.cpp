#include "page_candidates.hpp"

#include <fmt/format.h>

#include <functional>

#include "page_figures.hpp"
#include "sections.hpp"
#include "spoken.hpp"

namespace wattweek::report {
namespace {

/// A column of the table of candidates; `cell` shows its figure for candidate c.
struct Figured {
  std::string header;
  std::function<std::string(std::size_t c)> cell;
};

/// `spread` of a candidate's doubt, where somebody drew; else the figure alone.
template <class Spread>
std::string maybe_range(const Shown& s, std::size_t c, double value, const std::string& alone,
                        const Spread& spread) {
  if (!s.all.uncertainty) return alone;
  return with_range(value, spread(s.all.uncertainty->candidates[c]));
}

std::vector<Figured> energy_columns(const Shown& s) {
  return {{fmt::format("kWh {}", over_the_study(s)),
           [&s](std::size_t c) {
             const double kwh = units::in_kilowatt_hours(s.all.candidates[c].energy);
             return maybe_range(s, c, kwh, spoken(kwh),
                                [](const auto& doubt) { return doubt.energy_kwh; });
           }},
          {"W on average",
           [&s](std::size_t c) { return spoken(units::in_watts(s.all.candidates[c].mean)); }}};
}

std::vector<Figured> cost_columns(const Shown& s) {
  const auto amount = [&s](double value) { return spoken_amount(value, s.currency()); };
  return {{fmt::format("{} {}", s.currency(), over_the_study(s)),
           [&s, amount](std::size_t c) {
             const double cost = units::in_currency(s.all.candidates[c].cost.cost);
             return maybe_range(s, c, cost, amount(cost),
                                [](const auto& doubt) { return doubt.cost; });
           }},
          {"purchase " + s.currency(), [&s, amount](std::size_t c) {
             return amount(units::in_currency(s.study.candidates[c].purchase.central()));
           }}};
}

Figured present_cost_column(const Shown& s) {
  return {fmt::format("{} {}", s.currency(), over_the_horizon(s)), [&s](std::size_t c) {
            const double cost = s.all.candidates[c].lifetime->present_cost;
            return maybe_range(s, c, cost, spoken_amount(cost, s.currency()),
                               [](const auto& doubt) { return *doubt.present_cost; });
          }};
}

/// Money first: on a telephone the last columns are not seen at once.
std::vector<Figured> columns_of(const Shown& s) {
  std::vector<Figured> columns = cost_columns(s);
  if (s.all.candidates.front().lifetime) columns.push_back(present_cost_column(s));
  for (Figured& column : energy_columns(s)) columns.push_back(std::move(column));
  if (s.study.carbon_kg_per_kwh) {
    columns.push_back({fmt::format("kg CO2 {}", over_the_study(s)), [&s](std::size_t c) {
                         return spoken(s.all.candidates[c].co2_kg.value_or(0));
                       }});
  }
  return columns;
}

std::string name_of(const Shown& s, std::size_t c) {
  std::string name = s.study.candidates[c].name;
  if (s.all.candidates[c].lower_bound) name += " (at least)";
  return name;
}

}  // namespace

NamedTable spoken_candidates(const Shown& s) {
  const std::vector<Figured> columns = columns_of(s);
  NamedTable named{"candidates", period(s), {{{"", Align::left}}, {}}};
  for (const Figured& column : columns) named.table.columns.push_back({column.header});
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    auto& row = named.table.rows.emplace_back();
    row.push_back(name_of(s, c));
    for (const Figured& column : columns) row.push_back(column.cell(c));
  }
  return named;
}

NamedTable cheapest(const Shown& s) {
  NamedTable named{
      "cheapest",
      fmt::format("In how many of the trials each one costs least {}", over_the_horizon(s)),
      {{{"", Align::left}, {"costs least in"}}, {}}};
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    named.table.rows.push_back(
        {s.study.candidates[c].name, percent_of(*s.all.uncertainty->candidates[c].cheapest)});
  }
  return named;
}

NamedTable all_devices(const Shown& s) {
  NamedTable all{"devices", "Devices: energy, mean and highest watts", {}};
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    Table table = devices_table(s, c);
    all.table.columns = std::move(table.columns);
    for (auto& row : table.rows) {
      row.insert(row.begin() + 1, s.study.candidates[c].name);
      all.table.rows.push_back(std::move(row));
    }
  }
  all.table.columns.insert(all.table.columns.begin() + 1, {"part of", Align::left});
  return all;
}

}  // namespace wattweek::report
