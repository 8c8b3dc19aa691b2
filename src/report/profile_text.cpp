#include <fmt/format.h>

#include "day_words.hpp"
#include "document.hpp"
#include "numbers.hpp"
#include "wattweek/report/file_alone.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

using units::in_watts;

/// `9.5 W (first on mon at 03:00)`. Measured watts have more digits than anybody wants to read.
std::string hour_text(const model::WeekOfWatts& week, std::size_t hour) {
  return fmt::format("{} W (first on {} at {})", rounded(in_watts(week[hour]), 2),
                     weekday_word(static_cast<unsigned>(hour / 24)),
                     clock_words(static_cast<int>(hour % 24) * 60));
}

std::string week_text(const model::WeekOfWatts& week) {
  const decide::WeekOverview overview = decide::overview_of(week);
  if (week[overview.lowest_hour] == week[overview.highest_hour]) {
    return watts_text(week.front()) + " in every hour of the week";
  }
  return fmt::format("{} W as the mean of the week, from {} to {}",
                     rounded(in_watts(overview.mean), 2), hour_text(week, overview.lowest_hour),
                     hour_text(week, overview.highest_hour));
}

std::string by_state(const model::Profile& profile) {
  std::vector<std::string> states = {watts_text(profile.off) + " off"};
  if (profile.sleep) states.push_back(watts_text(*profile.sleep) + " asleep");
  if (profile.week) {
    return fmt::format("At the wall socket: {}, and {}.", fmt::join(states, ", "),
                       week_text(*profile.week));
  }
  states.push_back(watts_text(profile.idle) + " idle");
  if (profile.busy) states.push_back(watts_text(*profile.busy) + " at full load");
  if (!profile.at_load.empty()) {
    states.push_back(watts_text(profile.at_load.back()) + " at full load");
  }
  if (profile.max) states.push_back(watts_text(*profile.max) + " at most");
  return fmt::format("At the wall socket: {}.", listed(states));
}

std::string idle_year(const model::Profile& profile) {
  const decide::YearOfWatts year = decide::year_of(
      profile.week ? model::PowerRange(decide::overview_of(*profile.week).mean) : profile.idle);
  const int decimals = decimals_for({year.energy_kwh.low, year.energy_kwh.high});
  std::vector<std::string> costs;
  for (const decide::PlainCost& plain : year.costs) {
    const char* a_kwh = costs.empty() ? " a kWh" : "";
    costs.push_back(
        fmt::format("{} at {}{}", range_text(plain.cost, 2), fixed(plain.price_per_kwh, 2), a_kwh));
  }
  return fmt::format(
      "{}, 8760 h, is {} kWh. No contract is known here. At a plain price that costs {}.",
      profile.week ? "A year of such weeks" : "Idle all year",
      range_text(year.energy_kwh, decimals), listed(costs));
}

std::string one_watt() {
  const decide::YearOfWatts year = decide::year_of(units::watts(1));
  const decide::PlainCost& low = year.costs.front();
  const decide::PlainCost& high = year.costs[2];
  return fmt::format("1 W all year is {} kWh: {} at {} a kWh, {} at {}.",
                     fixed(year.energy_kwh.low, 2), fixed(low.cost.low, 2),
                     fixed(low.price_per_kwh, 2), fixed(high.cost.low, 2),
                     fixed(high.price_per_kwh, 2));
}

/// An increment in words; `first_unit` is what it adds for the first unit.
struct FormWords {
  units::Power first_unit;

  std::string operator()(const model::PerUnit& form) const {
    if (!form.first || *form.first == form.each) return watts_text(form.each) + " for each unit";
    return fmt::format("{} for the first unit, {} for each further one", watts_text(*form.first),
                       watts_text(form.each));
  }
  std::string operator()(const model::UnitTable& form) const {
    const std::size_t count = form.watts_at.size();
    if (count == 1) return watts_text(first_unit) + " for one unit or more";
    return fmt::format("{} for the first unit, {} for {} or more", watts_text(first_unit),
                       watts_text(form.watts_at.back()), count);
  }
  std::string operator()(const model::LoadPerUnit& form) const {
    const units::Range<double> percent{form.fraction.low * 100, form.fraction.high * 100};
    const std::string low = rounded(percent.low, 2);
    const std::string high = rounded(percent.high, 2);
    return fmt::format("{} % of full load for each unit, {} W for the first",
                       low == high ? low : low + " to " + high, rounded(in_watts(first_unit), 2));
  }
  std::string operator()(const model::LoadFromCompute&) const { return "by its load"; }
  std::string operator()(const model::GroupOnly&) const { return ""; }
};

std::string group_words(const model::Group& group, bool alone) {
  return fmt::format("{}{} while anything of the group {} is in use", alone ? "" : ", and ",
                     watts_text(group.watts), group.name);
}

Section increments(const model::Profile& profile) {
  if (profile.week) {
    return {"",
            {Paragraph{"What uses add is in these watts: a device with a week runs no "
                       "workloads."}}};
  }
  const std::vector<units::Power> first_units = decide::added_by_first_unit(profile);
  List list;
  for (std::size_t i = 0; i < first_units.size(); ++i) {
    const model::NamedIncrement& named = profile.increments[i];
    std::string text = std::visit(FormWords{first_units[i]}, named.increment.form);
    if (named.increment.group) {
      text += group_words(profile.groups[*named.increment.group], text.empty());
    }
    list.items.push_back(fmt::format("{}: {}.", named.workload_id, text));
  }
  if (list.items.empty()) return {"", {Paragraph{"What uses add is not given: no increments."}}};
  return {"What is added in use", {std::move(list)}};
}

}  // namespace

std::string profile_text(const model::Profile& profile, const Style& style) {
  Document said;
  said.title = by_state(profile);
  Section year;
  if (profile.meter) {
    year.blocks.emplace_back(Paragraph{fmt::format(
        "Read on the meter {}; what that meter is off by is said in a study.", *profile.meter)});
  }
  year.blocks.emplace_back(Paragraph{idle_year(profile)});
  year.blocks.emplace_back(Paragraph{one_watt()});
  said.sections.push_back(std::move(year));
  said.sections.push_back(increments(profile));
  return lay_out_text(said, style);
}

bool speaks_of_highest_watts(const model::Profile& profile) {
  return profile.busy || profile.max || !profile.at_load.empty() || profile.week;
}

}  // namespace wattweek::report
