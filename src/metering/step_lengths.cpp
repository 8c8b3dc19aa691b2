#include "step_lengths.hpp"

#include <cmath>

namespace wattweek::metering {

void StepLengths::count_last() {
  if (last_count_ == 0) return;
  const std::int64_t ms = (last_us_ + 500) / 1000;
  if (ms > kTable_s * 1000) {
    long_s_[(ms + 500) / 1000] += last_count_;
  } else if (ms % 1000 == 0) {
    whole_s_[static_cast<std::size_t>(ms / 1000)] += last_count_;
  } else {
    if (by_ms_.empty()) by_ms_.resize(kTable_s * 1000);
    by_ms_[static_cast<std::size_t>(ms)] += static_cast<std::uint32_t>(last_count_);
  }
  last_count_ = 0;
  last_us_ = -1;
}

std::vector<StepLengths::Length> StepLengths::ascending() const {
  std::vector<Length> lengths;
  const auto put = [&](std::int64_t ms, std::uint64_t count) {
    if (count != 0) lengths.push_back({ms, count});
  };
  for (std::int64_t s = 0; s <= kTable_s; ++s) {
    put(s * 1000, whole_s_[static_cast<std::size_t>(s)]);
    if (s == kTable_s || by_ms_.empty()) continue;
    for (std::int64_t ms = s * 1000 + 1; ms < (s + 1) * 1000; ++ms) {
      put(ms, by_ms_[static_cast<std::size_t>(ms)]);
    }
  }
  for (const auto& [s, count] : long_s_) put(s * 1000, count);
  return lengths;
}

std::uint64_t StepLengths::count() const {
  std::uint64_t sum = 0;
  for (const Length& length : ascending()) sum += length.count;
  return sum;
}

double StepLengths::median_s() const {
  const std::uint64_t steps = count();
  if (steps == 0) return 0;
  double sum_ms = 0;  // Of the middle two, which are one step where the count is odd.
  std::uint64_t before = 0;
  for (const Length& length : ascending()) {
    const std::uint64_t upto = before + length.count;
    if (before <= (steps - 1) / 2 && (steps - 1) / 2 < upto)
      sum_ms += static_cast<double>(length.ms);
    if (before <= steps / 2 && steps / 2 < upto) sum_ms += static_cast<double>(length.ms);
    before = upto;
  }
  return sum_ms / 2000;
}

double StepLengths::share_within(double from_s, double to_s) const {
  std::uint64_t within = 0;
  for (const Length& length : ascending()) {
    const double s = static_cast<double>(length.ms) / 1000;
    if (from_s <= s && s <= to_s) within += length.count;
  }
  const std::uint64_t steps = count();
  return steps == 0 ? 0 : static_cast<double>(within) / static_cast<double>(steps);
}

}  // namespace wattweek::metering
