// Times as numbers since 1970.

#include <algorithm>
#include <array>
#include <charconv>

#include "scanner.hpp"
#include "stamps.hpp"

namespace wattweek::logs {
namespace {

constexpr Microseconds kEarliestEpoch = 10'957 * kDay;  // 2000-01-01

}  // namespace

std::optional<Microseconds> epoch_us(std::string_view field, char decimal) {
  const std::size_t mark = field.find(decimal);
  const std::string_view whole = field.substr(0, mark);
  const char* const end = whole.data() + whole.size();
  std::int64_t number = 0;
  const auto [stop, error] = std::from_chars(whole.data(), end, number);
  if (error != std::errc{} || stop != end || number <= 0) return std::nullopt;
  constexpr std::array<Microseconds, 3> kPerSecond = {1, 1'000, 1'000'000};
  for (const Microseconds per_second : kPerSecond) {
    const Microseconds unit_us = kSecond / per_second;
    if (number < kEarliestEpoch / unit_us || number >= kLatest / unit_us) continue;
    Microseconds at = number * unit_us;
    if (mark == std::string_view::npos) return at;
    Microseconds place = unit_us;
    for (const char c : field.substr(mark + 1)) {
      if (!is_digit(c)) return std::nullopt;
      at += (place /= 10) * (c - '0');
    }
    return at;
  }
  const std::int64_t from_ns = number / 1000;
  const bool is_ns =
      from_ns >= kEarliestEpoch && from_ns < kLatest && mark == std::string_view::npos;
  return is_ns ? std::optional(from_ns) : std::nullopt;
}

std::string_view epoch_unit(std::string_view field) {
  constexpr std::size_t kDigitsOfSeconds = 10;
  constexpr std::array<std::string_view, 4> kUnits = {"seconds", "milliseconds", "microseconds",
                                                      "nanoseconds"};
  const std::size_t digits = Scanner(field).digits_ahead();
  return kUnits[std::min(kUnits.size() - 1,
                         (std::max(digits, kDigitsOfSeconds) - kDigitsOfSeconds + 2) / 3)];
}

}  // namespace wattweek::logs
