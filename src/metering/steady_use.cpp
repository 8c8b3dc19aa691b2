#include "steady_use.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace wattweek::metering {

namespace {

using Eigen::Index;

// Units that differ by less count as the same: a change at the very end of a long interval.
constexpr double kSame = 0.01;

using Units = std::vector<double>;

bool are_alike(const Units& noted, const Eigen::VectorXd& mean) {
  for (Index i = 0; i < mean.size(); ++i) {
    const double units = noted[static_cast<std::size_t>(i)];
    if (std::abs(units - mean(i)) > kSame * std::max(1.0, units)) return false;
  }
  return true;
}

// Each combination of units that is noted for some moment.
std::set<Units> noted_units(const Activity& activity) {
  std::map<logs::Microseconds, std::vector<std::pair<std::size_t, double>>> changes;
  for (const NotedUse& use : activity.uses) {
    if (use.end_us <= use.start_us) continue;
    changes[use.start_us].emplace_back(use.workload, use.units);
    changes[use.end_us].emplace_back(use.workload, -use.units);
  }
  Units now(activity.workloads.size(), 0.0);
  std::set<Units> all = {now};
  for (const auto& change : changes) {
    for (const auto& [workload, units] : change.second) now[workload] += units;
    Units rounded = now;  // What sums leave of rounding makes no combination of its own.
    for (double& units : rounded) units = std::round(units * 1e6) / 1e6;
    all.insert(rounded);
  }
  return all;
}

}  // namespace

std::vector<bool> steady_designs(const Measured& measured, const Activity& activity) {
  const std::set<Units> noted = noted_units(activity);
  std::vector<bool> steady;
  for (const Eigen::VectorXd& design : measured.designs) {
    steady.push_back(std::any_of(noted.begin(), noted.end(),
                                 [&](const Units& units) { return are_alike(units, design); }));
  }
  return steady;
}

bool hold_most(const AwakeCells& cells, const std::vector<bool>& designs) {
  const Eigen::VectorXd all = cells.unit_hours();
  Eigen::VectorXd held = Eigen::VectorXd::Zero(all.size());
  for (const DrawnInUse& row : cells.by_design()) {
    if (designs[row.design]) held += row.drawn.seconds / 3600 * row.columns;
  }
  return (2 * held.array() >= all.array()).all();
}

}  // namespace wattweek::metering
