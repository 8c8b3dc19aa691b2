#pragma once
// The time of a row, from its fields.

#include <optional>
#include <string_view>

#include "layout.hpp"
#include "stamps.hpp"

namespace wattweek::logs {

/// A time as it stands in the row: in UTC, or as the clocks showed it.
struct RowTime {
  Microseconds us = 0;
  bool is_utc = false;
};

/// `clock` is the field of the clock time, where the layout has one. Nothing where the fields hold
/// no time of this layout.
std::optional<RowTime> time_of(const TimeLayout& layout, std::string_view date,
                               std::string_view clock);

}  // namespace wattweek::logs
