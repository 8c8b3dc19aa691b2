#include "in_order.hpp"

#include <algorithm>
#include <cmath>

namespace wattweek::logs {
namespace {

// Rows that are held back while later ones may still belong before them; 0: none, or all.
std::size_t window_of(Disorder most) {
  constexpr std::size_t kLittle = 1 << 16;
  constexpr std::size_t kMillion = 1 << 20;
  return most == Disorder::a_little ? kLittle : most == Disorder::a_million ? kMillion : 0;
}

// Of a window, what is sorted into it, and handed on, at a time.
std::size_t portion_of(std::size_t window) { return window / 4; }

bool is_earlier(const Reading& a, const Reading& b) { return a.at_us < b.at_us; }

}  // namespace

Disorder more_than(Disorder less) { return static_cast<Disorder>(static_cast<int>(less) + 1); }

InOrder::InOrder(ReadingSink& sink, Disorder most)
    : sink_(sink),
      most_(most),
      window_(window_of(most)),
      batch_(most == Disorder::none ? kBatch : 0) {
  held_.reserve(window_ + portion_of(window_));
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
  if (window_ > 0 && held_.size() == window_ + portion_of(window_)) hand_on_sorted(window_);
  return true;
}

// All but the last, which may yet be replaced.
void InOrder::hand_on_batch() {
  hand_on(std::span(batch_).first(size_ - 1));
  batch_.front() = batch_[size_ - 1];
  size_ = 1;
}

// Puts the rows that came last in their places among those that are in order. The first place that
// changed.
std::size_t InOrder::sort_in() {
  const auto begin = held_.begin();
  const auto fresh = begin + static_cast<std::ptrdiff_t>(in_order_);
  if (fresh == held_.end()) return held_.size();
  const auto is_not_later = [](const Reading& a, const Reading& b) { return a.at_us <= b.at_us; };
  if (std::adjacent_find(fresh, held_.end(), is_not_later) == held_.end()) {
    std::reverse(fresh, held_.end());  // It begins with its newest row.
  } else if (!std::is_sorted(fresh, held_.end(), is_earlier)) {
    std::stable_sort(fresh, held_.end(), is_earlier);
  }
  // Of equal times the one that came later stays behind.
  const auto place = std::upper_bound(begin, fresh, *fresh, is_earlier);
  std::inplace_merge(place, fresh, held_.end(), is_earlier);
  return static_cast<std::size_t>(place - begin);
}

void InOrder::hand_on_sorted(std::size_t kept) {
  const std::size_t changed = sort_in();
  drop_same_times(changed == 0 ? 0 : changed - 1);
  in_order_ = held_.size();
  if (held_.size() <= kept) return;
  const std::size_t count = held_.size() - kept;
  // A later row of the same time may still come, as long as the time itself is not handed on.
  hand_on(std::span(held_).first(count));
  handed_on_us_ = held_[count - 1].at_us;
  held_.erase(held_.begin(), held_.begin() + static_cast<std::ptrdiff_t>(count));
  in_order_ = held_.size();
}

void InOrder::drop_same_times(std::size_t from) {
  std::size_t kept = from;
  for (std::size_t i = from; i < held_.size(); ++i) {
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
