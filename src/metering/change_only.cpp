#include "change_only.hpp"

#include <algorithm>

namespace wattweek::metering {

void ChangeOnly::see(std::span<const logs::Reading> readings) {
  double last = last_;
  double before_last = before_last_;
  std::uint64_t pairs = 0;
  std::uint64_t equal = 0;
  std::uint64_t returns = 0;
  for (const auto& [at_us, value] : readings) {
    pairs += !std::isnan(value) && !std::isnan(last) ? 1U : 0U;
    equal += value == last ? 1U : 0U;
    returns += value == before_last && value != last ? 1U : 0U;
    before_last = last;
    last = value;
  }
  last_ = last;
  before_last_ = before_last;
  pairs_ += pairs;
  equal_ += equal;
  returns_ += returns;
}

bool ChangeOnly::holds(const StepLengths& steps) const {
  if (steps.count() < 4 || pairs_ == 0 || 20 * equal_ > pairs_) return false;
  const double median_s = steps.median_s();
  const double narrow_s = std::max(1.0, 0.02 * median_s);
  const double on_beat = steps.share_within(median_s - narrow_s, median_s + narrow_s);
  const bool returning = returns_ >= 5 && returns_ >= 10 * equal_;
  if (returning) return on_beat < 0.9;
  return on_beat < 0.5 && steps.share_within(0.75 * median_s, 1.25 * median_s) < 0.8;
}

}  // namespace wattweek::metering
