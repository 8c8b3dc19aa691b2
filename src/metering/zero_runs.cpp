#include "zero_runs.hpp"

#include <algorithm>

namespace wattweek::metering {
namespace {

using Run = ZeroRuns::Run;

bool earlier(const Run& a, const Run& b) { return a.start_us < b.start_us; }

Run longer(const Run& a, const Run& b) {
  if (a.length_us() == b.length_us()) return earlier(b, a) ? b : a;
  return b.length_us() > a.length_us() ? b : a;
}

}  // namespace

void ZeroRuns::turn_to(logs::Microseconds start_us) {
  close();
  run_ = {start_us, start_us};
  may_join_ = settling_ || start_us == aside_end_us_;
}

void ZeroRuns::close() {
  if (run_.length_us() == 0) return;
  if (may_join_) {
    parts_.push_back(run_);
  } else {
    longest_ = longest_.length_us() == 0 ? run_ : longer(longest_, run_);
  }
  run_ = {kNever_us, kNever_us};
}

void ZeroRuns::put_aside(logs::Microseconds start_us, logs::Microseconds end_us) {
  if (run_.end_us == start_us) may_join_ = true;
  close();
  aside_end_us_ = end_us;
}

void ZeroRuns::settle() {
  may_join_ = true;
  close();
  settling_ = true;
}

Run ZeroRuns::longest() {
  close();
  std::sort(parts_.begin(), parts_.end(), earlier);
  Run joined;
  const auto settle_joined = [&] {
    if (joined.length_us() == 0) return;
    longest_ = longest_.length_us() == 0 ? joined : longer(longest_, joined);
  };
  for (const Run& part : parts_) {
    if (part.start_us == joined.end_us && joined.length_us() != 0) {
      joined.end_us = part.end_us;
    } else {
      settle_joined();
      joined = part;
    }
  }
  settle_joined();
  return longest_;
}

}  // namespace wattweek::metering
