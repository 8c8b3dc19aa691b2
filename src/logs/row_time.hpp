#pragma once
// The time of a row, from its fields.

#include <optional>
#include <string>
#include <string_view>

#include "layout.hpp"
#include "stamps.hpp"

namespace wattweek::logs {

/// A time as it stands in the row: in UTC, or as the clocks showed it.
struct RowTime {
  Microseconds us = 0;
  bool is_utc = false;
};

/// The date of a row before, as it was written: most rows are of the same day.
struct KnownDate {
  std::string text{};  ///< All that stands before the clock time; empty: none is known.
  Microseconds midnight_us = 0;
};

/// `clock` is the field of the clock time, where the layout has one. Nothing where the fields hold
/// no time of this layout. `known` saves reading the same date again.
std::optional<RowTime> time_of(const TimeLayout& layout, std::string_view date,
                               std::string_view clock, KnownDate& known);
std::optional<RowTime> time_of(const TimeLayout& layout, std::string_view date,
                               std::string_view clock);

}  // namespace wattweek::logs
