#pragma once
// How long the steps between neighbouring readings are: counted, so that the median needs no list.

#include <array>
#include <cstdint>
#include <map>
#include <vector>

#include "interval.hpp"

namespace wattweek::metering {

class StepLengths {
 public:
  void add(logs::Microseconds step_us) {
    if (step_us == last_us_) {
      ++last_count_;
      return;
    }
    count_last();
    last_us_ = step_us;
    last_count_ = 1;
  }

  /// Settles what was counted. To be called before what follows.
  void close() { count_last(); }

  std::uint64_t count() const;
  /// Median: of an even count the mean of the middle two; 0 where there is none. Up to 300 s exact
  /// to the millisecond, above to the second.
  double median_s() const;
  /// Share of the steps within [from_s, to_s]; 0 where there is none.
  double share_within(double from_s, double to_s) const;

 private:
  struct Length {
    std::int64_t ms;
    std::uint64_t count;
  };

  void count_last();
  std::vector<Length> ascending() const;

  // The step of the moment, which mostly is that of the moment before.
  logs::Microseconds last_us_ = -1;
  std::uint64_t last_count_ = 0;
  // Whole seconds, then those with a fraction (a table only where there is one), then long ones.
  // The last cannot be many: so many different ones of more than 300 s ask for centuries.
  static constexpr std::int64_t kTable_s = 300;
  std::array<std::uint64_t, kTable_s + 1> whole_s_{};
  std::vector<std::uint32_t> by_ms_;
  std::map<std::int64_t, std::uint64_t> long_s_;
};

}  // namespace wattweek::metering
