#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "sections.hpp"

namespace wattweek::report {
namespace {

std::string contract(const Shown& s) {
  return fmt::format("Electricity contract: {}, in {}", s.study.tariff.name, s.currency());
}

/// A column of the table of candidates; `cell` shows its figure for candidate c.
struct Figure {
  std::string header;
  std::function<std::string(std::size_t c)> cell;
};

bool any_purchase(const model::Study& study) {
  return std::any_of(study.candidates.begin(), study.candidates.end(), [](const auto& candidate) {
    return units::in_currency(candidate.purchase.central()) != 0;
  });
}

std::vector<Figure> energy_figures(const Shown& s) {
  return {
      {"kWh",
       [&s](std::size_t c) { return s.kwh(units::in_kilowatt_hours(s.all.candidates[c].energy)); }},
      {"mean W",
       [&s](std::size_t c) { return s.watts(units::in_watts(s.all.candidates[c].mean)); }}};
}

/// The cost of the study, times a factor.
Figure cost_figure(const Shown& s, std::string_view what, double factor) {
  return {fmt::format("{} {}", what, s.currency()),
          [&s, factor](std::size_t c) { return s.cost(s.all.candidates[c].cost.cost * factor); }};
}

std::vector<Figure> cost_figures(const Shown& s) {
  std::vector<Figure> figures;
  if (!s.is_year()) figures.push_back(cost_figure(s, "cost", 1));
  figures.push_back(cost_figure(s, "a year", 12.0 / s.study.months));
  figures.push_back(cost_figure(s, "a month", 1.0 / s.study.months));
  return figures;
}

std::vector<Figure> lifetime_figures(const Shown& s) {
  const std::string& currency = s.currency();
  const auto& lifetime = s.all.candidates.front().lifetime;
  std::vector<Figure> figures;
  if (any_purchase(s.study) || lifetime) {
    figures.push_back({fmt::format("purchase {}", currency), [&s](std::size_t c) {
                         return s.cost(s.study.candidates[c].purchase.central());
                       }});
  }
  if (lifetime) {
    figures.push_back(
        {fmt::format("{}-year cost* {}", lifetime->years, currency),
         [&s](std::size_t c) { return s.cost(s.all.candidates[c].lifetime->present_cost); }});
  }
  if (s.study.carbon_kg_per_kwh) {
    figures.push_back({"CO2 kg", [&s](std::size_t c) {
                         return rounded(s.all.candidates[c].co2_kg.value_or(0), 0);
                       }});
  }
  return figures;
}

std::string name_in_table(const Shown& s, Scope scope, std::size_t c) {
  std::string name = s.study.candidates[c].name;
  if (scope == Scope::compare && c == s.all.baseline) name += " (baseline)";
  if (s.all.candidates[c].lower_bound) name += " (at least)";
  return name;
}

Table candidates_table(const Shown& s, Scope scope) {
  std::vector<Figure> figures = energy_figures(s);
  for (const auto& more : {cost_figures(s), lifetime_figures(s)}) {
    figures.insert(figures.end(), more.begin(), more.end());
  }
  Table table{{{"", Align::left}}, {}};
  for (const Figure& figure : figures) table.columns.push_back({figure.header, Align::right});
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    table.rows.push_back({name_in_table(s, scope, c)});
    for (const Figure& figure : figures) table.rows.back().push_back(figure.cell(c));
  }
  return table;
}

}  // namespace

std::string period(const Shown& s) {
  const auto end = s.study.start + std::chrono::months(s.study.months);
  return fmt::format("{} to {}, {} days, {} hours, {}",
                     calendar::to_text(calendar::first_day(s.study.start)),
                     calendar::to_text(calendar::first_day(end) - std::chrono::days(1)), s.all.days,
                     rounded(s.all.hours, 2), s.study.time_zone);
}

Section overview(const Shown& s, Scope scope) {
  Section section{"", {Paragraph{period(s)}, Paragraph{contract(s)}, candidates_table(s, scope)}};
  if (s.all.candidates.front().lifetime) {
    section.blocks.emplace_back(Paragraph{
        "* Purchase, electricity and later costs less resale, each at its present value."});
  }
  return section;
}

}  // namespace wattweek::report
