#pragma once
// Keys of sums: outcomes whose sums are equal must meet, in whatever order they were added.

#include <cmath>
#include <cstdint>

#include "wattweek/power/device_law.hpp"

namespace wattweek::power {

/// A grid on which decimal figures are whole numbers: a billionth of a watt, or coarser where
/// sums are very large.
class Grid {
 public:
  Grid(double steps_per_unit, double largest) : steps_per_unit_(steps_per_unit) {
    while (largest * steps_per_unit_ > 1e17) steps_per_unit_ /= 10;
  }
  std::int64_t operator()(double amount) const { return std::llround(amount * steps_per_unit_); }

 private:
  double steps_per_unit_;
};

inline constexpr double kStepsPerWatt = 1e9;
inline constexpr double kStepsPerLoad = 1e12;

inline bool is_whole(double x) { return x == std::floor(x) && x < 1e6; }

/// Multiples of a unit that is itself put on the grid; anything else by its own value.
inline std::int64_t key_of_multiple(const Grid& grid, double unit, double multiple) {
  return is_whole(multiple) ? static_cast<std::int64_t>(multiple) * grid(unit)
                            : grid(unit * multiple);
}

inline std::int64_t key_of_increment(const Grid& grid, const TaskLaw& task, double units) {
  if (units <= 0) return 0;
  if (!task.table_w.empty() || !is_whole(units)) return grid(increment_w(task, units));
  return grid(task.first_w) + key_of_multiple(grid, task.each_w, units - 1);
}

}  // namespace wattweek::power
