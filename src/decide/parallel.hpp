#pragma once
// Independent pieces of work on several threads.

#include <cstddef>
#include <functional>

namespace wattweek::decide {

/// Calls `work(piece, worker)` once for each piece in [0, pieces), on up to so many threads, the
/// caller's among them, which alone calls `progress(pieces that are done)`. `worker` is below
/// `threads` and names the thread, for its work space. What comes of a piece must not depend on who
/// does it; then neither does any result.
void for_pieces(std::size_t pieces, unsigned threads,
                const std::function<void(std::size_t piece, unsigned worker)>& work,
                const std::function<void(std::size_t done)>& progress = {});

}  // namespace wattweek::decide
