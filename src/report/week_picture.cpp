#include "week_picture.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "numbers.hpp"
#include "shades.hpp"

namespace wattweek::report {
namespace {

constexpr char kUnknown = '?';
constexpr std::array<std::string_view, 7> kDays = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

/// `0     6     12    18`, six hours of characters apart.
std::string hours_line(Eigen::Index columns) {
  std::string line = "    ";
  for (int hour = 0; hour < 24; hour += 6) {
    line += fmt::format("{:<{}}", hour, columns / 4);
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::vector<std::string> lines_of(const Eigen::MatrixXd& mean_w, const ShadeScale& scale) {
  std::vector<std::string> lines{hours_line(mean_w.cols())};
  for (Eigen::Index day = 0; day < mean_w.rows(); ++day) {
    std::string& line = lines.emplace_back(kDays[static_cast<std::size_t>(day)]) += ' ';
    for (Eigen::Index i = 0; i < mean_w.cols(); ++i) {
      line += std::isnan(mean_w(day, i)) ? kUnknown : scale.shade(mean_w(day, i));
    }
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

/// Each hour as two characters.
Eigen::MatrixXd twice(const Eigen::MatrixXd& mean_w) {
  Eigen::MatrixXd halves(mean_w.rows(), 2 * mean_w.cols());
  for (Eigen::Index i = 0; i < halves.cols(); ++i) halves.col(i) = mean_w.col(i / 2);
  return halves;
}

}  // namespace

Picture hours_picture(const Eigen::MatrixXd& mean_w, std::string title) {
  const double most_w = mean_w.maxCoeff<Eigen::PropagateNumbers>();
  const ShadeScale scale(mean_w.minCoeff<Eigen::PropagateNumbers>(), most_w);
  std::string legend = scale.legend(decimals_for({most_w}));
  if (mean_w.hasNaN()) legend += fmt::format(", {} not in the log", kUnknown);
  return {std::move(title), std::move(legend), lines_of(twice(mean_w), scale),
          lines_of(mean_w, scale)};
}

Picture week_picture(const decide::Week& week, std::string title) {
  const ShadeScale scale(week.mean_w.minCoeff(), week.mean_w.maxCoeff());
  return {std::move(title), scale.legend(decimals_for({week.mean_w.maxCoeff()})),
          lines_of(week.mean_w, scale), lines_of(hourly(week.mean_w), scale)};
}

bool is_flat(const decide::Week& week) {
  const double most_w = week.mean_w.maxCoeff();
  const int decimals = decimals_for({most_w});
  return fixed(week.mean_w.minCoeff(), decimals) == fixed(most_w, decimals);
}

}  // namespace wattweek::report
