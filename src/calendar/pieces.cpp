#include "pieces.hpp"

#include <algorithm>

namespace wattweek::calendar {

std::vector<Piece> pieces_of(const std::vector<Month>& months, const ZoneRules& zone) {
  std::vector<Piece> pieces;
  for (std::size_t m = 0; m < months.size(); ++m) {
    Instant begin = months[m].begin;
    auto change = std::upper_bound(zone.changes.begin(), zone.changes.end(), begin,
                                   [](Instant i, const OffsetChange& c) { return i < c.at; });
    while (begin < months[m].end) {
      const Instant end =
          change == zone.changes.end() ? months[m].end : std::min(change->at, months[m].end);
      const LocalTime shown = local_time(zone, begin);
      pieces.push_back({static_cast<std::uint32_t>(m), shown, shown + (end - begin)});
      begin = end;
      if (change != zone.changes.end()) ++change;
    }
  }
  return pieces;
}

DayPart part_of(const Piece& piece, model::CivilDay day) {
  const LocalTime midnight{day};
  const auto begin = std::max(piece.begin, midnight) - midnight;
  const auto end = std::min(piece.end, midnight + std::chrono::days{1}) - midnight;
  return {day, begin.count(), end.count()};
}

}  // namespace wattweek::calendar
