// Draws held against distributions whose answer is known.

#include "wattweek/decide/uncertainty.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "../support/study_text.hpp"
#include "decide/points.hpp"
#include "doubt.hpp"

using namespace wattweek;
using namespace wattweek::decide;
using tests::doubt_of;
using tests::kFlatTariff;
using tests::kYear2027;

namespace {

constexpr double kKwhPerWatt = 8.76;  // 2027 has 8760 hours.

// JCGM's standard rectangular variable: mean 0, standard deviation 1. As idle watts, about 30.
std::string device(double sds_wide) {
  const double half = std::sqrt(3.0) * sds_wide;
  return "[[candidate.device]]\nwatts = { idle = " + tests::range(30 - half, 30 + half) + " }\n";
}

std::string study_of(const std::vector<double>& widths) {
  std::string text = kYear2027 + kFlatTariff + "[[candidate]]\nid = \"box\"\n";
  for (const double width : widths) text += device(width);
  return text;
}

/// The energy of one candidate in watts about its centre, so that figures of the literature stand
/// as they are.
Spread watts_about_centre(const std::string& text, std::size_t devices, std::size_t draws,
                          std::uint64_t seed) {
  Spread spread = doubt_of(text, {draws, seed, 2}).candidates[0].energy_kwh;
  const double centre = 30.0 * static_cast<double>(devices);
  for (double* figure : {&spread.mean, &spread.p2_5, &spread.p50, &spread.p97_5}) {
    *figure = *figure / kKwhPerWatt - centre;
  }
  spread.sd /= kKwhPerWatt;
  return spread;
}

bool within(double got, double want, double allowed) { return std::fabs(got - want) <= allowed; }

constexpr std::size_t kMany = 65536;
constexpr double kRootOfMany = 256;

}  // namespace

// Tolerances below are half of what one standard deviation would be with plain draws, so that
// scrambled points are held to do better:
//     of a mean u / sqrt(N), of a standard deviation u sqrt((kurtosis - 1) / (4 N)), of a
//     percentile at p sqrt(p (1 - p) / N) / density there.

TEST_CASE("the sum of four rectangular variables is that of JCGM 101, 9.2.3") {
  // Exact half-width of the 95 % interval: 2 sqrt(3) (2 - (3/5)^(1/4)) = 3.879406741348, printed
  // 3.88. Density there: the sum S of four uniform variables has the density (4 - S)^3 / 6 where
  // 4 - S <= 1, here (3/5)^(3/4) / 6 = 0.1136, and a watt is 2 sqrt(3) of them: 0.0328; in the
  // middle 2/3, so 0.192. Kurtosis 3 - 1.2 / 4 = 2.7.
  for (const std::uint64_t seed : {1U, 2U, 3U, 4U}) {
    CAPTURE(seed);
    const Spread sum = watts_about_centre(study_of({1, 1, 1, 1}), 4, kMany, seed);
    const double of_percentile = std::sqrt(0.025 * 0.975) / 0.0328 / kRootOfMany;
    CHECK(within(sum.mean, 0, 0.5 * 2 / kRootOfMany));
    CHECK(within(sum.sd, 2, 0.5 * 2 * std::sqrt(1.7 / 4) / kRootOfMany));
    CHECK(within(sum.p2_5, -3.879406741348, 0.5 * of_percentile));
    CHECK(within(sum.p97_5, 3.879406741348, 0.5 * of_percentile));
    CHECK(within(sum.p50, 0, 0.5 * 0.5 / 0.192 / kRootOfMany));
  }
}

TEST_CASE("one of the four ten times wider is JCGM 101, 9.2.4") {
  // u = sqrt(103) = 10.148891565, exact half-width 17.015814100; a normal distribution would have
  // 19.89. Density there: the wide one's 1 / (20 sqrt(3)) times the probability that the other
  // three come to more than 17.0158 - 10 sqrt(3) = -0.3047, about 0.566: 0.0163. Kurtosis close
  // to a rectangle's, 1.8.
  for (const std::uint64_t seed : {1U, 2U, 3U, 4U}) {
    CAPTURE(seed);
    const Spread sum = watts_about_centre(study_of({1, 1, 1, 10}), 4, kMany, seed);
    const double of_percentile = std::sqrt(0.025 * 0.975) / 0.0163 / kRootOfMany;
    CHECK(within(sum.mean, 0, 0.5 * 10.15 / kRootOfMany));
    CHECK(within(sum.sd, 10.148891565, 0.5 * 10.15 * std::sqrt(0.8 / 4) / kRootOfMany));
    CHECK(within(sum.p2_5, -17.015814100, 0.5 * of_percentile));
    CHECK(within(sum.p97_5, 17.015814100, 0.5 * of_percentile));
  }
}

TEST_CASE("coverage factors of a rectangle and of a triangle are the GUM's") {
  // JCGM 100:2008, G: half of the 95 % interval over the standard deviation is 0.95 sqrt(3) =
  // 1.645448267 of a rectangle, and (1 - sqrt(0.05)) sqrt(6) = 1.901767185 of a triangle (4.3.7 and
  // 4.3.9: a / sqrt(3), a / sqrt(6)). One point in each of N intervals: the rectangle's are known
  // to some 2 / N of the range.
  const auto factor = [](const Spread& of) { return (of.p97_5 - of.p2_5) / 2 / of.sd; };
  const Spread rectangle = watts_about_centre(study_of({1}), 1, kMany, 1);
  CHECK(within(rectangle.sd, 1, 1e-4));
  CHECK(within(factor(rectangle), 1.645448267, 2e-4));
  CHECK(within(rectangle.p2_5, -0.95 * std::sqrt(3.0), 1e-4));
  const Spread triangle = watts_about_centre(study_of({1, 1}), 2, kMany, 1);
  // Density at the end of the interval, of a triangle of half-width 2 sqrt(3): 0.0645.
  const double of_percentile = std::sqrt(0.025 * 0.975) / 0.0645 / kRootOfMany;
  CHECK(within(triangle.sd, std::sqrt(2.0), 0.5 * std::sqrt(2.0) * std::sqrt(1.4 / 4) / 256));
  CHECK(within(factor(triangle), 1.901767185, 0.5 * of_percentile));
}

TEST_CASE("straight lines around the centre give the root of the sum of squares") {
  // JCGM 100:2008, 5.1.2: u = sqrt(1 + 1 + 1 + 100) W, at 8.76 kWh and 0.30 EUR.
  const Uncertainty doubt = doubt_of(study_of({1, 1, 1, 10}), {100, 1, 1});
  CHECK(doubt.candidates[0].first_order_sd ==
        doctest::Approx(std::sqrt(103.0) * kKwhPerWatt * 0.30).epsilon(1e-9));
}

TEST_CASE("percentiles interpolate at (N-1)p and the deviation divides by N-1") {
  for (const std::size_t draws : {2U, 5U, 100U, 101U, 201U, 1001U}) {
    CAPTURE(draws);
    const Spread got = watts_about_centre(study_of({1}), 1, draws, 6);
    Points points(1, 6, 0);
    std::vector<double> point;
    std::vector<double> values;
    for (std::size_t n = 0; n < draws; ++n) {
      points.next(point);
      values.push_back(std::sqrt(3.0) * (2 * point[0] - 1));
    }
    std::sort(values.begin(), values.end());
    const auto at = [&values](std::size_t numerator) {  // Thousandths, so that p is exact.
      const std::size_t place = (values.size() - 1) * numerator;
      const std::size_t below = place / 1000;
      if (place % 1000 == 0) return values[below];
      return values[below] +
             (values[below + 1] - values[below]) * (static_cast<double>(place % 1000) / 1000);
    };
    double mean = 0;
    for (const double value : values) mean += value;
    mean /= static_cast<double>(draws);
    double squares = 0;
    for (const double value : values) squares += (value - mean) * (value - mean);
    CHECK(within(got.p2_5, at(25), 1e-12));
    CHECK(within(got.p50, at(500), 1e-12));
    CHECK(within(got.p97_5, at(975), 1e-12));
    CHECK(within(got.mean, mean, 1e-12));
    CHECK(within(got.sd, std::sqrt(squares / static_cast<double>(draws - 1)), 1e-12));
  }
}

TEST_CASE("a candidate that no range touches has no spread at all") {
  const Uncertainty doubt = doubt_of(study_of({1}) + R"(
[[candidate]]
id = "known"
[[candidate.device]]
watts = { idle = 7.3 }
)",
                                     {1000, 1, 1});
  const Spread& cost = doubt.candidates[1].cost;
  CHECK(cost.sd == 0);
  CHECK(cost.p2_5 == cost.p97_5);
  CHECK(cost.mean == cost.p50);
  CHECK(cost.p50 == doctest::Approx(7.3 * kKwhPerWatt * 0.30).epsilon(1e-12));
}

TEST_CASE("the same seed gives the same figures, and another seed others") {
  const std::string text = study_of({1, 2});
  const Uncertainty one = doubt_of(text, {500, 1, 1});
  CHECK(tests::figures(one) == tests::figures(doubt_of(text, {500, 1, 1})));
  const Uncertainty other = doubt_of(text, {500, 2, 1});
  CHECK(one.candidates[0].cost.mean != other.candidates[0].cost.mean);
  CHECK(one.candidates[0].cost.p97_5 != other.candidates[0].cost.p97_5);
  CHECK(one.candidates[0].cost.mean ==
        doctest::Approx(other.candidates[0].cost.mean).epsilon(0.01));
  CHECK(one.seed == 1);
  CHECK(one.draws == 500);
  CHECK(one.ranges == 2);
}

TEST_CASE("one, two and seven threads give the same bytes") {
  const read::StudyInput input = tests::read_bench_study_with_ranges();
  for (const std::size_t draws : {100U, 777U}) {
    const auto of_one = tests::figures(doubt_of(input, {draws, 3, 1}));
    CHECK(of_one.size() > 20);
    CHECK(of_one == tests::figures(doubt_of(input, {draws, 3, 2})));
    CHECK(of_one == tests::figures(doubt_of(input, {draws, 3, 7})));
  }
}

TEST_CASE("the ends of the draws stay within the ends of the range") {
  const Spread sum = watts_about_centre(study_of({1}), 1, 100, 1);
  CHECK(sum.p2_5 > -std::sqrt(3.0));
  CHECK(sum.p97_5 < std::sqrt(3.0));
}

TEST_CASE("a household that the drawn machine would use up counts as 0, draw by draw") {
  // January: 744 h. The old box draws E, uniform between 0 and 148.8 kWh, and was metered with
  // the home's 100. Beyond 100 kWh a kWh costs 1. Of the old box: max(0, E - 100), which has the
  // mean 48.8^2 / 2 / 148.8 = 8.0022. Of a new one with 7.44 kWh: what 100 - E + 7.44 is above 100,
  // on average 7.44^2 / 2 / 148.8 = 0.186. With the central 74.4 kWh taken off, they would be 18.6
  // and 0; below 0, nothing.
  const Uncertainty doubt = doubt_of(R"(
time_zone = "Etc/UTC"
start = 2027-01-01
months = 1
[tariff]
currency = "EUR"
block = [ { up_to = 100, price = 0 }, { price = 1 } ]
[household]
includes = "old"
kwh_per_month = [100, 100, 100, 100, 100, 100, 100, 100, 100, 100, 100, 100]
[[candidate]]
id = "old"
[[candidate.device]]
watts = { idle = [0, 200] }
[[candidate]]
id = "new"
[[candidate.device]]
watts = { idle = 10 }
)",
                                     {32768, 1, 2});
  CHECK(within(doubt.candidates[0].cost.mean, 48.8 * 48.8 / 2 / 148.8, 1e-3));
  CHECK(within(doubt.candidates[0].cost.p97_5, 0.975 * 148.8 - 100, 0.02));
  CHECK(doubt.candidates[0].cost.p50 == 0);
  CHECK(within(doubt.candidates[1].cost.mean, 7.44 * 7.44 / 2 / 148.8, 1e-3));
}

TEST_CASE("more outcomes in a draw than can be merged are told, not reckoned") {
  // At the midpoints all three draw 2 W a unit and their sums fall together; in a draw, hardly any.
  const read::StudyInput input = tests::read_study(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "films"
use = [ { units = 120, share = 0.5, pattern = "independent" } ]
[[workload]]
id = "music"
use = [ { units = 120, share = 0.5, pattern = "independent" } ]
[[workload]]
id = "mail"
use = [ { units = 120, share = 0.5, pattern = "independent" } ]
[[candidate]]
id = "box"
[[candidate.device]]
name = "box"
watts = { idle = 10, max = 100 }
increments = { films = [1, 3], music = [1, 3], mail = [1, 3] }
)");
  REQUIRE(std::holds_alternative<Assessment>(assess(input.study, input.zone)));
  const auto result = draw(input.study, input.zone, {100, 1, 1});
  REQUIRE(std::holds_alternative<std::vector<diag::Diagnostic>>(result));
  const auto& problems = std::get<std::vector<diag::Diagnostic>>(result);
  REQUIRE(problems.size() == 1);
  CHECK(diag::to_text(problems[0]) ==
        "study.toml:22:1: error: device 'box' of candidate 'box': on 2027-01-01 00:00 the units "
        "in use of 'films', 'music', 'mail' have more than 1048576 joint outcomes with different "
        "sums; expected fewer units or workloads at once, or no cap and curve on them");
}

TEST_CASE("progress rises to the end") {
  const read::StudyInput input = tests::read_study(study_of({1, 1}));
  std::vector<double> told;
  const auto result = draw(input.study, input.zone, {100, 1, 1},
                           [&told](const std::string&, double done) { told.push_back(done); });
  REQUIRE(std::holds_alternative<Uncertainty>(result));
  REQUIRE(!told.empty());
  CHECK(std::is_sorted(told.begin(), told.end()));
  CHECK(told.back() == 1);
}

TEST_CASE("draws that nobody asked for are as many as nobody would notice") {
  const auto unasked = [](const std::string& text) {
    const read::StudyInput input = tests::read_study(text);
    return unasked_draws(input.study, input.zone);
  };
  CHECK(unasked(study_of({}) + "[[candidate.device]]\nwatts = { idle = 5 }\n") == 0);
  CHECK(unasked(study_of({1, 1, 1})) == 1024);
  std::string heavy = study_of({1});
  for (const char* id : {"films", "music", "mail"}) {
    heavy.insert(heavy.find("[[candidate]]"),
                 std::string("[[workload]]\nid = \"") + id +
                     "\"\nuse = [ { units = 100, share = 0.5, pattern = \"independent\" } ]\n");
  }
  heavy += "runs = [\"films\", \"music\", \"mail\"]\n";
  heavy.replace(heavy.find("watts = {"), 9, "watts = { max = 60, ");
  heavy += "increments = { films = 1, music = 1, mail = 1 }\n";
  CHECK(unasked(heavy) == 0);
  CHECK(open_ranges(tests::read_study(study_of({1, 2, 3})).study) == 3);
}
