#pragma once
// Logs in JSON: an array of objects, or an object of parallel arrays, as rows of fields like those
// of delimited text.

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "fields.hpp"

namespace wattweek::logs {

/// Why it cannot be read, and where.
struct JsonMistake {
  std::uint64_t line = 1;
  int column = 1;
  std::string message;
};

/// All rows. Numbers are fields as they are written, strings without quotes, null is empty; members
/// of an object within a row are called "outer.inner"; arrays within a row are passed over.
struct JsonRows {
  std::vector<std::string> names;
  std::vector<std::string_view> fields;                ///< Row by row, one for each name.
  std::vector<std::uint64_t> lines;                    ///< Of each row.
  std::vector<std::vector<std::string_view>> columns;  ///< Parallel arrays, instead of `fields`.
  std::uint64_t last_line = 1;                         ///< Of rows in `columns`.
  std::string unit;                    ///< Of a member "unit" beside the rows; empty: none.
  std::shared_ptr<const void> holder;  ///< Of what the fields point to.

  std::size_t rows() const { return columns.empty() ? lines.size() : columns.front().size(); }
  std::uint64_t line(std::size_t row) const { return columns.empty() ? lines[row] : last_line; }
  void row(std::size_t row, Fields& to) const;
};

/// Reads a whole JSON text. It is held in memory, and so are its rows.
std::variant<JsonRows, JsonMistake> json_rows(std::string text);

/// Whether a text that begins so is JSON.
bool is_json(std::string_view beginning);

}  // namespace wattweek::logs
