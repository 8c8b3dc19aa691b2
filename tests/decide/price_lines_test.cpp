// A cost as lines of the price factor, against bills added up month by month.

#include "decide/price_lines.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

using namespace wattweek;
using namespace wattweek::decide;

namespace {

constexpr double kTax = 0.2;

billing::TariffLaw law_with_minimum(double minimum) {
  billing::TariffLaw law;
  law.tax = kTax;
  law.minimum_per_month = units::money(minimum);
  return law;
}

/// What stands on the bills with the candidate, less what stands there without.
double on_the_bills(double minimum, const std::vector<billing::Charges>& charges,
                    const std::vector<double>& with, double factor) {
  double sum = 0;
  for (std::size_t m = 0; m < with.size(); ++m) {
    sum += std::max(minimum, charges[m].standing + factor * with[m]);
    sum -= std::max(minimum, charges[m].standing + factor * charges[m].without);
  }
  return sum * (1 + kTax);
}

double along(const std::vector<PriceLine>& lines, double factor) {
  std::size_t at = 0;
  while (lines[at + 1].from <= factor) ++at;
  return lines[at].at_zero + lines[at].slope * factor;
}

}  // namespace

TEST_CASE("lines of the price give what stands on the bills, whichever minimum binds") {
  std::mt19937_64 engine(7);
  const auto between = [&engine](double low, double high) {
    return low + (high - low) * static_cast<double>(engine() >> 11U) * 0x1p-53;
  };
  constexpr double kMinimum = 40;
  for (int study = 0; study < 200; ++study) {
    std::vector<billing::Charges> charges;
    std::vector<double> with;
    for (int month = 0; month < 12; ++month) {
      // Some standing charges are above the minimum, some prices negative, some homes empty.
      charges.push_back({between(0, 50), month == 5 ? 0.0 : between(-20, 60)});
      with.push_back(charges.back().without + (month == 7 ? 0.0 : between(-10, 30)));
    }
    const double low = study % 2 == 0 ? 0 : 0.4;
    PriceLines finder(law_with_minimum(kMinimum), with.size(), low, 3);
    std::vector<PriceLine> lines(finder.most());
    finder.find(charges, with, lines.data());
    CHECK(lines[2].from < 3);  // It does bend.
    for (double factor = low; factor <= 3; factor += 0.01) {
      CAPTURE(factor);
      CHECK(along(lines, factor) ==
            doctest::Approx(on_the_bills(kMinimum, charges, with, factor)).epsilon(1e-12));
    }
  }
}

TEST_CASE("where every minimum binds a candidate costs nothing, to the last digit") {
  const std::vector<billing::Charges> charges = {{1.1, 10.3}, {0.7, 20.7}, {0.9, 30.1}};
  const std::vector<double> with = {11.7, 25.3, 33.9};
  PriceLines finder(law_with_minimum(40), with.size(), 0, 3);
  std::vector<PriceLine> lines(finder.most());
  finder.find(charges, with, lines.data());
  CHECK(lines[0].at_zero == 0);
  CHECK(lines[0].slope == 0);
  // The first bill to rise above it is that of the third month.
  CHECK(lines[1].from == doctest::Approx((40 - 0.9) / 33.9));
}

TEST_CASE("without a minimum, and at a single price, one line is enough") {
  const std::vector<billing::Charges> charges = {{1, 10}, {1, 20}};
  const std::vector<double> with = {15, 22};
  billing::TariffLaw law = law_with_minimum(18);
  for (const bool has_minimum : {false, true}) {
    if (!has_minimum) law.minimum_per_month.reset();
    PriceLines finder(law, with.size(), 1, has_minimum ? 1 : 3);
    REQUIRE(finder.most() == 2);
    std::vector<PriceLine> lines(2);
    finder.find(charges, with, lines.data());
    // Under a minimum of 18 the first month's bill is 18 with and without.
    CHECK(along(lines, 1) == doctest::Approx((has_minimum ? 2 : 7) * (1 + kTax)));
    law = law_with_minimum(18);
  }
}
