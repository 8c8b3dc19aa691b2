#include "in_order.hpp"

#include <algorithm>
#include <cmath>

namespace wattweek::logs {
namespace {

constexpr std::size_t kMillion = 1 << 20;

bool is_earlier(const Reading& a, const Reading& b) { return a.at_us < b.at_us; }

}  // namespace

InOrder::InOrder(ReadingSink& sink, Disorder most)
    : sink_(sink), most_(most), batch_(most == Disorder::none ? kBatch : 0) {
  if (most == Disorder::a_million) held_.reserve(2 * kMillion);
}

bool InOrder::add_otherwise(const Reading& reading) {
  if (most_ != Disorder::none) return add_disordered(reading);
  if (reading.at_us < last_us_) return false;
  if (reading.at_us > last_us_) {
    hand_on_batch();
    return add(reading);
  }
  same_time_ += !std::isnan(batch_[size_ - 1].value);
  batch_[size_ - 1] = reading;
  return true;
}

bool InOrder::add_disordered(const Reading& reading) {
  if (reading.at_us <= handed_on_us_) return false;
  out_of_order_ += reading.at_us < last_us_;
  last_us_ = std::max(last_us_, reading.at_us);
  held_.push_back(reading);
  if (most_ == Disorder::a_million && held_.size() == 2 * kMillion) hand_on_sorted(kMillion);
  return true;
}

// All but the last, which may yet be replaced.
void InOrder::hand_on_batch() {
  hand_on(std::span(batch_).first(size_ - 1));
  batch_.front() = batch_[size_ - 1];
  size_ = 1;
}

// A log that begins with its newest row need not be sorted to be in order.
void InOrder::sort() {
  const auto is_not_later = [](const Reading& a, const Reading& b) { return a.at_us <= b.at_us; };
  if (std::adjacent_find(held_.begin(), held_.end(), is_not_later) == held_.end()) {
    std::reverse(held_.begin(), held_.end());
  } else {
    std::stable_sort(held_.begin(), held_.end(), is_earlier);
  }
}

void InOrder::hand_on_sorted(std::size_t kept) {
  sort();
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
  hand_on(std::span(batch_).first(size_));
  size_ = 0;
}

}  // namespace wattweek::logs
