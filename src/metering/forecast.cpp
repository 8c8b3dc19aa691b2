#include "wattweek/metering/forecast.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numbers>

#include "week_hours.hpp"

namespace wattweek::metering {

namespace {

constexpr double kUpperTail = 0.025;
// By this much a week may be short: an hour begun, an hour that clocks skip.
constexpr std::size_t kShort = 2;
// What is this little beside the whole is what rounding leaves.
constexpr double kRounding = 1e-12;

struct Spread {
  std::size_t weeks = 0;
  double variance_w2 = 0;  // Of the sum of the 168 means.
};

class Weeks {
 public:
  explicit Weeks(const Measured& measured) : measured_(measured), all_(by_hour_of_week(measured)) {}

  Spread spread() {
    const std::size_t hours = measured_.hours.size();
    for (std::size_t from = 0; from + kHoursOfWeek <= hours + kShort; from += kHoursOfWeek) {
      add_week(from, std::min(from + kHoursOfWeek, hours));
    }
    if (spread_.weeks < 2) return spread_;
    double all_s = 0;
    for (const Drawn& drawn : all_) all_s += drawn.seconds;
    const auto n = static_cast<double>(spread_.weeks);
    const double worth = n * all_s / seconds_;
    spread_.variance_w2 = squares_ * worth * worth / (n * (worth - 1));
    return spread_;
  }

 private:
  void add_week(std::size_t from, std::size_t to) {
    double off_w = 0;
    double seconds = 0;
    for (std::size_t i = from; i < to; ++i) {
      const Drawn& drawn = measured_.hours[i];
      const Drawn& all = all_[hour_of_week(measured_.first_hour + static_cast<std::int64_t>(i))];
      if (!(drawn.seconds > 0)) continue;
      seconds += drawn.seconds;
      off_w += (drawn.joules - drawn.seconds * all.mean_w()) / all.seconds;
    }
    if (!(seconds > 0)) return;
    ++spread_.weeks;
    seconds_ += seconds;
    squares_ += off_w * off_w;
  }

  const Measured& measured_;
  std::array<Drawn, kHoursOfWeek> all_;
  Spread spread_;
  double squares_ = 0;
  double seconds_ = 0;
};

double covered_hours(const Measured& measured) {
  double seconds = 0;
  for (const Drawn& drawn : measured.hours) seconds += drawn.seconds;
  return seconds / 3600;
}

// Half of the interval: t of the effective degrees of freedom times the joint standard deviation.
double half_width(double spread, double meter, std::size_t weeks) {
  const double joint = std::hypot(spread, meter);
  if (!(spread > kRounding * joint)) {
    return joint * quantile(complement(boost::math::normal(), kUpperTail));
  }
  const double freedom = static_cast<double>(weeks - 1) * std::pow(joint / spread, 4);
  return joint * quantile(complement(boost::math::students_t(freedom), kUpperTail));
}

}  // namespace

YearForecast forecast(const Measured& measured, const Week& week, const MeterError& meter) {
  YearForecast year;
  double sum_w = 0;
  for (const std::optional<double>& watts : week) {
    if (!watts) return year;
    sum_w += *watts;
  }
  constexpr double kKwhOfSum = kHoursOfYear / 1000 / kHoursOfWeek;
  year.energy_kwh = sum_w * kKwhOfSum;
  // An hour lost to rounding of the sum is none.
  if (covered_hours(measured) < kLeastForecastHours * (1 - kRounding)) return year;
  const Spread spread = Weeks(measured).spread();
  if (spread.weeks < 2) return year;
  const double limit = meter.percent / 100 * *year.energy_kwh + meter.watts * kHoursOfYear / 1000;
  const double half = half_width(std::sqrt(spread.variance_w2) * kKwhOfSum,
                                 limit / std::numbers::sqrt3, spread.weeks);
  year.low = std::max(0.0, *year.energy_kwh - half);
  year.high = *year.energy_kwh + half;
  year.weeks = spread.weeks;
  return year;
}

}  // namespace wattweek::metering
