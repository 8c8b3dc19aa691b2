#include "shades.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "numbers.hpp"

namespace wattweek::report {

ShadeScale::ShadeScale(double least_w, double most_w)
    : least_w_(least_w), step_w_((most_w - least_w) / static_cast<double>(kShades.size())) {}

char ShadeScale::shade(double watts) const {
  const double steps = step_w_ > 0 ? (watts - least_w_) / step_w_ : 0;
  const auto last = static_cast<double>(kShades.size() - 1);
  return kShades[static_cast<std::size_t>(std::clamp(steps, 0.0, last))];
}

std::string ShadeScale::legend(int decimals) const {
  std::string legend;
  for (std::size_t i = 0; i < kShades.size(); ++i) {
    const std::string from = i == 0 ? fixed(boundary_w(0), decimals) + " " : "";
    legend += fmt::format("{}{} {}to {} W", i == 0 ? "" : ", ", kShades[i], from,
                          fixed(boundary_w(i + 1), decimals));
  }
  return legend;
}

double ShadeScale::boundary_w(std::size_t step) const {
  return least_w_ + step_w_ * static_cast<double>(step);
}

}  // namespace wattweek::report
