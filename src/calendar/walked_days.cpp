#include "walked_days.hpp"

#include "price_bands.hpp"
#include "wattweek/calendar/tariff_time.hpp"

namespace wattweek::calendar {

namespace {

constexpr std::size_t kWeekdays = 7;
constexpr std::size_t kMonths = 12;
constexpr std::size_t kCounted = kWeekdays + kMonths;  // Does the date count as `count_as`?
constexpr std::size_t kSpans = kCounted + 1;

// Holds in the first minute of a day if its filters pass on the day before: the fold's own rule
// for hours over midnight.
constexpr model::HourSpan kAroundMidnight{1439, 1};

// Conditions that say what a date is and, by its first minute, what the day before was.
class Marks {
 public:
  Marks(const model::Tariff& tariff, const std::vector<model::DateSpan>& spans)
      : count_as_(tariff.holidays.count_as), windows_(kSpans + spans.size()) {
    for (std::size_t d = 0; d < kWeekdays; ++d) windows_[d].days = model::WeekdaySet{1ULL << d};
    for (std::size_t m = 0; m < kMonths; ++m) {
      windows_[kWeekdays + m].months = model::MonthSet{1ULL << m};
    }
    windows_[kCounted].days =
        count_as_ ? model::WeekdaySet{1ULL << model::weekday_bit(*count_as_)} : model::WeekdaySet{};
    for (std::size_t s = 0; s < spans.size(); ++s) windows_[kSpans + s].dates = spans[s];
    eves_ = windows_;
    for (model::Window& eve : eves_) eve.hours = {kAroundMidnight};
    for (const auto* windows : {&windows_, &eves_}) {
      for (const model::Window& window : *windows) conditions_.push_back({{&window}, {}, nullptr});
      conditions_[conditions_.size() - windows_.size() + kCounted].holidays = &tariff.holidays;
    }
  }
  Marks(const Marks&) = delete;
  Marks& operator=(const Marks&) = delete;

  const std::vector<Condition>& conditions() const { return conditions_; }

  DayMarks today(const Fold& folded, std::size_t situation) const {
    return read(folded, situation, 0);
  }
  // Of the situation in the day's first minute.
  DayMarks yesterday(const Fold& folded, std::size_t situation) const {
    return read(folded, situation, windows_.size());
  }

 private:
  DayMarks read(const Fold& folded, std::size_t situation, std::size_t from) const {
    const auto holds = [&](std::size_t mark) { return folded.holds(situation, from + mark); };
    DayMarks marks;
    for (unsigned d = 0; d < kWeekdays; ++d) {
      if (holds(d)) marks.weekday = d;
    }
    for (unsigned m = 0; m < kMonths; ++m) {
      if (holds(kWeekdays + m)) marks.month = m;
    }
    marks.is_holiday =
        count_as_ && holds(kCounted) && marks.weekday != model::weekday_bit(*count_as_);
    for (std::size_t s = kSpans; s < windows_.size(); ++s) marks.spans.push_back(holds(s));
    return marks;
  }

  std::optional<std::chrono::weekday> count_as_;
  std::vector<model::Window> windows_;
  std::vector<model::Window> eves_;
  std::vector<Condition> conditions_;
};

// The bands alone: the marks cut a day too.
std::vector<Stretch> stretches_of(const DayPattern& pattern) {
  std::vector<Stretch> stretches;
  std::int64_t at_s = 0;
  for (const Slice& slice : pattern.slices) {
    const auto begin = static_cast<int>(at_s / 60);
    at_s += slice.seconds;
    const auto end = static_cast<int>(at_s / 60);
    if (!stretches.empty() && stretches.back().band == slice.band) {
      stretches.back().end_min = end;
    } else {
      stretches.push_back({begin, end, slice.band});
    }
  }
  return stretches;
}

}  // namespace

std::vector<WalkedDay> walked_days(const model::Tariff& tariff,
                                   const std::vector<model::DateSpan>& spans) {
  const Marks marks(tariff, spans);
  const std::vector<Condition> bands = bands_of(tariff);
  std::vector<WalkedDay> days;
  for (const Months& run : years_to_try(tariff)) {
    const Fold folded = fold({run.first, run.count, marks.conditions(), bands}, ZoneRules{});
    for (const DayPattern& pattern : folded.patterns) {
      const std::size_t first_minute = pattern.slices.front().situation;
      days.push_back({marks.today(folded, first_minute), marks.yesterday(folded, first_minute),
                      std::chrono::floor<std::chrono::days>(pattern.first), stretches_of(pattern)});
    }
  }
  return days;
}

}  // namespace wattweek::calendar
