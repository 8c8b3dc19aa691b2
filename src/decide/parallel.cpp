#include "parallel.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace wattweek::decide {

void for_pieces(std::size_t pieces, unsigned threads,
                const std::function<void(std::size_t piece, unsigned worker)>& work,
                const std::function<void(std::size_t done)>& progress) {
  std::atomic<std::size_t> next{0};
  std::atomic<std::size_t> done{0};
  std::exception_ptr failure;
  std::mutex guards_failure;
  const auto run = [&](unsigned worker) {
    try {
      for (std::size_t piece = next++; piece < pieces; piece = next++) {
        work(piece, worker);
        ++done;
        if (worker == 0 && progress) progress(done);
      }
    } catch (...) {  // Out of memory: carried over to the caller.
      const std::lock_guard lock(guards_failure);
      failure = std::current_exception();
      next = pieces;
    }
  };
  std::vector<std::thread> others;
  const std::size_t used = std::min<std::size_t>(std::max(threads, 1U), pieces);
  for (unsigned worker = 1; worker < used; ++worker) others.emplace_back(run, worker);
  run(0);
  for (std::thread& other : others) other.join();
  if (failure) std::rethrow_exception(failure);
}

}  // namespace wattweek::decide
