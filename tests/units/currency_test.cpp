#include "wattweek/units/currency.hpp"

#include <doctest/doctest.h>

using wattweek::units::minor_digits;

TEST_CASE("currencies are counted as ISO 4217 lists them: most in hundredths, some not") {
  // Source: ISO 4217 list one, column "minor unit".
  CHECK(minor_digits("EUR") == 2);
  CHECK(minor_digits("JPY") == 0);
  CHECK(minor_digits("KWD") == 3);
  CHECK(minor_digits("CLF") == 4);
  CHECK(minor_digits("ZZZ") == 2);
}
