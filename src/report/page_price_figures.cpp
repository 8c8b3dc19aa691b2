// Pictures of what would change the answer: other levels of electricity prices.

#include <fmt/format.h>

#include <algorithm>

#include "page_figures.hpp"
#include "spoken.hpp"
#include "wattweek/decide/ranking.hpp"

namespace wattweek::report {
namespace {

constexpr const char* kPricesTitle = "What does it cost if electricity prices change?";
constexpr const char* kFactor = "electricity prices, times today's";

std::size_t best_at(const decide::PriceSweep& sweep, std::size_t point) {
  return decide::best_of(sweep.criteria.size(),
                         [&](std::size_t c) { return sweep.criteria[c][point]; });
}

/// Where another candidate becomes the cheapest, between two neighbouring points.
std::optional<decide::Crossing> turn_between(const decide::PriceSweep& sweep, std::size_t point) {
  const std::size_t below = best_at(sweep, point);
  const std::size_t above = best_at(sweep, point + 1);
  if (below == above) return std::nullopt;
  for (const decide::Crossing& crossing : sweep.crossings) {
    const bool is_pair = std::minmax(crossing.first, crossing.second) == std::minmax(below, above);
    if (is_pair && crossing.at >= sweep.factors[point] && crossing.at <= sweep.factors[point + 1]) {
      return crossing;
    }
  }
  return std::nullopt;
}

/// The value at a factor, on the straight line between the points around it.
double at_factor(const decide::PriceSweep& sweep, const std::vector<double>& values,
                 double factor) {
  const auto above = std::upper_bound(sweep.factors.begin(), sweep.factors.end() - 1, factor);
  const auto i =
      static_cast<std::size_t>(std::max(above, sweep.factors.begin() + 1) - sweep.factors.begin());
  const double part = (factor - sweep.factors[i - 1]) / (sweep.factors[i] - sweep.factors[i - 1]);
  return values[i - 1] + part * (values[i] - values[i - 1]);
}

chart::Marker today() { return {1, {}, "today"}; }

std::vector<chart::Marker> turns_of(const decide::PriceSweep& sweep) {
  std::vector<chart::Marker> markers;
  for (std::size_t p = 0; p + 1 < sweep.factors.size(); ++p) {
    if (const auto turn = turn_between(sweep, p)) {
      markers.push_back({turn->at, at_factor(sweep, sweep.criteria[turn->first], turn->at),
                         "equal at " + rounded(turn->at, 3)});
    }
  }
  return markers;
}

std::string cheapest_told(const Shown& s, const decide::PriceSweep& sweep) {
  const auto name = [&](std::size_t point) {
    return s.study.candidates[best_at(sweep, point)].name;
  };
  std::string words = fmt::format("With free electricity {} costs least", name(0));
  for (std::size_t p = 0; p + 1 < sweep.factors.size(); ++p) {
    if (const auto turn = turn_between(sweep, p)) {
      words +=
          fmt::format("; from {} times today's prices on {}", rounded(turn->at, 3), name(p + 1));
    }
  }
  return words + fmt::format(", up to {} times.", rounded(sweep.factors.back(), 1));
}

Table prices_table(const Shown& s, const decide::PriceSweep& sweep) {
  Table table{{{"times today's prices", Align::left}}, {}};
  for (const model::Candidate& candidate : s.study.candidates) {
    table.columns.push_back({fmt::format("{} {}", candidate.name, s.currency())});
  }
  for (std::size_t p = 0; p < sweep.factors.size(); ++p) {
    auto& row = table.rows.emplace_back();
    row.push_back(fixed(sweep.factors[p], 2));
    for (const auto& of_candidate : sweep.criteria) {
      row.push_back(spoken_amount(of_candidate[p], s.currency()));
    }
  }
  return table;
}

Table lead_table(const Shown& s, const decide::PriceSweep& sweep) {
  const decide::Lead& lead = *sweep.lead;
  Table table{{{"times today's prices", Align::left}, {"more " + s.currency()}}, {}};
  if (!lead.likely.empty()) table.columns.insert(table.columns.end(), {{"from"}, {"to"}});
  for (std::size_t p = 0; p < sweep.factors.size(); ++p) {
    auto& row = table.rows.emplace_back();
    row = {fixed(sweep.factors[p], 2), s.cost(lead.more[p])};
    if (lead.likely.empty()) continue;
    row.push_back(s.cost(lead.likely[p].low));
    row.push_back(s.cost(lead.likely[p].high));
  }
  return table;
}

}  // namespace

Figure prices_figure(const Shown& s, const decide::PriceSweep& sweep) {
  chart::Lines picture;
  picture.x_unit = kFactor;
  picture.y_unit = fmt::format("{} {}", s.currency(), over_the_horizon(s));
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    chart::Line& line = picture.lines.emplace_back();
    line.name = s.study.candidates[c].name;
    for (std::size_t p = 0; p < sweep.factors.size(); ++p) {
      line.points.push_back({sweep.factors[p], sweep.criteria[c][p], {}});
    }
  }
  picture.markers = turns_of(sweep);
  picture.markers.push_back(today());
  return {"prices", kPricesTitle,       kPricesTitle,          cheapest_told(s, sweep),
          "",       std::move(picture), prices_table(s, sweep)};
}

Figure lead_figure(const Shown& s, const decide::PriceSweep& sweep) {
  const decide::Lead& lead = *sweep.lead;
  const std::string& best = s.study.candidates[lead.best].name;
  const std::string& second = s.study.candidates[lead.second].name;
  chart::Lines picture;
  picture.x_unit = kFactor;
  picture.y_unit = fmt::format("{} {}", s.currency(), over_the_horizon(s));
  chart::Line& line = picture.lines.emplace_back();
  line.name = "more";
  for (std::size_t p = 0; p < sweep.factors.size(); ++p) {
    chart::Point point{sweep.factors[p], lead.more[p], {}};
    if (!lead.likely.empty()) point.range = chart::Range{lead.likely[p].low, lead.likely[p].high};
    line.points.push_back(point);
  }
  for (const decide::Crossing& crossing : sweep.crossings) {
    if (std::minmax(crossing.first, crossing.second) != std::minmax(lead.best, lead.second))
      continue;
    picture.markers.push_back({crossing.at, 0.0, "equal at " + rounded(crossing.at, 3)});
  }
  picture.markers.push_back(today());
  const double now = at_factor(sweep, lead.more, 1);
  std::string reading = fmt::format("Below zero {} would cost less.", second);
  if (!lead.likely.empty()) {
    reading += " The band holds 95 of 100 trials with the uncertain figures.";
  }
  const std::string title = fmt::format("How much more does {} cost than {}?", second, best);
  return {"lead",
          title,
          title,
          fmt::format("{} more at today's prices.", spoken_money(now, s.currency())),
          reading,
          std::move(picture),
          lead_table(s, sweep)};
}

}  // namespace wattweek::report
