// Pieces of work on several threads.

#include "decide/parallel.hpp"

#include <doctest/doctest.h>

#include <atomic>
#include <memory>
#include <new>
#include <stdexcept>
#include <thread>
#include <vector>

using namespace wattweek::decide;

namespace {

void dawdle() { std::this_thread::sleep_for(std::chrono::microseconds(200)); }

}  // namespace

TEST_CASE("every piece is done once, whatever the threads") {
  for (const unsigned threads : {0U, 1U, 2U, 7U, 40U}) {
    for (const std::size_t pieces : {0U, 1U, 5U, 64U, 1000U}) {
      std::vector<std::atomic<int>> done(pieces);
      std::atomic<unsigned> highest_worker{0};
      for_pieces(pieces, threads, [&](std::size_t piece, unsigned worker) {
        ++done[piece];
        unsigned seen = highest_worker;
        while (worker > seen && !highest_worker.compare_exchange_weak(seen, worker)) {
        }
      });
      bool once = true;
      for (const auto& times : done) once = once && times == 1;
      CHECK(once);
      CHECK(highest_worker < std::max(threads, 1U));
    }
  }
}

TEST_CASE("no two threads are one worker at the same time") {
  std::vector<std::atomic<int>> at_work(7);
  std::atomic<bool> alone{true};
  for_pieces(300, 7, [&](std::size_t, unsigned worker) {
    if (++at_work[worker] != 1) alone = false;
    dawdle();
    --at_work[worker];
  });
  CHECK(alone);
}

TEST_CASE("what one piece throws reaches the caller, and the rest is left") {
  for (const unsigned threads : {1U, 2U, 7U}) {
    std::atomic<int> done{0};
    const auto work = [&done](std::size_t piece, unsigned) {
      if (piece == 20) throw std::bad_alloc();
      dawdle();
      ++done;
    };
    CHECK_THROWS_AS(for_pieces(10000, threads, work), std::bad_alloc);
    CHECK(done < 5000);
  }
}

TEST_CASE("what the caller's own progress throws reaches it too") {
  CHECK_THROWS_AS(for_pieces(
                      50, 3, [](std::size_t, unsigned) { dawdle(); },
                      [](std::size_t) { throw std::runtime_error("stop"); }),
                  std::runtime_error);
}

TEST_CASE("progress is told by the caller's thread alone, and never falls") {
  const auto caller = std::this_thread::get_id();
  std::vector<std::size_t> told;
  bool by_caller = true;
  for_pieces(
      200, 4, [](std::size_t, unsigned) { dawdle(); },
      [&](std::size_t done) {
        by_caller = by_caller && std::this_thread::get_id() == caller;
        told.push_back(done);
      });
  CHECK(by_caller);
  REQUIRE(!told.empty());
  CHECK(std::is_sorted(told.begin(), told.end()));
  CHECK(told.front() >= 1);
  CHECK(told.back() <= 200);
}

TEST_CASE("one thread alone tells of every piece in turn") {
  std::vector<std::size_t> told;
  for_pieces(
      5, 1, [](std::size_t, unsigned) {}, [&told](std::size_t done) { told.push_back(done); });
  CHECK(told == std::vector<std::size_t>{1, 2, 3, 4, 5});
}
