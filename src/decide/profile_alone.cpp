#include "wattweek/decide/profile_alone.hpp"

#include <algorithm>
#include <array>

#include "wattweek/decide/quick.hpp"
#include "wattweek/power/device_law.hpp"

namespace wattweek::decide {

namespace {

using units::in_watts;

constexpr std::array<double, 4> kPlainPrices{0.10, 0.20, 0.30, 0.40};

QuickResult around_the_clock(units::Power power, double price_per_kwh) {
  QuickInput input;
  input.idle_w = in_watts(power);
  input.price_per_kwh = price_per_kwh;
  return quick(input);
}

power::DeviceLaw loads_of(const model::Profile& profile) {
  power::DeviceLaw law;
  law.curve = profile.curve;
  law.idle_w = in_watts(profile.idle.central());
  if (profile.busy) law.full_load_w = in_watts(profile.busy->central()) - law.idle_w;
  for (const units::Power power : profile.at_load) {
    law.at_load_w.push_back(in_watts(power - profile.at_load.front()));
  }
  return law;
}

struct FirstUnit {
  const model::Profile& profile;

  units::Power operator()(const model::PerUnit& form) const {
    return (form.first ? *form.first : form.each).central();
  }
  units::Power operator()(const model::UnitTable& form) const { return form.watts_at.front(); }
  units::Power operator()(const model::LoadPerUnit& form) const {
    const double load = std::min(1.0, form.fraction.central());
    return units::watts(power::load_w(loads_of(profile), load));
  }
  // A file's increments never have this form: it is that of workloads without an increment.
  units::Power operator()(const model::LoadFromCompute&) const { return {}; }
  units::Power operator()(const model::GroupOnly&) const { return {}; }
};

}  // namespace

YearOfWatts year_of(const model::PowerRange& watts) {
  YearOfWatts year;
  year.energy_kwh = {around_the_clock(watts.low, 0).energy_kwh,
                     around_the_clock(watts.high, 0).energy_kwh};
  for (const double price : kPlainPrices) {
    year.costs.push_back(
        {price,
         {around_the_clock(watts.low, price).cost, around_the_clock(watts.high, price).cost}});
  }
  return year;
}

WeekOverview overview_of(const model::WeekOfWatts& week) {
  WeekOverview overview;
  for (std::size_t hour = 0; hour < week.size(); ++hour) {
    overview.mean += week[hour] / static_cast<double>(week.size());
    if (week[hour] < week[overview.lowest_hour]) overview.lowest_hour = hour;
    if (week[hour] > week[overview.highest_hour]) overview.highest_hour = hour;
  }
  return overview;
}

std::vector<units::Power> added_by_first_unit(const model::Profile& profile) {
  std::vector<units::Power> added;
  for (const model::NamedIncrement& named : profile.increments) {
    added.push_back(std::visit(FirstUnit{profile}, named.increment.form));
  }
  return added;
}

}  // namespace wattweek::decide
