#pragma once
// A study's time in pieces within which local time simply goes on.

#include <cstdint>
#include <vector>

#include "wattweek/calendar/zone.hpp"

namespace wattweek::calendar {

/// A run of local time under one UTC offset within one month.
struct Piece {
  std::uint32_t month = 0;  ///< Which of the months.
  LocalTime begin;
  LocalTime end;
};

std::vector<Piece> pieces_of(const std::vector<Month>& months, const ZoneRules& zone);

/// The part of a local day that a piece covers, in seconds since its midnight.
struct DayPart {
  model::CivilDay day;
  std::int64_t begin_s = 0;
  std::int64_t end_s = 86400;

  bool whole() const { return begin_s == 0 && end_s == 86400; }
};

DayPart part_of(const Piece& piece, model::CivilDay day);

}  // namespace wattweek::calendar
