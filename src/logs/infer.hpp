#pragma once
// From the first rows of a log to its layout. Each step decides one thing, says how, and refuses
// where two readings would fit.

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "layout.hpp"
#include "row_time.hpp"
#include "sample.hpp"

namespace wattweek::logs {

/// Why a log cannot be read as it is; `row` and `column` count from 0 in the sample. Without a row
/// it is about the whole log.
struct Refusal {
  std::string message;
  std::size_t row = std::numeric_limits<std::size_t>::max();
  std::size_t column = 0;
};

/// What the steps hand on.
struct Inference {
  const LogOptions& options;
  std::string_view file_name;
  Sample sample;  ///< From `infer_where` on, only the rows that are kept.
  Layout layout{};
  std::vector<std::string> said{};       ///< What was decided, a line each.
  std::optional<Stamps> stamps_named{};  ///< By a heading, or by a second column of times.
};

using Step = std::optional<Refusal>;

/// The steps, in their order.
Step infer_time(Inference& inference);
Step infer_date_order(Inference& inference);
Step infer_where(Inference& inference);
Step infer_value(Inference& inference);
Step infer_number_style(Inference& inference);
Step infer_kind(Inference& inference);
Step infer_stamps(Inference& inference);

/// Reads text apart into rows: decides the delimiter and finds the headings. \pre `text` stays
std::variant<Sample, Refusal> infer_table(std::string_view text, std::optional<char> delimiter,
                                          char& chosen);

/// "'power'", or "column 2" where there are no headings.
std::string column_name(const Sample& sample, std::size_t column);

/// The column of that heading or number, from 1; nothing where there is none.
std::optional<std::size_t> column_named(const Sample& sample, const std::string& name);

/// "there is no column 'x'", with what there is; `option` is what named it.
Refusal no_column(const Sample& sample, std::string_view option, const std::string& name);

/// "--where 'device'=VALUE".
std::string where_option(const Sample& sample, std::size_t column);

/// The columns' names, set apart by commas, of many the first ones.
std::string names_of(const Sample& sample, const std::vector<std::size_t>& columns);

/// What column `c` may be, from the first rows.
struct ColumnFacts {
  std::size_t filled = 0;
  std::size_t no_values = 0;  ///< Of `filled`: words for it.
  std::size_t numbers = 0;
  std::size_t stamps = 0;  ///< A date with a clock time.
  std::size_t dates = 0;   ///< A date alone.
  std::size_t clocks = 0;  ///< A clock time alone.
  std::size_t epochs = 0;
  std::size_t zoned = 0;                  ///< Of `stamps` and `clocks`.
  bool constant = true;                   ///< All filled fields are the same text.
  std::vector<std::string_view> texts{};  ///< Different fields that are no number, a few.
};
ColumnFacts facts_of(const Sample& sample, std::size_t column);

/// The different fields of a column, the first `most` of them; of all rows.
std::vector<std::string_view> different_fields(const Sample& sample, std::size_t column,
                                               std::size_t most);

/// The times of the sample's rows, those that have one, in the order of the file.
std::vector<RowTime> times_of(const Inference& inference);

}  // namespace wattweek::logs
