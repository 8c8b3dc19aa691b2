#pragma once
// Meter logs as people have them: delimited text or JSON, plain or compressed by gzip, in any of
// the usual layouts. What a log does not say by itself is inferred from its first rows and told;
// where two readings of it would fit, it is refused with the option that decides.
//
// Simplification: the layout is inferred from the first 100,000 rows (64 MiB at most). A row
// further on that fits another layout and not this one is an error, never read as well as it goes.

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/logs/log.hpp"

namespace wattweek::logs {

/// Watts above this are no reading of a plug: such a value is a mark of time without value.
inline constexpr double kHighestReading_w = 1e6;
/// Rows from which the layout is inferred.
inline constexpr std::size_t kInferredRows = 100'000;
/// Bytes of the longest line.
inline constexpr std::size_t kLongestLine = 1 << 20;

/// Order of day, month and year where they are numbers.
enum class DateOrder { dmy, mdy, ymd };

enum class Unit { w, kw, wh, kwh };

/// What the user says about a log; the rest is inferred. A column is named as in the header, or by
/// its number, from 1.
struct LogOptions {
  std::optional<Kind> kind{};
  std::optional<Stamps> stamps{};
  std::optional<std::pair<std::string, std::string>>
      where{};                      ///< Column and value of rows to keep.
  std::optional<char> delimiter{};  ///< A blank stands for any blanks.
  std::optional<char> decimal{};    ///< '.' or ','.
  std::optional<DateOrder> date_order{};
  std::optional<std::string> time_column{};
  std::optional<std::string> power_column{};
  std::optional<std::string> energy_column{};
  std::optional<Unit> unit{};
  /// The zone of time stamps that name none; covers 1970 to 2100.
  std::optional<calendar::ZoneRules> zone{};
};

/// Rows that gave no reading, or a reading without value, by reason: no reading for "no-time",
/// "no-such-hour" (the clocks skipped it), "repeated-heading" and "same-time" (another row counts);
/// a mark of time without value for "no-value", "negative" and "too-high".
struct Dropped {
  std::string reason;
  std::size_t rows = 0;
  std::uint64_t first_line = 0;  ///< 0: not known.
};

struct LogReport {
  Meaning meaning;
  std::size_t rows = 0;  ///< From the first with data on; comments and empty lines are none.
  std::size_t used = 0;  ///< Rows whose value counts.
  std::vector<Dropped> dropped;
  /// What was inferred, a line each: "columns: separated by ';' (--delimiter)".
  std::vector<std::string> inferred;
  bool stamps_name_zone = false;  ///< UTC or an offset stands in each stamp, or they are epochs.
  std::size_t out_of_order = 0;   ///< Rows that stand behind a later one.
  bool sorted_whole = false;      ///< Rows stood so far apart that all had to be held and sorted.
  double tick = 0;                ///< Reserved for the sink's own use: smallest digit, W or Wh.
};

/// How far: bytes read of the file's.
using Progress = std::function<void(std::uint64_t bytes)>;

/// Reads the whole log into the sink, in time order; of rows with equal stamps the last in the file
/// counts. Stamps without zone are clock times in `options.zone`: in the hour that the clocks show
/// twice the file's order decides, the first pass where it does not; in an hour that the clocks
/// skip there is no such time. Memory: what the sink keeps, and a few MiB; 25 MiB where rows stand
/// up to a million apart from their place in time, 16 to 32 bytes for each row where they stand
/// further.
/// Errors with the line where there is one.
std::variant<LogReport, std::vector<diag::Diagnostic>> read_log(const LogFile& file,
                                                                const LogOptions& options,
                                                                ReadingSink& sink,
                                                                const Progress& progress = {});

}  // namespace wattweek::logs
