// From load to watts: the published curve and published measurements.

#include <doctest/doctest.h>

#include <array>

#include "../support/about.hpp"
#include "wattweek/power/device_law.hpp"

using namespace wattweek::power;
using wattweek::model::Curve;
using wattweek::tests::about;
using wattweek::tests::exactly;

TEST_CASE("the concave curve is that of Fan, Weber and Barroso") {
  // Source: X. Fan, W.-D. Weber, L. A. Barroso, ISCA 2007, P = P_idle + (P_busy - P_idle)(2u - u^r)
  // with r = 1.4; values derived from the formula in double precision by an independent program.
  DeviceLaw law;
  law.idle_w = 20;
  law.full_load_w = 40;
  law.curve = Curve::concave;
  const std::array<std::array<double, 2>, 6> table{{{0.05, 23.39658237},
                                                    {0.10, 26.40757132},
                                                    {0.25, 34.25650823},
                                                    {0.50, 44.84283433},
                                                    {0.75, 53.26096313},
                                                    {0.90, 57.48566544}}};
  for (const auto& [u, watts] : table) CHECK(law.idle_w + load_w(law, u) == about(watts));
  CHECK(load_w(law, 0) == 0);
  CHECK(load_w(law, 1) == exactly(40));
}

TEST_CASE(
    "a machine that is measured at eleven loads draws what was measured, and between them a "
    "straight line") {
  // Source: published SPECpower_ssj2008 results as quoted in public simulators (two-socket servers
  // G4 and G5), idle first; between the points DERIVED by linear interpolation.
  const std::vector<double> g4{86, 89.4, 92.6, 96, 99.5, 102, 106, 108, 112, 114, 117};
  const std::vector<double> g5{93.7, 97, 101, 105, 110, 116, 121, 125, 129, 133, 135};
  for (const auto& measured : {g4, g5}) {
    DeviceLaw law;
    law.idle_w = measured.front();
    for (const double w : measured) law.at_load_w.push_back(w - measured.front());
    for (std::size_t i = 0; i < measured.size(); ++i) {
      CHECK(law.idle_w + load_w(law, static_cast<double>(i) / 10) == exactly(measured[i]));
    }
    CHECK(law.idle_w + load_w(law, 0.25) == exactly(measured == g4 ? 94.3 : 103.0));
    CHECK(law.idle_w + load_w(law, 0.37) == exactly(measured == g4 ? 98.45 : 108.5));
  }
}

TEST_CASE("an increment is a straight line between whole units") {
  TaskLaw stairs;
  stairs.table_w = {6.0, 8.4, 10.9};
  CHECK(increment_w(stairs, 0) == 0);
  CHECK(increment_w(stairs, 0.5) == exactly(3.0));
  CHECK(increment_w(stairs, 1) == exactly(6.0));
  CHECK(increment_w(stairs, 2.5) == exactly(9.65));
  CHECK(increment_w(stairs, 3) == exactly(10.9));
  CHECK(increment_w(stairs, 7) == exactly(10.9));  // Beyond the end: the last value.

  TaskLaw first_and_each;
  first_and_each.first_w = 6.0;
  first_and_each.each_w = 2.4;
  CHECK(increment_w(first_and_each, 0.5) == exactly(3.0));
  CHECK(increment_w(first_and_each, 1) == exactly(6.0));
  CHECK(increment_w(first_and_each, 2.5) == exactly(9.6));
}
