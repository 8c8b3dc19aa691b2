#include "wattweek/diag/number_text.hpp"

#include <doctest/doctest.h>

namespace wattweek::diag {
namespace {

TEST_CASE("numbers: a half goes away from zero, as people round") {
  CHECK(fixed(0.5, 0) == "1");
  CHECK(fixed(2.5, 0) == "3");
  CHECK(fixed(-2.5, 0) == "-3");
  CHECK(fixed(0.125, 2) == "0.13");
  CHECK(fixed(1.005, 2) == "1.01");  // Its double lies a little below.
  CHECK(fixed(2.675, 2) == "2.68");  // So does this one.
}

TEST_CASE("numbers: what is below a half goes down") {
  CHECK(fixed(2.4999999999, 0) == "2");
  CHECK(fixed(0.1249999999, 2) == "0.12");
  CHECK(fixed(-0.004, 2) == "0.00");
}

TEST_CASE("numbers: large figures are shown as they are") {
  CHECK(fixed(99999999999.99, 2) == "99999999999.99");
  CHECK(fixed(1e15, 2) == "1000000000000000.00");
  CHECK(rounded(123456789012345, 1) == "123456789012345");
}

TEST_CASE("numbers: zeros at the end are left out where so many digits are the most") {
  CHECK(rounded(91.25, 2) == "91.25");
  CHECK(rounded(8.5, 2) == "8.5");
  CHECK(rounded(8760, 2) == "8760");
  CHECK(rounded(8760.5, 2) == "8760.5");
  CHECK(fixed(8760.5, 2) == "8760.50");
  CHECK(rounded(3, 2) == "3");
  CHECK(rounded(100, 0) == "100");
  CHECK(rounded(-0.001, 2) == "0");
}

}  // namespace
}  // namespace wattweek::diag
