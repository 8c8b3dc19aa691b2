#include "page_figures.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "range_words.hpp"
#include "sections.hpp"
#include "spoken.hpp"
#include "sums.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

/// A number beside a bar longer than this leaves no room for the name; its range goes first.
constexpr std::size_t kLongestNumber = 25;

/// So many bars of one candidate are read; the rest becomes one.
constexpr std::size_t kMostBars = 10;

/// A candidate's amount as a bar; `spread` is null where nobody drew.
chart::Bar amount_bar(const Shown& s, std::size_t candidate, double value,
                      const decide::Spread* spread) {
  chart::Bar bar{s.study.candidates[candidate].name, value, {}, spoken_money(value, s.currency())};
  if (spread == nullptr || spread->p2_5 == spread->p97_5) return bar;
  bar.range = chart::Range{spread->p2_5, spread->p97_5};
  const std::string ranged = fmt::format("{} {}", with_range(value, *spread), s.currency());
  if (ranged.size() <= kLongestNumber) bar.value_text = ranged;
  return bar;
}

/// `Palm-size box: 57 EUR (54 to 60); Office tower: 106 EUR.`
std::string told(const chart::Bars& picture) {
  std::vector<std::string> parts;
  for (const chart::Bar& bar : picture.bars) {
    parts.push_back(fmt::format("{}: {}", bar.name, bar.value_text));
  }
  return fmt::format("{}.", fmt::join(parts, "; "));
}

std::string how_to_read_ranges(const Shown& s) {
  if (!s.all.uncertainty) return "";
  return "The thin line on each bar, and the numbers in brackets: in 95 of 100 trials with the "
         "uncertain figures the result lies in there.";
}

Figure amounts_figure(std::string name, std::string title, chart::Bars picture, Table numbers,
                      std::string reading) {
  std::string alternative = told(picture);
  std::string caption = title;
  return {std::move(name),    std::move(title),   std::move(caption), std::move(alternative),
          std::move(reading), std::move(picture), std::move(numbers)};
}

Table amounts_table(const Shown& s, std::vector<Column> columns) {
  Table table{{{"", Align::left}}, {}};
  for (Column& column : columns) table.columns.push_back(std::move(column));
  if (s.all.uncertainty) table.columns.insert(table.columns.end(), {{"from"}, {"to"}});
  return table;
}

void add_spread(const Shown& s, const decide::Spread* spread, std::vector<std::string>& row) {
  if (spread == nullptr) return;
  row.push_back(s.cost(spread->p2_5));
  row.push_back(s.cost(spread->p97_5));
}

struct Cause {
  std::string name;
  double kwh = 0;
  double cost = 0;
};

/// The most first; what is left after the first few as one.
std::vector<Cause> causes_of(const Shown& s, std::size_t c) {
  const decide::CandidateResult& result = s.all.candidates[c];
  std::vector<Cause> causes;
  for (std::size_t i = 0; i < result.cost.by_cause.size(); ++i) {
    const std::string name =
        i == 0 ? "Always on: off, asleep, idle" : s.study.workloads[i - 1].name;
    const double kwh = cause_kwh(result, i);
    if (i > 0 && kwh == 0) continue;
    causes.push_back({name, kwh, units::in_currency(result.cost.by_cause[i])});
  }
  std::stable_sort(causes.begin(), causes.end(),
                   [](const Cause& a, const Cause& b) { return a.kwh > b.kwh; });
  if (causes.size() <= kMostBars) return causes;
  Cause rest{counted(causes.size() - kMostBars + 1, "other"), 0, 0};
  for (std::size_t i = kMostBars - 1; i < causes.size(); ++i) {
    rest.kwh += causes[i].kwh;
    rest.cost += causes[i].cost;
  }
  causes.resize(kMostBars - 1);
  causes.push_back(rest);
  return causes;
}

}  // namespace

const decide::CandidateDoubt* doubt_of(const Shown& s, std::size_t candidate) {
  return s.all.uncertainty ? &s.all.uncertainty->candidates[candidate] : nullptr;
}

std::string over_the_study(const Shown& s) {
  if (s.is_year()) return "a year";
  return "in " + counted(static_cast<std::size_t>(s.study.months), "month");
}

std::string over_the_horizon(const Shown& s) {
  const auto& lifetime = s.all.candidates.front().lifetime;
  if (!lifetime) return over_the_study(s);
  return fmt::format("over {}, at present value",
                     counted(static_cast<std::size_t>(lifetime->years), "year"));
}

Figure cost_figure(const Shown& s) {
  chart::Bars picture{{}, fmt::format("{} {}", s.currency(), over_the_study(s)), {}};
  Table numbers = amounts_table(s, {{fmt::format("{} {}", s.currency(), over_the_study(s))}});
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    const decide::CandidateDoubt* doubt = doubt_of(s, c);
    const double cost = units::in_currency(s.all.candidates[c].cost.cost);
    const decide::Spread* spread = doubt == nullptr ? nullptr : &doubt->cost;
    picture.bars.push_back(amount_bar(s, c, cost, spread));
    auto& row = numbers.rows.emplace_back();
    row = {s.study.candidates[c].name, s.cost(cost)};
    add_spread(s, spread, row);
  }
  return amounts_figure(
      "cost", fmt::format("What does it add to the electricity bill {}?", over_the_study(s)),
      std::move(picture), std::move(numbers), how_to_read_ranges(s));
}

Figure present_cost_figure(const Shown& s) {
  const std::string& currency = s.currency();
  chart::Bars picture{{}, fmt::format("{} {}", currency, over_the_horizon(s)), {}};
  Table numbers = amounts_table(s, {{"purchase " + currency},
                                    {"electricity " + currency},
                                    {"later costs " + currency},
                                    {"resale " + currency},
                                    {"at present value " + currency}});
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    const decide::CandidateDoubt* doubt = doubt_of(s, c);
    const decide::Spread* spread = doubt == nullptr ? nullptr : &*doubt->present_cost;
    const decide::Lifetime& lifetime = *s.all.candidates[c].lifetime;
    picture.bars.push_back(amount_bar(s, c, lifetime.present_cost, spread));
    auto& row = numbers.rows.emplace_back();
    row = {s.study.candidates[c].name,  s.cost(lifetime.purchase), s.cost(lifetime.energy_cost),
           s.cost(lifetime.later_cost), s.cost(lifetime.resale),   s.cost(lifetime.present_cost)};
    add_spread(s, spread, row);
  }
  const int years = s.all.candidates.front().lifetime->years;
  return amounts_figure(
      "present-cost",
      fmt::format("What does it cost in all, over {}?",
                  counted(static_cast<std::size_t>(years), "year")),
      std::move(picture), std::move(numbers),
      "To buy, to run and what falls due later, less what it sells for at the end. What is paid "
      "in later years counts for less, at the rate of discount: that is its present value.");
}

Figure where_figure(const Shown& s, std::size_t c) {
  const std::string& name = s.study.candidates[c].name;
  chart::Bars picture{{}, fmt::format("kWh {}", over_the_study(s)), {}};
  for (const Cause& cause : causes_of(s, c)) {
    picture.bars.push_back(
        {cause.name,
         cause.kwh,
         {},
         fmt::format("{} kWh, {}", spoken(cause.kwh), spoken_money(cause.cost, s.currency()))});
  }
  Figure figure = amounts_figure("where-" + s.study.candidates[c].id,
                                 fmt::format("Where does the energy of {} go?", name),
                                 std::move(picture), parts_table(s, c), "");
  figure.caption = name;
  return figure;
}

Figure drivers_figure(const Shown& s) {
  chart::Bars picture{{}, "% of the doubt", {}};
  Table numbers{{{"", Align::left}, {"in the files", Align::left}, {"share of the doubt"}}, {}};
  for (const decide::Driver& driver : s.all.uncertainty->drivers) {
    const std::string words = range_words(s.study, driver.place);
    numbers.rows.push_back({words, driver.key, fmt::format("{} %", fixed(100 * driver.share, 1))});
    if (picture.bars.size() < kMostBars / 2 && driver.share >= 0.005) {
      picture.bars.push_back({words, 100 * driver.share, {}, percent_of(driver.share)});
    }
  }
  return amounts_figure("drivers", "Which uncertain figure matters most?", std::move(picture),
                        std::move(numbers), "");
}

}  // namespace wattweek::report
