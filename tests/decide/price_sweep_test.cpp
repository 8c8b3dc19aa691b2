#include "wattweek/decide/price_sweep.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "../support/about.hpp"
#include "../support/study_text.hpp"
#include "decide/points.hpp"
#include "wattweek/decide/settled_study.hpp"

namespace wattweek::decide {
namespace {

using tests::about;

const std::string kFilms = R"(
[[workload]]
id = "films"
[[workload.use]]
hours = "20:00-22:00"
share = [0.3, 0.7]
)";

/// Two bands and a minimum bill that holds at low prices.
std::string tariff(double factor) {
  return fmt::format(R"(
[tariff]
currency = "EUR"
tax = 0.1
standing_per_month = 2
minimum_per_month = 20
[[tariff.band]]
name = "night"
hours = "22:00-06:00"
price = {}
[[tariff.band]]
name = "day"
price = {}
[household]
kwh_per_year = 600
)",
                     0.2 * factor, 0.4 * factor);
}

std::string box(const std::string& id, const std::string& idle_w, int purchase) {
  return fmt::format(
      "[[candidate]]\nid = \"{}\"\npurchase = {}\n[[candidate.device]]\nwatts.idle = {}\n"
      "increments.films = 12\n",
      id, purchase, idle_w);
}

std::string three_boxes(double factor) {
  return tests::kYear2027 + tariff(factor) +
         "[finance]\nyears = 4\ndiscount_rate = 0.03\nprice_rise = [0, 0.04]\n" + kFilms +
         box("old", "[70, 80]", 0) + box("small", "[8, 12]", 260) + box("spare", "40", 200);
}

PriceSweep sweep_of(const read::StudyInput& input, const PriceSweepOptions& options) {
  return std::get<PriceSweep>(price_sweep(input.study, input.zone, options));
}

PriceSweepOptions drawn(std::size_t draws, unsigned threads = 1) {
  PriceSweepOptions options;
  options.points = 5;
  options.draws = draws;
  options.threads = threads;
  return options;
}

TEST_CASE("price sweep: each level is what the study comes to with such prices in its contract") {
  const PriceSweep sweep = sweep_of(tests::read_study(three_boxes(1)), drawn(0));
  REQUIRE(sweep.factors == std::vector<double>{0, 0.5, 1, 1.5, 2});
  for (std::size_t f = 0; f < sweep.factors.size(); ++f) {
    CAPTURE(sweep.factors[f]);
    const tests::Reckoned edited = tests::reckon(three_boxes(sweep.factors[f]));
    for (std::size_t c = 0; c < 3; ++c) {
      CHECK(sweep.criteria[c][f] == about(edited.result.candidates[c].lifetime->present_cost));
    }
  }
}

TEST_CASE("price sweep: the lead is that of today's best over the second best") {
  const PriceSweep sweep = sweep_of(tests::read_study(three_boxes(1)), drawn(0));
  REQUIRE(sweep.lead);
  CHECK(sweep.lead->best == 1);
  CHECK(sweep.lead->second == 2);
  CHECK(sweep.lead->likely.empty());
  for (std::size_t f = 0; f < sweep.factors.size(); ++f) {
    CHECK(sweep.lead->more[f] == sweep.criteria[2][f] - sweep.criteria[1][f]);
  }
}

TEST_CASE("price sweep: the lead changes its sign where the two cross") {
  const PriceSweep sweep = sweep_of(tests::read_study(three_boxes(1)), drawn(0));
  const auto crossing =
      std::find_if(sweep.crossings.begin(), sweep.crossings.end(),
                   [](const Crossing& each) { return each.first == 1 && each.second == 2; });
  REQUIRE(crossing != sweep.crossings.end());
  for (std::size_t f = 0; f < sweep.factors.size(); ++f) {
    CAPTURE(sweep.factors[f]);
    CHECK((sweep.lead->more[f] < 0) == (sweep.factors[f] < crossing->at));
  }
}

/// The criterion of each candidate where every range is drawn and every price has a factor,
/// reckoned as a study by itself.
std::vector<double> criteria_of(const read::StudyInput& input, const std::vector<double>& point,
                                double factor) {
  SettledStudy settled(input.study);
  for (std::size_t r = 0; r < point.size(); ++r) settled.settle(r, point[r]);
  model::Study study = settled.study();
  for (model::Band& band : study.tariff.bands) {
    band.price = {factor * band.price.low, factor * band.price.high};
  }
  const auto all = std::get<Assessment>(assess(study, input.zone));
  std::vector<double> criteria;
  for (const CandidateResult& result : all.candidates) {
    criteria.push_back(result.lifetime->present_cost);
  }
  return criteria;
}

/// By linear interpolation at (N - 1) p.
double percentile(std::vector<double> values, double p) {
  std::sort(values.begin(), values.end());
  const double at = static_cast<double>(values.size() - 1) * p;
  const auto below = static_cast<std::size_t>(at);
  if (below + 1 == values.size()) return values.back();
  return values[below] + (at - static_cast<double>(below)) * (values[below + 1] - values[below]);
}

TEST_CASE("price sweep: 95 of 100 draws, each reckoned as a study by itself, lie in the band") {
  const read::StudyInput input = tests::read_study(three_boxes(1));
  const PriceSweep sweep = sweep_of(input, drawn(40));
  REQUIRE(sweep.lead->likely.size() == 5);
  const std::size_t ranges = SettledStudy(input.study).keys().size();
  REQUIRE(ranges == 4);
  for (std::size_t f = 0; f < sweep.factors.size(); ++f) {
    CAPTURE(sweep.factors[f]);
    Points points(ranges, 1, 0);
    std::vector<double> point;
    std::vector<double> more;
    for (int n = 0; n < 40; ++n) {
      points.next(point);
      const std::vector<double> criteria = criteria_of(input, point, sweep.factors[f]);
      more.push_back(criteria[2] - criteria[1]);
    }
    CHECK(sweep.lead->likely[f].low == about(percentile(more, 0.025)));
    CHECK(sweep.lead->likely[f].high == about(percentile(more, 0.975)));
  }
}

TEST_CASE("price sweep: the household's meter took the machine that is drawn with it") {
  std::string text = three_boxes(1);
  text.replace(text.find("kwh_per_year = 600"), 18, "kwh_per_year = 900\nincludes = \"old\"");
  const read::StudyInput input = tests::read_study(text);
  const PriceSweep sweep = sweep_of(input, drawn(10));
  REQUIRE(sweep.lead->best != 0);
  REQUIRE(sweep.lead->second != 0);  // The metered one is not among the two that are reckoned.
  Points points(4, 1, 0);
  std::vector<double> point;
  std::vector<double> more;
  for (int n = 0; n < 10; ++n) {
    points.next(point);
    const std::vector<double> criteria = criteria_of(input, point, 0.5);
    more.push_back(criteria[sweep.lead->second] - criteria[sweep.lead->best]);
  }
  CHECK(sweep.lead->likely[1].low == about(percentile(more, 0.025)));
}

TEST_CASE("price sweep: a range that both have in common leaves no doubt about the lead") {
  const PriceSweep sweep =
      sweep_of(tests::read_study(tests::kYear2027 + tests::kFlatTariff + "[finance]\nyears = 3\n" +
                                 kFilms + "[household]\nkwh_per_year = [300, 900]\n" +
                                 box("old", "70", 0) + box("small", "10", 60)),
               drawn(64));
  REQUIRE(sweep.lead->likely.size() == 5);
  for (std::size_t f = 0; f < sweep.factors.size(); ++f) {
    CHECK(sweep.lead->likely[f].low == about(sweep.lead->more[f]));
    CHECK(sweep.lead->likely[f].high == about(sweep.lead->more[f]));
  }
}

TEST_CASE("price sweep: the same on one thread, on two and on seven") {
  const read::StudyInput input = tests::read_study(three_boxes(1));
  const PriceSweep one = sweep_of(input, drawn(100, 1));
  for (const unsigned threads : {2U, 7U}) {
    const PriceSweep more = sweep_of(input, drawn(100, threads));
    CHECK(more.criteria == one.criteria);
    CHECK(more.lead->likely == one.lead->likely);
  }
}

TEST_CASE("price sweep: without ranges there is nothing to draw") {
  const PriceSweep sweep =
      sweep_of(tests::read_study(tests::kYear2027 + tests::kFlatTariff + "[finance]\nyears = 3\n" +
                                 "[[workload]]\nid = \"films\"\n[[workload.use]]\n" +
                                 box("old", "70", 0) + box("small", "10", 60)),
               drawn(64));
  CHECK(sweep.lead->likely.empty());
}

TEST_CASE("price sweep: one candidate alone has no lead, and without a horizon the bill counts") {
  const tests::Reckoned reckoned =
      tests::reckon(tests::kYear2027 + tests::kFlatTariff + kFilms + box("old", "70", 0));
  const auto sweep = std::get<PriceSweep>(price_sweep(reckoned.study, reckoned.zone, drawn(0)));
  CHECK_FALSE(sweep.lead);
  CHECK(sweep.criteria[0][2] == about(units::in_currency(reckoned.result.candidates[0].cost.cost)));
  CHECK(sweep.criteria[0][4] == about(2 * sweep.criteria[0][2]));
}

}  // namespace
}  // namespace wattweek::decide
