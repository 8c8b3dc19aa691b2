#include "wattweek/energy/load_hours.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <map>

#include "device_book.hpp"
#include "use_set_units.hpp"
#include "wattweek/power/loads.hpp"

namespace wattweek::energy {

namespace {

// Sums that differ by less are the same watts added up in another order.
constexpr double kSameWatts = 1e-9;

constexpr std::uint32_t kSteady = std::numeric_limits<std::uint32_t>::max();

// Situations of the devices that chance acts on, `kSteady` for the others: what is drawn above
// idle depends on these alone. Each with the idle, resting and weekly watts beside which it occurs.
using ByChance = std::map<std::vector<std::uint32_t>, std::vector<LoadHours>>;

ByChance sort_by_chance(const CandidatePlan& plan, const power::CandidateLaw& law) {
  const std::size_t devices = plan.devices.size();
  ByChance sorted;
  for (std::size_t i = 0; i < plan.together_s.size(); ++i) {
    std::vector<std::uint32_t> chance;
    LoadHours base{0, static_cast<double>(plan.together_s[i]) / 3600.0};
    for (std::size_t d = 0; d < devices; ++d) {
      const std::uint32_t situation = plan.together[i * devices + d];
      const auto steady = steady_draw(law.devices[d], plan.devices[d].situations[situation]);
      base.watts += law.devices[d].count * (steady ? steady->watts : law.devices[d].idle_w);
      chance.push_back(steady ? kSteady : situation);
    }
    if (base.hours > 0) sorted[chance].push_back(base);
  }
  return sorted;
}

// False where a workload has too many values of units in use.
bool find_devices_on(const CandidatePlan& plan, const power::CandidateLaw& law,
                     const UseSetUnits& units, const std::vector<std::uint32_t>& chance,
                     std::vector<power::DeviceOn>& devices) {
  devices.clear();
  for (std::size_t d = 0; d < chance.size(); ++d) {
    if (chance[d] == kSteady) continue;
    devices.push_back({&law.devices[d], {}});
    const DevicePlan& device = plan.devices[d];
    if (!find_units_in_use(device, device.situations[chance[d]], units, devices.back().in_use)) {
      return false;
    }
  }
  return true;
}

std::vector<LoadHours> merged(std::vector<LoadHours> loads) {
  std::stable_sort(loads.begin(), loads.end(),
                   [](const LoadHours& a, const LoadHours& b) { return a.watts > b.watts; });
  std::vector<LoadHours> sums;
  for (const LoadHours& load : loads) {
    const double same = kSameWatts * std::max(1.0, load.watts);
    if (!sums.empty() && sums.back().watts - load.watts <= same) {
      sums.back().hours += load.hours;
    } else if (load.hours > 0) {
      sums.push_back(load);
    }
  }
  return sums;
}

}  // namespace

std::vector<LoadHours> load_hours(const CandidatePlan& plan, const power::CandidateLaw& law) {
  UseSetBook uses(plan);
  uses.reckon(law);
  power::LoadReckoner reckoner;
  std::vector<power::DeviceOn> devices;
  std::vector<power::Load> above_idle;
  std::vector<LoadHours> loads;
  for (const auto& [chance, bases] : sort_by_chance(plan, law)) {
    if (!find_devices_on(plan, law, uses.units(), chance, devices)) return {};
    if (!reckoner.reckon(devices, above_idle)) return {};
    for (const LoadHours& base : bases) {
      for (const power::Load& load : above_idle) {
        loads.push_back({base.watts + load.above_idle_w, base.hours * load.probability});
      }
    }
  }
  return merged(std::move(loads));
}

}  // namespace wattweek::energy
