// Pictures of when: the week, the months, the hours of a load.

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "day_words.hpp"
#include "page_figures.hpp"
#include "spoken.hpp"
#include "sums.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

constexpr std::array<std::string_view, 7> kDays = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

std::string clock_at(int slot) { return clock_words(slot * 1440 / decide::Week::kSlotsPerDay); }

std::vector<std::string> slot_row(const decide::Week& week, int slot, int decimals) {
  std::vector<std::string> row = {""};
  for (int day = 0; day < 7; ++day) row.push_back(fixed(week.mean_w(day, slot), decimals));
  return row;
}

/// Half-hours that look alike on every day share a row: `02:00 to 14:00`.
Table week_table(const decide::Week& week, int decimals) {
  Table table{{{"", Align::left}}, {}};
  for (const std::string_view day : kDays) table.columns.push_back({std::string(day) + " W"});
  for (int first = 0; first < decide::Week::kSlotsPerDay;) {
    std::vector<std::string> row = slot_row(week, first, decimals);
    int last = first + 1;
    while (last < decide::Week::kSlotsPerDay && slot_row(week, last, decimals) == row) ++last;
    row.front() = fmt::format("{} to {}", clock_at(first), clock_at(last));
    table.rows.push_back(std::move(row));
    first = last;
  }
  return table;
}

/// `Fri at 21:30` of the half-hour in which the most, or the least, is drawn.
std::string half_hour(Eigen::Index day, Eigen::Index slot) {
  return fmt::format("{} at {}", kDays[static_cast<std::size_t>(day)],
                     clock_at(static_cast<int>(slot)));
}

/// `Jan`; of a study that is longer than a year `2027-01`.
std::string month_label(const Shown& s, std::size_t month) {
  const std::chrono::year_month when = s.all.months[month].month;
  if (s.study.months > 12) return calendar::to_text(when);
  return capitalised(month_word(static_cast<unsigned>(when.month()) - 1));
}

double cell_kwh(const Shown& s, std::size_t c, std::size_t month, std::size_t band) {
  const std::size_t row = month * s.study.tariff.bands.size() + band;
  return s.all.candidates[c].ledger.kwh.row(static_cast<Eigen::Index>(row)).sum();
}

Table months_numbers(const Shown& s, std::size_t c) {
  const auto& bands = s.study.tariff.bands;
  Table table{{{"month", Align::left}}, {}};
  if (bands.size() > 1) {
    for (const model::Band& band : bands) table.columns.push_back({band.name + " kWh"});
  }
  table.columns.push_back({"kWh"});
  table.columns.push_back({"cost " + s.currency()});
  for (std::size_t m = 0; m < s.all.months.size(); ++m) {
    auto& row = table.rows.emplace_back();
    row.push_back(calendar::to_text(s.all.months[m].month));
    for (std::size_t b = 0; bands.size() > 1 && b < bands.size(); ++b) {
      row.push_back(s.kwh(cell_kwh(s, c, m, b)));
    }
    row.push_back(s.kwh(month_kwh(s.all, s.all.candidates[c], m)));
    row.push_back(s.cost(s.all.candidates[c].cost.by_period[m]));
  }
  return table;
}

std::string months_told(const Shown& s, std::size_t c) {
  std::size_t least = 0;
  std::size_t most = 0;
  const auto kwh = [&](std::size_t month) { return month_kwh(s.all, s.all.candidates[c], month); };
  for (std::size_t m = 1; m < s.all.months.size(); ++m) {
    if (kwh(m) < kwh(least)) least = m;
    if (kwh(m) > kwh(most)) most = m;
  }
  return fmt::format("From {} kWh in {} to {} kWh in {}.", spoken(kwh(least)),
                     calendar::to_text(s.all.months[least].month), spoken(kwh(most)),
                     calendar::to_text(s.all.months[most].month));
}

constexpr const char* kLoadTitle = "For how many hours does it draw how much?";

/// Hardly any eye tells more steps than this apart, and a page need not hold them.
constexpr double kStepsOfLoad = 240;

/// Loads that lie within one step of watts together, at their mean.
std::vector<chart::Load> thinned(const decide::LoadDuration& loads) {
  const double step_w = loads.front().watts / kStepsOfLoad;
  std::vector<chart::Load> out;
  double group = -1;
  for (const decide::LoadHours& load : loads) {
    const double own = step_w > 0 ? std::floor(load.watts / step_w) : 0;
    if (own != group) out.push_back({0, 0});
    group = own;
    chart::Load& together = out.back();
    const double hours = together.hours + load.hours;
    together.watts = (together.watts * together.hours + load.watts * load.hours) / hours;
    together.hours = hours;
  }
  return out;
}

/// The watts that are drawn, or more, in so much of the time.
double watts_in(const decide::LoadDuration& loads, double hours) {
  double passed = 0;
  for (const decide::LoadHours& load : loads) {
    passed += load.hours;
    if (passed >= hours * (1 - decide::kEqual)) return load.watts;
  }
  return loads.back().watts;
}

constexpr std::array<double, 9> kPartsOfTime = {0, 0.01, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 1};

Table load_table(const Shown& s, const std::vector<decide::LoadDuration>& loads) {
  Table table{{{"in so much of the time at least", Align::left}}, {}};
  for (std::size_t c = 0; c < loads.size(); ++c) {
    if (!loads[c].empty()) table.columns.push_back({s.study.candidates[c].name + " W"});
  }
  for (const double part : kPartsOfTime) {
    auto& row = table.rows.emplace_back();
    row.push_back(part == 0 ? "highest" : fmt::format("{} %", rounded(100 * part, 0)));
    for (const decide::LoadDuration& each : loads) {
      if (!each.empty()) row.push_back(s.watts(watts_in(each, part * s.all.hours)));
    }
  }
  return table;
}

}  // namespace

Figure week_figure(const Shown& s, const decide::Week& week, std::size_t c) {
  chart::WeekMap picture;
  for (Eigen::Index day = 0; day < 7; ++day) {
    for (Eigen::Index slot = 0; slot < decide::Week::kSlotsPerDay; ++slot) {
      picture.mean_w[static_cast<std::size_t>(day)][static_cast<std::size_t>(slot)] =
          week.mean_w(day, slot);
    }
  }
  Eigen::Index low_day = 0;
  Eigen::Index low_slot = 0;
  Eigen::Index high_day = 0;
  Eigen::Index high_slot = 0;
  const double least = week.mean_w.minCoeff(&low_day, &low_slot);
  const double most = week.mean_w.maxCoeff(&high_day, &high_slot);
  const std::string alternative =
      fmt::format("The least is {} W on {}, the most {} W on {}.", spoken(least),
                  half_hour(low_day, low_slot), spoken(most), half_hour(high_day, high_slot));
  const model::Candidate& candidate = s.study.candidates[c];
  return {"week-" + candidate.id,
          "A week of " + candidate.name,
          candidate.name,
          alternative,
          alternative,
          std::move(picture),
          week_table(week, decimals_for({most}))};
}

Figure months_figure(const Shown& s, std::size_t c) {
  chart::StackedMonths picture;
  picture.unit = "kWh a month";
  for (std::size_t m = 0; m < s.all.months.size(); ++m) {
    picture.months.push_back(month_label(s, m));
  }
  for (std::size_t b = 0; b < s.study.tariff.bands.size(); ++b) {
    chart::Part& part = picture.parts.emplace_back();
    part.name = s.study.tariff.bands[b].name;
    for (std::size_t m = 0; m < s.all.months.size(); ++m) {
      part.values.push_back(cell_kwh(s, c, m, b));
    }
  }
  const model::Candidate& candidate = s.study.candidates[c];
  return {"months-" + candidate.id,
          "When does " + candidate.name + " draw how much?",
          candidate.name,
          months_told(s, c),
          "",
          std::move(picture),
          months_numbers(s, c)};
}

Figure load_figure(const Shown& s, const std::vector<decide::LoadDuration>& loads) {
  chart::LoadDuration picture;
  std::vector<std::string> parts;
  for (std::size_t c = 0; c < loads.size(); ++c) {
    if (loads[c].empty()) continue;
    const std::string& name = s.study.candidates[c].name;
    picture.curves.push_back({name, thinned(loads[c])});
    parts.push_back(fmt::format("{}: {} W or more in half of the time, {} W at most", name,
                                spoken(watts_in(loads[c], s.all.hours / 2)),
                                spoken(loads[c].front().watts)));
  }
  return {"load",
          kLoadTitle,
          kLoadTitle,
          fmt::format("{}.", fmt::join(parts, "; ")),
          "Each line falls from the few hours with the most watts to the many with the least. The "
          "area below it is the energy.",
          std::move(picture),
          load_table(s, loads)};
}

}  // namespace wattweek::report
