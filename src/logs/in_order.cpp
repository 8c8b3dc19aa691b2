#include "in_order.hpp"

#include <algorithm>
#include <cmath>

namespace wattweek::logs {
namespace {

constexpr std::size_t kMillion = 1 << 20;

bool is_earlier(const Reading& a, const Reading& b) { return a.at_us < b.at_us; }

}  // namespace

InOrder::InOrder(ReadingSink& sink, Disorder most) : sink_(sink), most_(most) {
  held_.reserve(most == Disorder::none ? kBatch : most == Disorder::a_million ? 2 * kMillion : 0);
}

bool InOrder::add_out_of_order(const Reading& reading) {
  if (most_ == Disorder::none) {
    if (reading.at_us < last_us_) return false;
    same_time_ += !std::isnan(held_.back().value);
    held_.back() = reading;
    return true;
  }
  if (reading.at_us <= handed_on_us_) return false;
  out_of_order_ += reading.at_us < last_us_;
  last_us_ = std::max(last_us_, reading.at_us);
  held_.push_back(reading);
  if (most_ == Disorder::a_million && held_.size() == 2 * kMillion) hand_on_sorted(kMillion);
  return true;
}

// All but the last, which may yet be replaced.
void InOrder::hand_on_batch() {
  hand_on(std::span(held_).first(held_.size() - 1));
  held_.front() = held_.back();
  held_.resize(1);
}

void InOrder::hand_on_sorted(std::size_t kept) {
  std::stable_sort(held_.begin(), held_.end(), is_earlier);
  drop_same_times();
  if (held_.size() <= kept) return;
  const std::size_t count = held_.size() - kept;
  // A later row of the same time may still come, as long as the time itself is not handed on.
  hand_on(std::span(held_).first(count));
  handed_on_us_ = held_[count - 1].at_us;
  held_.erase(held_.begin(), held_.begin() + static_cast<std::ptrdiff_t>(count));
}

void InOrder::drop_same_times() {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < held_.size(); ++i) {
    const bool is_last = i + 1 == held_.size() || held_[i + 1].at_us != held_[i].at_us;
    if (is_last) {
      held_[kept++] = held_[i];
    } else {
      same_time_ += !std::isnan(held_[i].value);
    }
  }
  held_.resize(kept);
}

void InOrder::hand_on(std::span<const Reading> readings) {
  if (readings.empty()) return;
  used_ += static_cast<std::size_t>(std::count_if(
      readings.begin(), readings.end(), [](const Reading& r) { return !std::isnan(r.value); }));
  sink_.take(readings);
}

void InOrder::finish() {
  if (most_ != Disorder::none) return hand_on_sorted(0);
  hand_on(held_);
  held_.clear();
}

}  // namespace wattweek::logs
