#include "known_day.hpp"

namespace wattweek::logs {
namespace {

// A digit is never found where the decimal mark is looked for: behind all digits.
constexpr char kNever = '0';

}  // namespace

KnownDay::KnownDay(const Layout& layout)
    : is_possible_(layout.time.column == 0 && !layout.time.clock_column && !layout.time.epoch &&
                   layout.value_column == 1 && !layout.where && layout.delimiter != ' ' &&
                   layout.delimiter != layout.style.decimal),
      is_local_(!layout.time.names_zone && !layout.time.is_utc),
      delimiter_(layout.delimiter),
      decimal_(layout.style.decimal == kNoMark ? kNever : layout.style.decimal),
      factor_(factor_of(layout.unit)) {}

void KnownDay::learn(std::string_view line, Microseconds at_us) {
  least_length_ = kNothingKnown;
  const std::size_t length = line.find(delimiter_);
  if (!is_possible_ || length == std::string_view::npos || length < kClockEnd ||
      length - kClockEnd >= kLongestEnding || line.find('"') != std::string_view::npos) {
    return;
  }
  const std::string_view ending = line.substr(kClockEnd, length + 1 - kClockEnd);
  // A fraction of a second, and halves of the day, change from row to row.
  if (ending.substr(0, ending.size() - 1).find_first_of(".,mM") != std::string_view::npos) return;
  const int clock_s = seconds_of(word_at(line.data() + kDayLength));
  if (clock_s < 0) return;
  day_word_ = word_at(line.data());
  day_end_word_ = word_at(line.data() + kDayLength - 8);
  ending_length_ = ending.size();
  ending_mask_ = ~std::uint64_t{0} >> (8 * (kLongestEnding - ending_length_));
  ending_word_ = word_at(line.data() + kClockEnd) & ending_mask_;
  least_length_ = static_cast<std::ptrdiff_t>(kClockEnd + ending_length_ + 1);
  midnight_us_ = at_us - clock_s * Microseconds{1'000'000};
  from_s_ = is_local_ ? clock_s + 1 : 0;
  to_s_ = is_local_ ? (clock_s / kHalfHour_s + 1) * kHalfHour_s : kDay_s;
}

}  // namespace wattweek::logs
