#include "numbers.hpp"

#include <doctest/doctest.h>

#include "wattweek/diag/printable.hpp"
#include "wattweek/units/currency.hpp"

namespace wattweek::report {
namespace {

using units::minor_digits;

// Source: ISO 4217 list one, column "minor unit" (as of 2025).
static_assert(minor_digits("EUR") == 2 && minor_digits("USD") == 2 && minor_digits("GBP") == 2);
static_assert(minor_digits("JPY") == 0 && minor_digits("KRW") == 0 && minor_digits("ISK") == 0);
static_assert(minor_digits("CLP") == 0 && minor_digits("VND") == 0 && minor_digits("XOF") == 0);
static_assert(minor_digits("KWD") == 3 && minor_digits("BHD") == 3 && minor_digits("JOD") == 3);
static_assert(minor_digits("OMR") == 3 && minor_digits("TND") == 3 && minor_digits("IQD") == 3);
static_assert(minor_digits("CLF") == 4 && minor_digits("UYW") == 4);
static_assert(minor_digits("") == 2, "a code that is not known has two");

static_assert(units::price_looks_like_cents(30, "EUR"));
static_assert(!units::price_looks_like_cents(3, "EUR"), "above 3, not from 3 on");
static_assert(!units::price_looks_like_cents(30, "JPY"), "30 yen a kWh is a price");

TEST_CASE("numbers: money has the minor digits of its currency") {
  CHECK(money(12.3, "EUR") == "12.30 EUR");
  CHECK(money(12.3, "JPY") == "12 JPY");
  CHECK(money(12.3, "KWD") == "12.300 KWD");
  CHECK(money(-12.345, "EUR") == "-12.35 EUR");
}

TEST_CASE("numbers: what rounds to zero has no sign") {
  CHECK(money(-0.001, "EUR") == "0.00 EUR");
  CHECK(fixed(-0.0, 1) == "0.0");
  CHECK(exact(-0.0) == "0");
  CHECK(shows_as_zero(-0.004, "EUR"));
  CHECK_FALSE(shows_as_zero(-0.004, "KWD"));
}

TEST_CASE("numbers: an exact number reads back as the same double") {
  CHECK(exact(0.1) == "0.1");
  CHECK(exact(0.1 + 0.2) == "0.30000000000000004");
  CHECK(exact(8760) == "8760");
}

TEST_CASE("numbers: small figures get more decimals") {
  CHECK(decimals_for({0.02, 1314}) == 1);
  CHECK(decimals_for({-2, 3}) == 2);
  CHECK(decimals_for({0.04}) == 3);
  CHECK(decimals_for({0}) == 1);
}

TEST_CASE("numbers: names are shown without what could command a terminal") {
  using diag::printable;
  CHECK(printable("caf\u00E9 \u03A9 \U0001F600") == "caf\u00E9 \u03A9 \U0001F600");
  CHECK(printable("a\x1b[31m\tb\nc\x7f") == "a\\x1B[31m\\x09b\\x0Ac\\x7F");
  CHECK(printable("\u009B2J") == "\\x9B2J");
  CHECK(printable("\u202Eevil") == "\\xE2\\x80\\xAEevil");
  CHECK(printable("\xC3(\xFF\xED\xA0\x80") == "\\xC3(\\xFF\\xED\\xA0\\x80");
  CHECK(printable("\xC0\x80\xF0\x80\x80\x80") == "\\xC0\\x80\\xF0\\x80\\x80\\x80");
  CHECK(diag::column_count("caf\u00E9\xFF") == 5);
}

}  // namespace
}  // namespace wattweek::report
