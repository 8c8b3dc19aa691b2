#pragma once
// What one plugged-in device draws: resting, idle, and for the services that it runs.

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/model/window.hpp"
#include "wattweek/units/quantity.hpp"
#include "wattweek/units/range.hpp"

namespace wattweek::model {

using PowerRange = units::Range<units::Power>;

/// From idle to busy, u being the load as a fraction.
enum class Curve {
  linear,   ///< f(u) = u
  concave,  ///< f(u) = 2u - u^1.4 (Fan, Weber, Barroso, ISCA 2007)
};

/// Watts for each unit in use: the first, and each further one.
struct PerUnit {
  std::optional<PowerRange> first;  ///< Absent: the same figure as `each`.
  PowerRange each;
  bool is_table = false;  ///< Written `{ first = ..., each = ... }`, not as a plain number.
};

/// Watts at 1, 2, 3 ... units; never falling, never empty. Beyond the end: the last value.
struct UnitTable {
  std::vector<units::Power> watts_at;
};

/// Fraction of full load for each unit.
struct LoadPerUnit {
  units::Range<double> fraction;
};

/// Load for each unit = the workload's `compute` / the profile's `capacity`.
struct LoadFromCompute {};

/// Nothing but the group's watts.
struct GroupOnly {};

using IncrementForm = std::variant<PerUnit, UnitTable, LoadPerUnit, LoadFromCompute, GroupOnly>;

/// What one workload adds to a device.
struct Increment {
  IncrementForm form;
  std::optional<std::size_t> group;  ///< Index into `Profile::groups`.
};

/// The profile's `[increments]` entry for the workload `workload_id`, known or not.
struct NamedIncrement {
  std::string workload_id;
  Increment increment;
};

/// Watts drawn while at least one workload of the group is in use, once for all of them.
struct Group {
  std::string name;
  PowerRange watts;
};

/// Watts by hour of the local week, Monday 00:00 first: entry `24 * weekday_bit + hour`.
using WeekOfWatts = std::array<units::Power, kHoursOfWeek>;

/// One profile file or inline profile. The reader guarantees: busy and max reach idle, the
/// table never falls, `sleep` is there where a rest says so, a load-form increment has a
/// curve (`busy` or `at_load`) to act on, and beside a week there is nothing but `off`, `sleep`
/// and the meter.
struct Profile {
  std::string name;
  PowerRange off;                   ///< Plugged in, shut down.
  std::optional<PowerRange> sleep;  ///< Suspended.
  PowerRange idle;  ///< On, services up, nobody using them; `at_load[0]` where that is given.
  std::optional<PowerRange> busy;  ///< At 100 % load.
  std::optional<PowerRange> max;   ///< A cap on the sum.
  Curve curve = Curve::linear;
  /// Measured watts at evenly spaced loads from 0 to 100 %; empty, or at least two, never
  /// falling. Replaces idle, busy and curve.
  std::vector<units::Power> at_load;
  /// Watts of the device whenever it is not at rest, as they were measured; replaces all that it
  /// would draw idle and in use. It runs and assists nothing, and `idle` is 0.
  std::optional<WeekOfWatts> week;
  std::optional<units::Range<double>> capacity;  ///< Work units at 100 % load.
  std::vector<Group> groups;
  std::vector<NamedIncrement> increments;
  std::optional<std::string> meter;  ///< Id of the meter that all of its watts were read on.
  diag::Place place;                 ///< The file's start, or the inline tables'.
  std::optional<diag::Place> full_load_place;  ///< Of `busy` or `at_load`, where given.
  std::optional<diag::Place> meter_place;
};

}  // namespace wattweek::model
