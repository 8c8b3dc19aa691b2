#include <doctest/doctest.h>

#include "logged.hpp"

namespace wattweek::logs {
namespace {

TEST_CASE("a log of epoch seconds and watts is read as it is") {
  const Logged log = logged("1361117974 41\n1361117980 42\n1361117986 40\n");
  CHECK(log.problems == "");
  REQUIRE(log.readings.size() == 3);
  CHECK(log.readings[1].at_us == 1361117980'000000);
  CHECK(log.readings[1].value == 42);
}

}  // namespace
}  // namespace wattweek::logs
