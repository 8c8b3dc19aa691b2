#include "awake_cells.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "wattweek/metering/levels.hpp"

namespace wattweek::metering {

namespace {

using Eigen::Index;

Eigen::VectorXd with_idle(const Eigen::VectorXd& units) {
  Eigen::VectorXd columns(units.size() + 1);
  columns << 1, units;
  return columns;
}

double or_zero(double part, double whole) { return whole > 0 ? part / whole : 0; }

/// How far it mostly is from a cell with time to the next: of a log with a row every five minutes
/// most cells have none.
Index usual_distance(const Eigen::VectorXd& seconds) {
  std::map<Index, std::size_t> times;
  Index before = -1;
  for (Index cell = 0; cell < seconds.size(); ++cell) {
    if (!(seconds(cell) > 0)) continue;
    if (before >= 0) ++times[cell - before];
    before = cell;
  }
  const auto most = std::max_element(
      times.begin(), times.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  return most == times.end() ? 1 : most->first;
}

}  // namespace

Index cells_in(double seconds, double cell_seconds) {
  return std::max<Index>(1, static_cast<Index>(std::ceil(seconds / cell_seconds)));
}

AwakeCells::AwakeCells(const Measured& measured, const std::vector<Level>& levels)
    : measured_(measured) {
  for (const Eigen::VectorXd& units : measured.designs) columns_.push_back(with_idle(units));
  const std::optional<double> from_w = awake_from_w(levels);
  if (!from_w) return;
  from_bin_ = bin_of(*from_w);  // Classes that lie wholly below it are left out.
  find_cells();
}

void AwakeCells::find_cells() {
  std::int32_t last_minute = 0;
  bool any = false;
  for_each_awake([&](const Parcel& parcel) {
    if (!any) first_minute_ = parcel.minute;
    any = true;
    last_minute = parcel.minute;
  });
  if (!any) return;
  const Index minutes = Index{last_minute - first_minute_} + 1;
  together_ = static_cast<std::int32_t>((minutes + kMostCells - 1) / kMostCells);
  cells_ = (minutes + together_ - 1) / together_;
  Index before = -1;
  for_each_awake([&](const Parcel& parcel) {
    if (cell_of(parcel) != before) ++with_time_;
    before = cell_of(parcel);
  });
}

std::vector<DrawnInUse> AwakeCells::by_design() const {
  std::vector<Drawn> drawn(columns_.size());
  for_each_awake([&](const Parcel& parcel) {
    drawn[parcel.design].seconds += parcel.drawn.seconds;
    drawn[parcel.design].joules += parcel.drawn.joules;
  });
  std::vector<DrawnInUse> all;
  for (std::size_t design = 0; design < drawn.size(); ++design) {
    if (!(drawn[design].seconds > 0)) continue;
    const bool changing = design < measured_.changing.size() && measured_.changing[design];
    all.push_back({columns_[design], drawn[design], changing});
  }
  return all;
}

Eigen::VectorXd AwakeCells::unit_hours() const {
  Eigen::VectorXd hours = Eigen::VectorXd::Zero(columns_.at(0).size());
  for (const DrawnInUse& row : by_design()) hours += row.drawn.seconds / 3600 * row.columns;
  return hours;
}

double AwakeCells::small_sample(Index coefficients) const {
  const Index left = std::max<Index>(1, with_time_ - coefficients);
  return static_cast<double>(with_time_) / static_cast<double>(left);
}

Eigen::VectorXd AwakeCells::fitted(const Eigen::VectorXd& coefficients) const {
  Eigen::VectorXd watts(static_cast<Index>(columns_.size()));
  Index design = 0;
  for (const Eigen::VectorXd& columns : columns_) watts(design++) = columns.dot(coefficients);
  return watts;
}

Eigen::VectorXd AwakeCells::scores(const Eigen::VectorXd& fitted,
                                   const Eigen::VectorXd& direction) const {
  const Eigen::VectorXd factor = this->fitted(direction);
  Eigen::VectorXd sums = Eigen::VectorXd::Zero(cells_);
  for_each_awake([&](const Parcel& parcel) {
    const double joules = parcel.drawn.joules - parcel.drawn.seconds * fitted(parcel.design);
    sums(cell_of(parcel)) += factor(parcel.design) * joules;
  });
  return sums;
}

Eigen::VectorXd AwakeCells::weights(const Eigen::VectorXd& direction) const {
  const Eigen::VectorXd factor = this->fitted(direction);
  Eigen::VectorXd sums = Eigen::VectorXd::Zero(cells_);
  for_each_awake([&](const Parcel& parcel) {
    sums(cell_of(parcel)) += parcel.drawn.seconds * factor(parcel.design) * factor(parcel.design);
  });
  return sums;
}

AwakeCells::Cells AwakeCells::drawn_by_cell(const Eigen::VectorXd& fitted) const {
  Cells all{Eigen::VectorXd::Zero(cells_), Eigen::VectorXd::Zero(cells_),
            Eigen::VectorXd::Zero(cells_)};
  for_each_awake([&](const Parcel& parcel) {
    const Index cell = cell_of(parcel);
    all.seconds(cell) += parcel.drawn.seconds;
    all.joules(cell) += parcel.drawn.joules;
    all.fitted_joules(cell) += parcel.drawn.seconds * fitted(parcel.design);
  });
  return all;
}

Residuals AwakeCells::residuals(const Eigen::VectorXd& fitted) const {
  const Cells all = drawn_by_cell(fitted);
  const double mean_w = all.joules.sum() / all.seconds.sum();
  double squares = 0;
  double spread = 0;
  double neighbours = 0;
  double squares_before = 0;  // Of cells that have a neighbour after them, ...
  double squares_after = 0;   // ... and of those that have one before.
  const Index next = usual_distance(all.seconds);
  Eigen::VectorXd off = Eigen::VectorXd::Zero(all.seconds.size());
  Residuals residuals;
  for (Index cell = 0; cell < all.seconds.size(); ++cell) {
    const double seconds = all.seconds(cell);
    if (!(seconds > 0)) continue;
    const double off_w = (all.joules(cell) - all.fitted_joules(cell)) / seconds;
    const double from_mean_w = all.joules(cell) / seconds - mean_w;
    squares += seconds * off_w * off_w;
    spread += seconds * from_mean_w * from_mean_w;
    residuals.largest_w = std::max(residuals.largest_w, std::abs(off_w));
    off(cell) = off_w;
    if (cell < next || !(all.seconds(cell - next) > 0)) continue;
    const double before_w = off(cell - next);
    const double weight = std::sqrt(seconds * all.seconds(cell - next));
    neighbours += weight * off_w * before_w;
    squares_before += weight * before_w * before_w;
    squares_after += weight * off_w * off_w;
  }
  const double variance = squares / all.seconds.sum();
  residuals.sd_w = std::sqrt(variance);
  residuals.lag_one = or_zero(neighbours, std::sqrt(squares_before) * std::sqrt(squares_after));
  residuals.explained = spread > 0 ? 1 - squares / spread : 0;
  return residuals;
}

}  // namespace wattweek::metering
