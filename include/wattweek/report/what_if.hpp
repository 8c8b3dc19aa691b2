#pragma once
// What-if grids as text that people and programs read. CSV and JSON come in pieces, so that a grid
// of any size can be written as it is reckoned.

#include <string>
#include <vector>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/turns.hpp"
#include "wattweek/decide/what_if.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {

/// The study and its grid, and what the reckoning of the study as it stands came to.
struct WhatIfShown {
  const model::Study& study;
  const decide::Assessment& assessment;
  const std::vector<decide::Sweep>& sweeps;
};

/// RFC 4180: the line of headers, with a line end.
std::string what_if_csv_header(const WhatIfShown& shown);

/// The factors' values, the best, and three figures of each candidate, in a line for each row.
std::string what_if_csv(const WhatIfShown& shown, const decide::Rows& rows);

/// JSON of the format `wattweek-whatif-1`: its beginning, rows, and its end.
std::string what_if_json_begin(const WhatIfShown& shown);
std::string what_if_json(const WhatIfShown& shown, const decide::Rows& rows);
std::string what_if_json_end(const WhatIfShown& shown,
                             const std::vector<decide::Crossing>& crossings);

/// Rows of at most this many are shown as text; of a sweep with more points, evenly chosen ones.
inline constexpr std::size_t kMostShownRows = 21;

/// One factor: a table, a line that shows where the best candidate changes, and the crossings as
/// sentences. `rows` are all rows of the sweep; `line` are those of the same sweep at as many
/// points as the line has characters.
std::string what_if_text(const WhatIfShown& shown, const decide::Rows& rows,
                         const decide::Rows& line, const std::vector<decide::Crossing>& crossings,
                         const Style& style);

/// Two factors: a map of the best candidate, the first factor downwards. `map` holds the rows of a
/// grid of `lines` times as many points as a line has characters.
std::string what_if_map(const WhatIfShown& shown, const decide::Rows& map, std::size_t lines,
                        const Style& style);

/// What would change the answer, factor by factor, as sentences. \pre `shown.sweeps` is empty.
std::string turns_text(const WhatIfShown& shown, const decide::AllTurns& turns, const Style& style);

/// JSON of the format `wattweek-turns-1`.
std::string turns_json(const WhatIfShown& shown, const decide::AllTurns& turns);

/// Characters of the line and of the map's lines.
std::size_t what_if_columns(const Style& style);

}  // namespace wattweek::report
