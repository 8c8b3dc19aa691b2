#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "sections.hpp"
#include "spoken.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

// Drivers with a smaller share than this are not named, nor more than so many.
constexpr double kWorthNaming = 0.1;
constexpr std::size_t kMostNamed = 3;

// Below this the shares leave out what should be said; beyond that much a straight line misleads.
constexpr double kWellExplained = 0.9;
constexpr double kBent = 0.05;

/// A column of the table; `cell` shows its figure for candidate c.
struct Figure {
  std::string header;
  std::function<std::string(std::size_t c)> cell;
};

std::vector<Figure> figures(const Shown& s, const decide::Uncertainty& doubt) {
  const auto& of = doubt.candidates;
  const auto& all = s.all.candidates;
  std::vector<Figure> list = {
      {"kWh",
       [&](std::size_t c) {
         return with_range(units::in_kilowatt_hours(all[c].energy), of[c].energy_kwh);
       }},
      {fmt::format("{} {}", s.is_year() ? "a year" : "cost", s.currency()), [&](std::size_t c) {
         return with_range(units::in_currency(all[c].cost.cost), of[c].cost);
       }}};
  if (const auto& lifetime = all.front().lifetime) {
    list.push_back(
        {fmt::format("{}-year cost {}", lifetime->years, s.currency()), [&](std::size_t c) {
           return with_range(all[c].lifetime->present_cost, *of[c].present_cost);
         }});
  }
  if (doubt.best_two && of.size() > 1) {
    list.push_back({"costs least", [&](std::size_t c) { return percent_of(*of[c].cheapest); }});
  }
  return list;
}

Table doubt_table(const Shown& s) {
  const decide::Uncertainty& doubt = *s.all.uncertainty;
  const std::vector<Figure> columns = figures(s, doubt);
  Table table{{{"", Align::left}}, {}};
  for (const Figure& figure : columns) table.columns.push_back({figure.header, Align::right});
  for (std::size_t c = 0; c < doubt.candidates.size(); ++c) {
    table.rows.push_back({s.study.candidates[c].id});
    for (const Figure& figure : columns) table.rows.back().push_back(figure.cell(c));
  }
  return table;
}

/// `between A and B`; of one candidate `about A`.
std::string about_whom(const Shown& s, const decide::Uncertainty& doubt) {
  const auto [first, second] = *doubt.best_two;
  const auto& candidates = s.study.candidates;
  if (first == second) return "about " + candidates[first].name;
  return fmt::format("between {} and {}", candidates[first].name, candidates[second].name);
}

std::string drivers(const Shown& s, const decide::Uncertainty& doubt) {
  if (doubt.drivers.empty()) return "";
  std::vector<std::string> others;
  for (std::size_t d = 1; d < std::min(doubt.drivers.size(), kMostNamed); ++d) {
    if (doubt.drivers[d].share < kWorthNaming) break;
    others.push_back(
        fmt::format("{} ({})", doubt.drivers[d].key, percent_of(doubt.drivers[d].share)));
  }
  const decide::Driver& first = doubt.drivers.front();
  return fmt::format("Settle {} first: it holds {} of the doubt {}.{}", first.key,
                     percent_of(first.share), about_whom(s, doubt),
                     others.empty() ? "" : fmt::format(" Then {}.", listed(others)));
}

std::string unexplained(const decide::Uncertainty& doubt) {
  if (doubt.drivers.empty() || doubt.explained >= kWellExplained) return "";
  return fmt::format(
      "Each range by itself explains {} of that doubt; the rest is interplay and bends.",
      percent_of(doubt.explained));
}

}  // namespace

// Where a cap, a curve or a bill's kink makes the straight-line estimate wrong.
std::vector<std::string> bends(const Shown& s) {
  const decide::Uncertainty& doubt = *s.all.uncertainty;
  std::vector<std::string> sentences;
  for (std::size_t c = 0; c < doubt.candidates.size(); ++c) {
    const decide::CandidateDoubt& of = doubt.candidates[c];
    const double drawn = (of.present_cost ? *of.present_cost : of.cost).sd;
    if (std::fabs(of.first_order_sd - drawn) <= kBent * std::max(of.first_order_sd, drawn)) {
      continue;
    }
    sentences.push_back(fmt::format(
        "{}: straight lines would make the standard deviation of its cost {}, the draws make it "
        "{}. The draws are right: a cap, a curve, blocks or a minimum bill bend the lines.",
        s.study.candidates[c].name, money(of.first_order_sd, s.currency()),
        money(drawn, s.currency())));
  }
  return sentences;
}

Section doubt(const Shown& s) {
  const decide::Uncertainty& doubt = *s.all.uncertainty;
  const std::string open = counted(doubt.ranges, "figure");
  Section section{
      "How sure",
      {Paragraph{fmt::format(
           "{} of the files {}. In {} draws of {} (seed {}) these were the results, with "
           "the central one first and 95 of 100 within the brackets:",
           open, doubt.ranges == 1 ? "is a range" : "are ranges", doubt.draws,
           doubt.ranges == 1 ? "it" : "all of them", doubt.seed)},
       doubt_table(s)}};
  List list;
  if (doubt.best_two) list.items = {drivers(s, doubt), unexplained(doubt)};
  for (const std::string& sentence : bends(s)) list.items.push_back(sentence);
  list.items.erase(std::remove(list.items.begin(), list.items.end(), ""), list.items.end());
  if (!list.items.empty()) section.blocks.emplace_back(list);
  return section;
}

}  // namespace wattweek::report
