#pragma once
// The rows of a text, read under a layout, as fast as may be.

#include <functional>

#include "in_order.hpp"
#include "lines.hpp"
#include "row_reader.hpp"

namespace wattweek::logs {

/// Reads all rows from `blocks` and hands their readings on. False where `in_order` refuses one, or
/// where `reader` has met a contradiction.
bool read_text_rows(LineBlocks& blocks, const Layout& layout, RowReader& reader, InOrder& in_order);

}  // namespace wattweek::logs
