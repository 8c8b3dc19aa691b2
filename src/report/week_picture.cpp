#include "week_picture.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "numbers.hpp"

namespace wattweek::report {
namespace {

constexpr std::string_view kShades = ".-+x#";
constexpr std::array<std::string_view, 7> kDays = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

/// From the least to the most drawn, in as many equal steps as there are shades.
class Scale {
 public:
  explicit Scale(const Eigen::MatrixXd& mean_w)
      : least_w_(mean_w.minCoeff()),
        step_w_((mean_w.maxCoeff() - least_w_) / static_cast<double>(kShades.size())) {}

  char shade(double watts) const {
    const double steps = step_w_ > 0 ? (watts - least_w_) / step_w_ : 0;
    const auto last = static_cast<double>(kShades.size() - 1);
    return kShades[static_cast<std::size_t>(std::clamp(steps, 0.0, last))];
  }
  double boundary_w(std::size_t step) const {
    return least_w_ + step_w_ * static_cast<double>(step);
  }

 private:
  double least_w_;
  double step_w_;
};

/// `0     6     12    18`, six hours of characters apart.
std::string hours_line(Eigen::Index columns) {
  std::string line = "    ";
  for (int hour = 0; hour < 24; hour += 6) {
    line += fmt::format("{:<{}}", hour, columns / 4);
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::vector<std::string> lines_of(const Eigen::MatrixXd& mean_w, const Scale& scale) {
  std::vector<std::string> lines{hours_line(mean_w.cols())};
  for (Eigen::Index day = 0; day < mean_w.rows(); ++day) {
    std::string& line = lines.emplace_back(kDays[static_cast<std::size_t>(day)]) += ' ';
    for (Eigen::Index i = 0; i < mean_w.cols(); ++i) line += scale.shade(mean_w(day, i));
  }
  return lines;
}

/// Each two half-hours as their mean.
Eigen::MatrixXd hourly(const Eigen::MatrixXd& mean_w) {
  Eigen::MatrixXd hours(mean_w.rows(), mean_w.cols() / 2);
  for (Eigen::Index i = 0; i < hours.cols(); ++i) {
    hours.col(i) = (mean_w.col(2 * i) + mean_w.col(2 * i + 1)) / 2;
  }
  return hours;
}

/// `. 8.5 to 10.1 W, - to 11.7 W, ...`.
std::string legend(const Scale& scale, int decimals) {
  std::string legend;
  for (std::size_t i = 0; i < kShades.size(); ++i) {
    const std::string from = i == 0 ? fixed(scale.boundary_w(0), decimals) + " " : "";
    legend += fmt::format("{}{} {}to {} W", i == 0 ? "" : ", ", kShades[i], from,
                          fixed(scale.boundary_w(i + 1), decimals));
  }
  return legend;
}

}  // namespace

Picture week_picture(const decide::Week& week, std::string title) {
  const Scale scale(week.mean_w);
  return {std::move(title), legend(scale, decimals_for({week.mean_w.maxCoeff()})),
          lines_of(week.mean_w, scale), lines_of(hourly(week.mean_w), scale)};
}

bool is_flat(const decide::Week& week) {
  const double most_w = week.mean_w.maxCoeff();
  const int decimals = decimals_for({most_w});
  return fixed(week.mean_w.minCoeff(), decimals) == fixed(most_w, decimals);
}

}  // namespace wattweek::report
