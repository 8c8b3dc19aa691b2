#pragma once
// The first rows of a log, from which its layout is inferred.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "fields.hpp"

namespace wattweek::logs {

class Sample {
 public:
  std::vector<std::string> names;  ///< Headings; empty: there are none.
  std::uint64_t first_line = 1;    ///< Of the first row.

  std::size_t rows() const { return lines_.size(); }
  std::size_t columns() const { return columns_; }
  /// Empty where the row is too short.
  std::string_view field(std::size_t row, std::size_t column) const {
    const std::size_t at = begins_[row] + column;
    return at < begins_[row + 1] ? fields_[at] : std::string_view();
  }
  std::uint64_t line(std::size_t row) const { return lines_[row]; }

  /// \pre what the fields point to stays where it is as long as the sample lives.
  void add(const Fields& fields, std::uint64_t line);
  /// Keeps the rows for which `keep` is true.
  template <class Keep>
  Sample filtered(Keep&& keep) const;

 private:
  std::vector<std::string_view> fields_;
  std::vector<std::size_t> begins_{0};
  std::vector<std::uint64_t> lines_;
  std::size_t columns_ = 0;
};

template <class Keep>
Sample Sample::filtered(Keep&& keep) const {
  Sample kept;
  kept.names = names;
  kept.first_line = first_line;
  Fields fields;
  for (std::size_t row = 0; row < rows(); ++row) {
    if (!keep(row)) continue;
    fields.assign(fields_.begin() + static_cast<std::ptrdiff_t>(begins_[row]),
                  fields_.begin() + static_cast<std::ptrdiff_t>(begins_[row + 1]));
    kept.add(fields, lines_[row]);
  }
  return kept;
}

}  // namespace wattweek::logs
