#pragma once
// Time stamps as logs write them: read without knowing what order their numbers have, and then put
// together under one.

#include <optional>
#include <string_view>

#include "wattweek/logs/read_log.hpp"

namespace wattweek::logs {

inline constexpr Microseconds kSecond = 1'000'000;
inline constexpr Microseconds kDay = 86'400 * kSecond;
/// Stamps that are accepted lie in [kEarliest, kLatest): 1971 to 2099.
inline constexpr Microseconds kEarliest = 365 * kDay;
inline constexpr Microseconds kLatest = 47'117 * kDay;

/// How the date of a stamp is written.
enum class DateForm {
  none,        ///< A clock time alone.
  year_first,  ///< 2024-10-27, 20241027
  numbers,     ///< 05/12/2011, 5.12.11: its order must be known.
  named,       ///< 01jan2022, Jan 1, 2023
};

/// What stands in a stamp.
struct Stamp {
  DateForm form = DateForm::none;
  int numbers[3] = {0, 0, 0};  ///< As written; year, month, day unless `form` is `numbers`.
  bool dots = false;           ///< The numbers are set apart by dots.
  bool short_year = false;     ///< Three numbers of up to two digits each.
  bool has_clock = false;
  Microseconds clock_us = 0;  ///< Since local midnight; 24:00 is the end of the day.
  std::size_t clock_at = 0;   ///< Where the clock time begins in the field.
  bool is_range = false;      ///< Its interval's end stands behind it: "00:00 - 00:15".
  std::optional<int> utc_offset_s{};

  friend bool operator==(const Stamp&, const Stamp&) = default;
};

/// Reads a whole field as a date, a clock time, or both; nothing where it is neither. Impossible
/// dates are told by `local_us`. Of two with " - " between them, which are an interval, the first.
std::optional<Stamp> stamp_of(std::string_view field);

/// Reads what stands behind a date: a clock time, with or without zone.
std::optional<Stamp> clock_of(std::string_view text);

/// What the stamp's clock shows, since 1970-01-01 00:00 of the same clock; nothing where there is
/// no such date under that order.
std::optional<Microseconds> local_us(const Stamp& stamp, DateOrder order);

/// Whether the stamp has a date that there is under some order: eight digits may be a register.
bool has_possible_date(const Stamp& stamp);

/// Since 1970 in UTC, in seconds, with fraction or in thousandths, millionths or
/// milliardths; nothing where the field is no number of such a size. Years before 2000 are not
/// taken: such numbers are registers in Wh.
std::optional<Microseconds> epoch_us(std::string_view field, char decimal);

/// "seconds", "milliseconds", "microseconds" or "nanoseconds": what `epoch_us` takes the field for.
std::string_view epoch_unit(std::string_view field);

}  // namespace wattweek::logs
