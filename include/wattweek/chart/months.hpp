#pragma once
// When and where it goes: what each month is made of.

#include <string>
#include <vector>

#include "wattweek/chart/frame.hpp"

namespace wattweek::chart {

/// One part of every month: a workload, a price band, what is always on.
struct Part {
  std::string name;
  std::vector<double> values;  ///< One for each month.
};

/// Parts stacked on each other month by month, the first part at the bottom.
struct StackedMonths {
  /// So many parts have colours and patterns that can be told apart.
  static constexpr std::size_t kMostParts = 8;

  Frame frame;
  std::string unit;  ///< Over the axis: what is stacked, as "kWh a month".
  std::vector<std::string> months;
  std::vector<Part> parts;
};

/// Draws a column for each month from zero, each part with colour, pattern and a place in the
/// legend, and the months' sums over the columns where they fit. Of more than `kMostParts` parts
/// the largest stay, in their order, and the rest become one last part, "33 others". Values below
/// zero are stacked downwards. Months that are too many to be named below the axis are named at
/// even distances; each names itself and its numbers under the pointer.
/// \pre each part has as many values as there are months; finite.
std::string svg(const StackedMonths& picture);

}  // namespace wattweek::chart
