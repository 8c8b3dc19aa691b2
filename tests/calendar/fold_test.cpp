#include "wattweek/calendar/fold.hpp"

#include <doctest/doctest.h>

#include <numeric>

#include "zones.hpp"

using namespace wattweek;
using namespace wattweek::tests;
using namespace std::chrono_literals;
using model::Window;

namespace {

Window at(model::HourSpan hours) {
  Window window;
  window.hours = {hours};
  return window;
}

}  // namespace

TEST_CASE("the seconds of all situations are the seconds of the year") {
  const Window night = at(clock(22, 0, 6, 0));
  const Window evening = at(clock(19, 30, 23, 15));
  const auto rules = zone("Europe/Berlin", 2027);
  const calendar::Fold folded = calendar::fold(
      {2027y / std::chrono::January, 12, {{{&night}, {}, nullptr}, {{&evening}, {}, nullptr}}, {}},
      rules);
  const auto seconds = calendar::seconds_by_situation(folded);
  CHECK(std::accumulate(seconds.begin(), seconds.end(), std::int64_t{0}) == 8760 * 3600);
  CHECK(folded.situations() == 4);
}

TEST_CASE("ordinary days share one pattern") {
  const Window night = at(clock(22, 0, 6, 0));
  const calendar::Fold folded = calendar::fold(
      {2027y / std::chrono::January, 12, {{{&night}, {}, nullptr}}, {}}, zone("Etc/UTC", 2027));
  CHECK(folded.patterns.size() == 1);
}

TEST_CASE("a day on which the clocks change is a pattern of its own, in two parts") {
  const Window night = at(clock(22, 0, 6, 0));
  const calendar::Fold folded =
      calendar::fold({2027y / std::chrono::January, 12, {{{&night}, {}, nullptr}}, {}},
                     zone("Europe/Berlin", 2027));
  CHECK(folded.patterns.size() == 1 + 2 + 2);
}

TEST_CASE("the first band that holds sets the price") {
  const Window night = at(clock(22, 0, 6, 0));
  const Window always;
  const calendar::FoldInput input{
      2027y / std::chrono::January, 1, {}, {{{&night}, {}, nullptr}, {{&always}, {}, nullptr}}};
  const calendar::Fold folded = calendar::fold(input, zone("Etc/UTC", 2027));
  const auto seconds = calendar::seconds_by_cell(folded);
  CHECK(seconds[folded.cell(0, 0)] == 31 * 8 * 3600);
  CHECK(seconds[folded.cell(0, 1)] == 31 * 16 * 3600);
  CHECK_FALSE(folded.first_uncovered.has_value());
}

TEST_CASE("a moment that no band covers is found, the first one") {
  Window most = at(clock(6, 0, 22, 30));
  most.dates = model::DateSpan{date(2027, 1, 3), date(2027, 12, 31)};
  const Window night = at(clock(22, 30, 6, 0));
  const Window beginning = [] {
    Window window;
    window.dates = model::DateSpan{date(2027, 1, 1), date(2027, 1, 1)};
    return window;
  }();
  const calendar::FoldInput input{
      2027y / std::chrono::January,
      12,
      {},
      {{{&most}, {}, nullptr}, {{&night}, {}, nullptr}, {{&beginning}, {}, nullptr}}};
  const calendar::Fold folded = calendar::fold(input, zone("Europe/Berlin", 2027));
  REQUIRE(folded.first_uncovered.has_value());
  CHECK(calendar::to_text(*folded.first_uncovered) == "2027-01-02 06:00");
}

TEST_CASE("a window that never holds in the period is known") {
  Window february_29;
  february_29.dates = model::DateSpan{date(2028, 2, 29), date(2028, 2, 29)};
  const Window skipped = at(clock(2, 0, 2, 30));
  Window only_that_day = skipped;
  only_that_day.dates = model::DateSpan{date(2027, 3, 28), date(2027, 3, 28)};
  const calendar::Condition condition{{&february_29, &skipped, &only_that_day}, {}, nullptr};
  const calendar::Fold folded = calendar::fold({2027y / std::chrono::January, 12, {condition}, {}},
                                               zone("Europe/Berlin", 2027));
  CHECK_FALSE(folded.condition_windows_ever_hold[0][0]);
  CHECK(folded.condition_windows_ever_hold[0][1]);
  CHECK_FALSE(folded.condition_windows_ever_hold[0][2]);  // 02:00 was skipped on that day.
}

TEST_CASE("the first time of a situation is told by the wall clock") {
  Window film = at(clock(20, 0, 22, 0));
  film.days = model::WeekdaySet{1ULL << model::weekday_bit(std::chrono::Saturday)};
  const calendar::Fold folded =
      calendar::fold({2027y / std::chrono::January, 12, {{{&film}, {}, nullptr}}, {}},
                     zone("Europe/Berlin", 2027));
  std::vector<bool> marked(folded.situations());
  for (std::size_t s = 0; s < marked.size(); ++s) marked[s] = folded.holds(s, 0);
  CHECK(calendar::to_text(calendar::first_time_of(folded, marked)) == "2027-01-02 20:00");
}

TEST_CASE("more than 64 conditions are told apart") {
  std::vector<Window> windows;
  for (int i = 0; i < 90; ++i) windows.push_back(at({i * 15, i * 15 + 15}));
  calendar::FoldInput input{2027y / std::chrono::January, 1, {}, {}};
  for (const Window& window : windows) input.conditions.push_back({{&window}, {}, nullptr});
  const calendar::Fold folded = calendar::fold(input, zone("Etc/UTC", 2027));
  CHECK(folded.situations() == 91);
  const auto seconds = calendar::seconds_by_situation(folded);
  for (std::size_t s = 0; s < 90; ++s) {
    CHECK(folded.holds(s, s));
    CHECK(seconds[s] == 31 * 15 * 60);
  }
}
