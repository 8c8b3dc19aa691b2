#pragma once
// Watts as shades of characters, for pictures of a week.

#include <string>
#include <string_view>

namespace wattweek::report {

inline constexpr std::string_view kShades = ".-+x#";

/// From the least to the most watts, in as many equal steps as there are shades.
class ShadeScale {
 public:
  ShadeScale(double least_w, double most_w);

  char shade(double watts) const;
  /// `. 8.5 to 10.1 W, - to 11.7 W, ...`.
  std::string legend(int decimals) const;

 private:
  double boundary_w(std::size_t step) const;

  double least_w_;
  double step_w_;
};

}  // namespace wattweek::report
