#include "day_words.hpp"

#include <doctest/doctest.h>

namespace wattweek::report {
namespace {

std::string words(unsigned long months) { return month_words(model::MonthSet{months}); }

TEST_CASE("day words: a season over the new year is one season") {
  CHECK(words(0b110000000011) == "nov to feb");
  CHECK(words(0b100000000001) == "dec and jan");
}

TEST_CASE("day words: single months, pairs and ranges") {
  CHECK(words(0b000000000100) == "mar");
  CHECK(words(0b000000001100) == "mar and apr");
  CHECK(words(0b000111000100) == "mar and jul to sep");
  CHECK(words(0b010101010101) == "jan, mar, may, jul, sep and nov");
  CHECK(words(0b111111111111) == "every month");
}

}  // namespace
}  // namespace wattweek::report
