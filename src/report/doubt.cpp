#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "sections.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

// Drivers with a smaller share than this are not named, nor more than so many.
constexpr double kWorthNaming = 0.1;
constexpr std::size_t kMostNamed = 3;

// Below this the shares leave out what should be said; beyond that much a straight line misleads.
constexpr double kWellExplained = 0.9;
constexpr double kBent = 0.05;

/// As few digits as tell both ends apart: `56.7 (53.5 to 59.8)`; without brackets where nothing is
/// open.
std::string with_range(double central, const decide::Spread& spread) {
  const double width = spread.p97_5 - spread.p2_5;
  const int decimals = width >= 5 ? 0 : width >= 0.5 ? 1 : 2;
  const std::string middle = fixed(central, decimals);
  const std::string low = fixed(spread.p2_5, decimals);
  const std::string high = fixed(spread.p97_5, decimals);
  return low == middle && high == middle ? middle : fmt::format("{} ({} to {})", middle, low, high);
}

std::string percent(double fraction) {
  const std::string text = rounded(100 * fraction, 0);
  if (fraction > 0 && text == "0") return "below 1 %";
  if (fraction < 1 && text == "100") return "above 99 %";
  return text + " %";
}

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
    list.push_back({"costs least", [&](std::size_t c) { return percent(*of[c].cheapest); }});
  }
  return list;
}

Table table(const Shown& s, const decide::Uncertainty& doubt) {
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
    others.push_back(fmt::format("{} ({})", doubt.drivers[d].key, percent(doubt.drivers[d].share)));
  }
  const decide::Driver& first = doubt.drivers.front();
  return fmt::format("Settle {} first: it holds {} of the doubt {}.{}", first.key,
                     percent(first.share), about_whom(s, doubt),
                     others.empty() ? "" : fmt::format(" Then {}.", listed(others)));
}

std::string unexplained(const decide::Uncertainty& doubt) {
  if (doubt.drivers.empty() || doubt.explained >= kWellExplained) return "";
  return fmt::format(
      "Each range by itself explains {} of that doubt; the rest is interplay and bends.",
      percent(doubt.explained));
}

/// Where a cap, a curve or a bill's kink makes the straight-line estimate wrong.
std::vector<std::string> bends(const Shown& s, const decide::Uncertainty& doubt) {
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

}  // namespace

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
       table(s, doubt)}};
  List list;
  if (doubt.best_two) list.items = {drivers(s, doubt), unexplained(doubt)};
  for (const std::string& sentence : bends(s, doubt)) list.items.push_back(sentence);
  list.items.erase(std::remove(list.items.begin(), list.items.end(), ""), list.items.end());
  if (!list.items.empty()) section.blocks.emplace_back(list);
  return section;
}

}  // namespace wattweek::report
