#include <doctest/doctest.h>

#include "wattweek/diag/diagnostic.hpp"

using wattweek::diag::nearest;

TEST_CASE("the nearest word is one slip of the fingers away") {
  const std::vector<std::string_view> keys{"off", "sleep", "idle", "busy", "max", "curve"};
  CHECK(nearest("idle", keys) == "idle");
  CHECK(nearest("idel", keys) == "idle");   // two letters swapped
  CHECK(nearest("ide", keys) == "idle");    // one left out
  CHECK(nearest("iddle", keys) == "idle");  // one too many
  CHECK(nearest("idlw", keys) == "idle");   // the key beside it
  CHECK(nearest("IDLE", keys) == "idle");
  CHECK(nearest("of", keys) == "off");
  CHECK(nearest("slep", keys) == "sleep");
}

TEST_CASE("nothing is near when more than a third of the letters would have to change") {
  const std::vector<std::string_view> keys{"idle", "curve"};
  CHECK(nearest("price", keys) == "");
  CHECK(nearest("id", keys) == "");
  CHECK(nearest("cover", keys) == "");
  CHECK(nearest("", keys) == "");
  CHECK(nearest("idle", {}) == "");
}

TEST_CASE("a third of the letters is still near") {
  CHECK(nearest("abcdef", {"abcdxy"}) == "abcdxy");
  CHECK(nearest("abcdef", {"abcxyz"}) == "");
  CHECK(nearest("max", {"mix"}) == "mix");
}

TEST_CASE("of equally near words the first is taken, of all the nearest") {
  CHECK(nearest("cat", {"bat", "hat"}) == "bat");
  CHECK(nearest("kwh_per_yaer", {"kwh_per_month", "kwh_per_year"}) == "kwh_per_year");
}

// Optimal string alignment: a swapped pair is one step and is not edited again (so "ca" to
// "abc" is 3, where the unrestricted distance is 2).
TEST_CASE("neighbours that swapped count once") {
  CHECK(nearest("abdc", {"abcd"}) == "abcd");
  CHECK(nearest("badcfe", {"abcdef"}) == "");
  CHECK(nearest("bacdfe", {"abcdef"}) == "abcdef");
}

TEST_CASE("words too long to be typed by hand are near to nothing") {
  const std::string longest(wattweek::diag::kLongestWord, 'a');
  CHECK(nearest(longest, {longest}) == longest);
  const std::string longer = longest + "a";
  CHECK(nearest(longer, {longer}) == "");
}
