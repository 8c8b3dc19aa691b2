#pragma once
// The rows that most long logs are made of, read fast: `YYYY-MM-DD HH:MM:SS`, with any marks and
// any ending that stays the same, then the value. On a day that was met before, only the clock and
// the value are new. Whatever does not fit is left to the general way, which knows every layout.

#include <array>
#include <bit>
#include <cstdint>
#include <cstring>
#include <limits>
#include <optional>
#include <string_view>

#include "layout.hpp"

namespace wattweek::logs {

class KnownDay {
 public:
  explicit KnownDay(const Layout& layout);

  /// Learns the day of a row that was read the general way.
  void learn(std::string_view line, Microseconds at_us);

  /// Reads the row at `p`, which ends before `end` by '\n', and says where the next begins; null
  /// where the row does not fit. \pre eight bytes more behind `end` may be looked at
  const char* read(const char* p, const char* end, Reading& reading) {
    if (end - p < least_length_) return nullptr;
    const bool same_day = word_at(p) == day_word_ && word_at(p + 3) == day_end_word_;
    const std::uint64_t ending = word_at(p + kClockEnd) & ending_mask_;
    const int clock_s = seconds_of(word_at(p + kDayLength));
    if (!same_day || ending != ending_word_ || clock_s < from_s_ || clock_s >= to_s_)
      return nullptr;
    reading.at_us = midnight_us_ + clock_s * Microseconds{1'000'000};
    from_s_ = is_local_ ? clock_s + 1 : 0;
    return value_at(p + kClockEnd + ending_length_, end, reading.value);
  }

 private:
  static constexpr std::size_t kDayLength = 11;
  static constexpr std::size_t kClockEnd = 19;
  static constexpr std::size_t kLongestEnding = 8;
  static constexpr std::ptrdiff_t kNothingKnown = std::numeric_limits<std::ptrdiff_t>::max();
  static constexpr int kDay_s = 86'400;
  static constexpr int kHalfHour_s = 1'800;

  // Eight characters, the first in the lowest byte.
  static std::uint64_t word_at(const char* p) {
    std::uint64_t word = 0;
    if constexpr (std::endian::native == std::endian::little) {
      std::memcpy(&word, p, sizeof word);
    } else {
      for (unsigned i = 0; i < 8; ++i) {
        word |= std::uint64_t{static_cast<unsigned char>(p[i])} << (8 * i);
      }
    }
    return word;
  }

  // Seconds since midnight of the word HH:MM:SS; -1 where it is no such clock time. All six digits
  // at once: what is left of them without '0' must be 0 to 9, and without ':' nothing.
  static int seconds_of(std::uint64_t word) {
    constexpr std::uint64_t kForm = 0x3030'3a30'303a'3030;  // "00:00:00"
    const std::uint64_t digits = word ^ kForm;
    if (((digits + 0x0606'0606'0606'0606) | digits) & 0xf0f0'f0f0'f0f0'f0f0) return -1;
    if (digits & 0x0000'ff00'00ff'0000) return -1;
    const std::uint64_t pairs = digits * 10 + (digits >> 8);
    const auto h = static_cast<unsigned>(pairs & 0xff);
    const auto m = static_cast<unsigned>(pairs >> 24 & 0xff);
    const auto s = static_cast<unsigned>(pairs >> 48 & 0xff);
    if (h > 23 || m > 59 || s > 59) return -1;
    return static_cast<int>((h * 60 + m) * 60 + s);
  }

  const char* value_at(const char* p, const char* end, double& value) const;

  bool is_possible_;
  bool is_local_;
  char delimiter_;
  char decimal_;
  double factor_;
  std::uint64_t day_word_ = 0;      // The first eight characters of the day ...
  std::uint64_t day_end_word_ = 0;  // ... and the last eight.
  std::uint64_t ending_word_ = 0;   // What stands between clock and value, the delimiter included.
  std::uint64_t ending_mask_ = 0;
  std::size_t ending_length_ = 0;
  std::ptrdiff_t least_length_ = kNothingKnown;
  Microseconds midnight_us_ = 0;
  // Clock times for which `midnight_us_` holds. A zone may change its offset at full and half
  // hours, and then rows of a past time may follow: of local clocks only the same half-hour is
  // known, and only as it goes on.
  int from_s_ = 0;
  int to_s_ = kDay_s;
};

inline const char* KnownDay::value_at(const char* p, const char* end, double& value) const {
  // Both numbers are exact, so that their quotient is rounded once.
  constexpr std::array<double, 10> kPowersOfTen = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};
  const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  std::uint64_t number = 0;
  const char* const begin = p;
  for (; is_digit(*p); ++p) number = number * 10 + static_cast<std::uint64_t>(*p - '0');
  if (p == begin) return nullptr;
  std::ptrdiff_t decimals = 0;
  if (*p == decimal_) {
    const char* const point = p++;
    for (; is_digit(*p); ++p) number = number * 10 + static_cast<std::uint64_t>(*p - '0');
    decimals = p - point - 1;
  }
  if (p - begin > 15 || decimals > 9) return nullptr;
  value = static_cast<double>(number) / kPowersOfTen[static_cast<std::size_t>(decimals)] * factor_;
  if (value > kHighestReading_w) return nullptr;
  if (*p == '\r') ++p;
  if (*p == '\n') return p + 1;
  if (*p != delimiter_) return nullptr;
  return static_cast<const char*>(std::memchr(p, '\n', static_cast<std::size_t>(end - p))) + 1;
}

}  // namespace wattweek::logs
