#pragma once
// The rows that most long logs are made of, read fast: `YYYY-MM-DD HH:MM:SS`, with any marks and
// any ending that stays the same, then the value. On a day that was met before, only the clock and
// the value are new. Whatever does not fit is left to the general way, which knows every layout.

#include <array>
#include <cstring>
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
  /// where the row does not fit.
  const char* read(const char* p, const char* end, Reading& reading) {
    if (!is_known_ || end - p < least_length_) return nullptr;
    if (std::memcmp(p, day_.data(), kDayLength) != 0) return nullptr;
    const int clock_s = clock_of(p);
    if (clock_s < from_s_ || clock_s >= to_s_) return nullptr;
    if (std::memcmp(p + kClockEnd, tail_.data(), tail_length_) != 0) return nullptr;
    const char* const next = value_at(p + kClockEnd + tail_length_, end, reading.value);
    reading.at_us = midnight_us_ + clock_s * Microseconds{1'000'000};
    from_s_ = is_local_ ? clock_s + 1 : 0;
    return next;
  }

 private:
  static constexpr std::size_t kDayLength = 11;
  static constexpr std::size_t kClockEnd = 19;
  static constexpr std::size_t kLongestStamp = 40;
  static constexpr int kDay_s = 86'400;
  static constexpr int kHalfHour_s = 1'800;

  static unsigned two_digits(const char* p) {
    const unsigned tens = static_cast<unsigned char>(p[0]) - unsigned{'0'};
    const unsigned ones = static_cast<unsigned char>(p[1]) - unsigned{'0'};
    return tens <= 9 && ones <= 9 ? tens * 10 + ones : 100;
  }

  // Seconds since midnight of HH:MM:SS behind the day; -1: there is none.
  static int clock_of(const char* row) {
    const unsigned h = two_digits(row + 11), m = two_digits(row + 14), s = two_digits(row + 17);
    if (h > 23 || m > 59 || s > 59 || row[13] != ':' || row[16] != ':') return -1;
    return static_cast<int>((h * 60 + m) * 60 + s);
  }

  const char* value_at(const char* p, const char* end, double& value) const;

  bool is_possible_;
  bool is_local_;
  char delimiter_;
  char decimal_;
  double factor_;
  bool is_known_ = false;
  std::array<char, kDayLength> day_{};
  std::array<char, kLongestStamp> tail_{};  // What stands between clock and value.
  std::size_t tail_length_ = 0;
  std::ptrdiff_t least_length_ = 0;
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
