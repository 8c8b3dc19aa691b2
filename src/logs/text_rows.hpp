#pragma once
// The rows of a text, read under a layout, as fast as may be.

#include <functional>

#include "in_order.hpp"
#include "lines.hpp"
#include "row_reader.hpp"

namespace wattweek::logs {

/// How far a text was read.
struct TextRead {
  bool is_done = true;     ///< `in_order` took all readings, and `reader` met no contradiction.
  std::uint64_t line = 1;  ///< Behind the last that was read.
};

/// Reads all rows from `blocks` and hands their readings on.
TextRead read_text_rows(LineBlocks& blocks, const Layout& layout, RowReader& reader,
                        InOrder& in_order);

}  // namespace wattweek::logs
