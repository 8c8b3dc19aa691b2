#pragma once
// A device with all its figures settled: what `power` reckons with. Central figures are the
// midpoints of the user's ranges; a what-if changes the law, not the model.

#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

#include "wattweek/model/study.hpp"
#include "wattweek/power/units_in_use.hpp"

namespace wattweek::power {

/// What a workload adds, as a function of units in use.
struct TaskLaw {
  std::size_t workload = 0;          ///< Index into the study's workloads.
  double first_w = 0;                ///< Watts of the first unit ...
  double each_w = 0;                 ///< ... and of each further one.
  std::vector<double> table_w;       ///< If not empty, replaces both: watts at 1, 2, 3 ... units.
  double load_per_unit = 0;          ///< Fraction of full load for each unit.
  std::optional<std::size_t> group;  ///< Index into `DeviceLaw::group_w`.
};

/// One copy of a device, switched on or at rest. All watts are at the wall socket.
struct DeviceLaw {
  double off_w = 0;
  double sleep_w = 0;
  double idle_w = 0;
  double max_w = std::numeric_limits<double>::infinity();
  double full_load_w = 0;  ///< Busy minus idle; 0 where the profile has no curve.
  model::Curve curve = model::Curve::linear;
  std::vector<double> at_load_w;  ///< If not empty, replaces the curve: watts above idle at evenly
                                  ///< spaced loads from 0 to 100 %.
  std::vector<double> week_w;     ///< If not empty, 168: replaces all but `off_w`, `sleep_w` and
                                  ///< `count`; see `model::WeekOfWatts`.
  std::vector<double> group_w;
  std::vector<TaskLaw> tasks;  ///< Workloads run or assisted, in the study's order.
  int count = 1;
};

/// A candidate's devices and, for each workload of the study, its uses.
struct CandidateLaw {
  std::vector<DeviceLaw> devices;
  std::vector<std::vector<UseLaw>> uses;  ///< [workload][use]
};

/// The midpoints of all that the study says of a candidate's watts and habits. The scale of
/// the meter that a profile names is in its watts.
CandidateLaw central_law(const model::Study& study, std::size_t candidate);

/// Settles the uses anew, and leaves the devices as they are: where nothing but shares has changed.
void settle_uses(const model::Study& study, CandidateLaw& law);

/// Watts that `units` in use add: linear between 0 at 0 and the values at 1, 2, 3 ...;
/// beyond a table's end its last value.
double increment_w(const TaskLaw& task, double units);

/// Watts above idle at the load `u` in [0, 1]:
///
///     (busy - idle) f(u),  f(u) = u  or  f(u) = 2u - u^1.4
///
/// (X. Fan, W.-D. Weber, L. A. Barroso: Power provisioning for a warehouse-sized computer,
/// ISCA 2007, with their exponent 1.4), or linear interpolation in the table of `at_load`.
double load_w(const DeviceLaw& law, double u);

}  // namespace wattweek::power
