#include "spoken.hpp"

#include <doctest/doctest.h>

namespace wattweek::report {
namespace {

using std::chrono::year, std::chrono::January, std::chrono::December;

TEST_CASE("spoken: from ten on a number is whole, below it has one digit, below one two") {
  CHECK(spoken(137.6) == "138");
  CHECK(spoken(9.96) == "10");
  CHECK(spoken(9.94) == "9.9");
  CHECK(spoken(4.72) == "4.7");
  CHECK(spoken(0.437) == "0.44");
  CHECK(spoken(-23.04) == "-23");
  CHECK(spoken(0) == "0");
}

TEST_CASE("spoken: an amount is whole from ten on, else it has the digits of its currency") {
  CHECK(spoken_money(56.66, "EUR") == "57 EUR");
  CHECK(spoken_money(4.686, "EUR") == "4.69 EUR");
  CHECK(spoken_money(9.996, "EUR") == "10 EUR");
  CHECK(spoken_money(4.686, "JPY") == "5 JPY");
  CHECK(spoken_amount(-0.25, "EUR") == "-0.25");
  CHECK(spoken_amount(0, "EUR") == "0");
}

TEST_CASE("spoken: a range has as few digits as tell its ends apart") {
  CHECK(with_range(56.7, {0, 1, 53.5, 57, 59.8}) == "57 (54 to 60)");
  CHECK(with_range(5.67, {0, 1, 5.3, 5.7, 6.1}) == "5.7 (5.3 to 6.1)");
  CHECK(with_range(5.67, {0, 0, 5.67, 5.67, 5.67}) == "5.67");
  CHECK(likely_range({0, 1, 53.5, 57, 59.8}) == "54 to 60");
}

TEST_CASE("spoken: what is rare is not called never, and what is nearly sure not certain") {
  CHECK(percent_of(0.26) == "26 %");
  CHECK(percent_of(0.001) == "below 1 %");
  CHECK(percent_of(0.999) == "above 99 %");
  CHECK(percent_of(0) == "0 %");
  CHECK(percent_of(1) == "100 %");
}

TEST_CASE("spoken: a month has its whole name and its year") {
  CHECK(month_name(year(2027) / January) == "January 2027");
  CHECK(month_name(year(2030) / December) == "December 2030");
}

}  // namespace
}  // namespace wattweek::report
