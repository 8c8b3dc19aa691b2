// Which ranges drive the doubt, where variances are known in closed form.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "doubt.hpp"
#include "linked_text.hpp"
#include "wattweek/decide/uncertainty.hpp"

using namespace wattweek;
using namespace wattweek::decide;
using tests::doubt_of;
using tests::Files;
using tests::kFlatTariff;
using tests::kYear2027;
using tests::read_linked;

namespace {

constexpr std::size_t kMany = 16384;
const std::string kOverTwoYears = "[finance]\nyears = 2\n";

std::string box(const std::string& id, const std::string& keys, const std::string& watts) {
  return "[[candidate]]\nid = \"" + id + "\"\n" + keys + "[[candidate.device]]\nwatts = { " +
         watts + " }\n";
}

double share_of(const Uncertainty& doubt, const std::string& key) {
  for (const Driver& driver : doubt.drivers) {
    if (driver.key == "study.toml:" + key) return driver.share;
  }
  FAIL_CHECK("no driver " << key);
  return -1;
}

std::vector<std::string> keys_of(const Uncertainty& doubt) {
  std::vector<std::string> keys;
  for (const Driver& driver : doubt.drivers) keys.push_back(driver.key);
  return keys;
}

bool within(double got, double want, double allowed) { return std::fabs(got - want) <= allowed; }

}  // namespace

TEST_CASE("where all is straight, shares are those of the variances") {
  // Over two years without discount 1 W is 2 x 2.628 EUR. Widths in EUR: 4 W is 21.024, 10 W is
  // 52.56, a purchase of 30 is 30; the variance of each is a twelfth of the square.
  const Uncertainty doubt = doubt_of(kYear2027 + kOverTwoYears + kFlatTariff +
                                         box("palm", "purchase = [85, 115]\n", "idle = [8, 12]") +
                                         box("rack", "", "idle = [25, 35]"),
                                     {kMany, 1, 2});
  const double palm = 4 * 2 * 2.628 * 4 * 2 * 2.628;
  const double rack = 10 * 2 * 2.628 * 10 * 2 * 2.628;
  const double purchase = 30 * 30;
  const double all = palm + rack + purchase;
  CHECK(within(share_of(doubt, "candidate.palm.device.1.watts.idle"), palm / all, 1e-9));
  CHECK(within(share_of(doubt, "candidate.rack.device.1.watts.idle"), rack / all, 1e-9));
  CHECK(within(share_of(doubt, "candidate.palm.purchase"), purchase / all, 1e-9));
  CHECK(within(doubt.explained, 1, 1e-9));
  CHECK(keys_of(doubt) ==
        std::vector<std::string>{"study.toml:candidate.rack.device.1.watts.idle",
                                 "study.toml:candidate.palm.purchase",
                                 "study.toml:candidate.palm.device.1.watts.idle"});
}

TEST_CASE("interplay of price and watts lowers what is explained by its known share") {
  // cost = k (1 + a u) (1 + b v) = k (1 + a u + b v + a b u v), u and v uniform in [-1, 1] with
  // variance 1/3: lines explain (a^2 + b^2) / 3, interplay is a^2 b^2 / 9, so that
  //     explained = (a^2 + b^2) / (a^2 + b^2 + a^2 b^2 / 3).
  // Price from 0 to 0.60 and watts from 0 to 20: a = b = 1, explained 6/7.
  struct Case {
    double price_low, price_high, idle_low, idle_high, a, b;
  };
  for (const Case& c : {Case{0, 0.6, 0, 20, 1, 1}, Case{0.15, 0.45, 2, 18, 0.5, 0.8}}) {
    const Uncertainty doubt =
        doubt_of(kYear2027 + "[tariff]\ncurrency = \"EUR\"\nband = [ { name = \"all\", price = " +
                     tests::range(c.price_low, c.price_high) + " } ]\n" +
                     box("box", "", "idle = " + tests::range(c.idle_low, c.idle_high)),
                 {kMany, 1, 2});
    const double lines = c.a * c.a + c.b * c.b;
    const double interplay = c.a * c.a * c.b * c.b / 3;
    CHECK(within(doubt.explained, lines / (lines + interplay), 1e-3));
    CHECK(within(share_of(doubt, "tariff.band.all.price"), c.a * c.a / lines, 1e-3));
    // The draws are right, and straight lines around the centre leave the interplay out.
    const double central = 0.3 * 10 * 8.76;
    CHECK(within(doubt.candidates[0].cost.sd, central * std::sqrt((lines + interplay) / 3), 1e-2));
    CHECK(doubt.candidates[0].first_order_sd ==
          doctest::Approx(central * std::sqrt(lines / 3)).epsilon(1e-9));
  }
}

TEST_CASE("a bend that is flat in the middle is seen by the draws alone") {
  // A minimum of 50 over a standing charge of 40: the first 10 kWh of a month cost nothing. The
  // central 10 W stay below that, and some 13.7 W of at most 20 W pass it: straight lines around
  // the centre see no doubt at all. With the kink at two thirds of the range, a regression explains
  // 12 cov^2 / var = 0.6 of it.
  const Uncertainty doubt = doubt_of(kYear2027 + R"([tariff]
currency = "EUR"
minimum_per_month = 50
standing_per_month = 40
band = [ { name = "all", price = 1 } ]
)" + box("box", "", "idle = [0, 20]"),
                                     {kMany, 1, 2});
  const Spread& cost = doubt.candidates[0].cost;
  CHECK(cost.p2_5 == 0);
  CHECK(cost.p50 == 0);
  CHECK(cost.p97_5 == doctest::Approx(0.975 * 20 * 8.76 - 120).epsilon(0.01));
  CHECK(doubt.candidates[0].first_order_sd == 0);
  CHECK(doubt.explained > 0.55);
  CHECK(doubt.explained < 0.65);
}

TEST_CASE("a wide range that two candidates share cancels between them") {
  const Files files = {{"box.toml", "[watts]\nidle = [5, 95]\n"}};
  const std::string device = "[[candidate.device]]\nprofile = \"box.toml\"\n";
  const std::string text = kYear2027 + kOverTwoYears + kFlatTariff +
                           "[[candidate]]\nid = \"one\"\npurchase = 100.1\n" + device +
                           "[[candidate]]\nid = \"two\"\npurchase = 100\n" + device;
  const Uncertainty doubt = doubt_of(read_linked(text, files), {1000, 1, 2});
  CHECK(*doubt.candidates[0].cheapest == 0);
  CHECK(*doubt.candidates[1].cheapest == 1);
  CHECK(doubt.best_two == std::pair<std::size_t, std::size_t>(1, 0));
  CHECK(doubt.candidates[0].cost.sd > 50);  // Each by itself is in doubt ...
  CHECK(doubt.drivers.empty());             // ... but not which is better.
  CHECK(doubt.explained == 0);
}

TEST_CASE("the same figures inline are two ranges, and the better one is not sure") {
  const Uncertainty doubt = doubt_of(kYear2027 + kOverTwoYears + kFlatTariff +
                                         box("one", "purchase = 100.1\n", "idle = [5, 95]") +
                                         box("two", "purchase = 100\n", "idle = [5, 95]"),
                                     {kMany, 1, 2});
  // The difference is that of two uniform variables, but for 0.1 EUR of 473.04: 1/2 + 0.0002.
  CHECK(within(*doubt.candidates[1].cheapest, 0.5, 0.005));
  CHECK(*doubt.candidates[0].cheapest + *doubt.candidates[1].cheapest == 1);
  CHECK(within(share_of(doubt, "candidate.one.device.1.watts.idle"), 0.5, 1e-9));
}

TEST_CASE("a meter's scale is one variable for all that was read on it") {
  // 20 W and 30 W on one plug, +-10 %: widths add up, 50 W x 0.1 / sqrt(3); two plugs would give
  // the root of the squares.
  const std::string meter = "[[meter]]\nid = \"plug\"\nscale = [0.9, 1.1]\n";
  const std::string on_plug = "[[candidate.device]]\nmeter = \"plug\"\nwatts = { idle = ";
  const std::string text = kYear2027 + kOverTwoYears + kFlatTariff + meter +
                           "[[candidate]]\nid = \"two\"\n" + on_plug + "20 }\n" + on_plug +
                           "30 }\n[[candidate]]\nid = \"one\"\n" + on_plug + "51 }\n";
  const Uncertainty doubt = doubt_of(text, {kMany, 1, 2});
  CHECK(doubt.ranges == 1);
  CHECK(doubt.candidates[0].energy_kwh.sd ==
        doctest::Approx(8.76 * 50 * 0.1 / std::sqrt(3.0)).epsilon(1e-3));
  CHECK(*doubt.candidates[0].cheapest == 1);  // 50 W against 51 W on the same plug.
  CHECK(keys_of(doubt) == std::vector<std::string>{"study.toml:meter.plug.scale"});
  CHECK(doubt.drivers[0].share == 1);
  CHECK(within(doubt.explained, 1, 1e-9));
}

TEST_CASE("drivers are of the two that are best, ranges of others move nothing there") {
  const Uncertainty doubt =
      doubt_of(kYear2027 + kFlatTariff + box("rack", "", "idle = [100, 300]") +
                   box("palm", "", "idle = [9, 10]") + box("tower", "", "idle = [18, 22]"),
               {kMany, 1, 2});
  CHECK(doubt.best_two == std::pair<std::size_t, std::size_t>(1, 2));
  CHECK(within(share_of(doubt, "candidate.tower.device.1.watts.idle"), 16.0 / 17, 1e-9));
  CHECK(within(share_of(doubt, "candidate.palm.device.1.watts.idle"), 1.0 / 17, 1e-9));
  CHECK(within(share_of(doubt, "candidate.rack.device.1.watts.idle"), 0, 1e-9));
  CHECK(*doubt.candidates[1].cheapest == 1);
}

TEST_CASE("ranges that touch nothing are left out, and the shares of the rest sum to 1") {
  const std::string text = kYear2027 + R"(
[finance]
discount_rate = [0.01, 0.05]
[tariff]
currency = "EUR"
standing_per_day = [0.2, 0.4]
band = [ { name = "all", price = [0.2, 0.4] } ]
[household]
kwh_per_year = [2000, 4000]
[[meter]]
id = "unused"
scale = [0.5, 1.5]
[[workload]]
id = "films"
use = [ { share = [0.1, 0.3] } ]
[[candidate]]
id = "box"
resale = [10, 20]
[[candidate.device]]
watts = { idle = [10, 12], sleep = [1, 2], off = [0, 1], busy = [40, 50], max = [60, 70] }
groups = { disks = [5, 9] }
increments = { films = [3, 5] }
)";
  const Uncertainty doubt = doubt_of(text, {kMany, 1, 2});
  std::vector<std::string> keys = keys_of(doubt);
  std::sort(keys.begin(), keys.end());
  std::string all;
  for (const std::string& key : keys) all += key + " ";
  CHECK(all ==
        "study.toml:candidate.box.device.1.increments.films "
        "study.toml:candidate.box.device.1.watts.idle study.toml:tariff.band.all.price "
        "study.toml:workload.films.use.1.share ");
  double sum = 0;
  for (const Driver& driver : doubt.drivers) sum += driver.share;
  CHECK(within(sum, 1, 1e-12));
  CHECK(std::is_sorted(doubt.drivers.begin(), doubt.drivers.end(),
                       [](const Driver& a, const Driver& b) { return a.share > b.share; }));
}

TEST_CASE("a range that acts in some draws alone is kept") {
  // A cap that is reached by the larger half of the increments.
  const Uncertainty doubt = doubt_of(kYear2027 + kFlatTariff + R"(
[[workload]]
id = "films"
use = [ {} ]
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 10, max = [14, 15] }
increments = { films = [0, 10] }
)",
                                     {1000, 1, 1});
  CHECK(doubt.drivers.size() == 2);
  CHECK(doubt.candidates[0].energy_kwh.p97_5 > 14.9 * 8.76);
  CHECK(doubt.candidates[0].energy_kwh.p97_5 <= 15 * 8.76);
}

TEST_CASE("one candidate alone is always cheapest, and its own criterion is driven") {
  const Uncertainty doubt =
      doubt_of(kYear2027 + kFlatTariff + box("box", "purchase = [50, 60]\n", "idle = [8, 12]"),
               {kMany, 1, 2});
  CHECK(doubt.best_two == std::pair<std::size_t, std::size_t>(0, 0));
  CHECK(*doubt.candidates[0].cheapest == 1);
  CHECK(!doubt.candidates[0].present_cost);
  // Without a horizon the purchase is no part of the criterion.
  CHECK(keys_of(doubt) == std::vector<std::string>{"study.toml:candidate.box.device.1.watts.idle"});
}

TEST_CASE("without a horizon, purchases that differ leave nothing to rank") {
  const Uncertainty doubt = doubt_of(kYear2027 + kFlatTariff + box("one", "", "idle = [8, 12]") +
                                         box("two", "purchase = 10\n", "idle = [5, 6]"),
                                     {200, 1, 1});
  CHECK(!doubt.best_two);
  CHECK(doubt.drivers.empty());
  CHECK(doubt.explained == 0);
  for (const CandidateDoubt& candidate : doubt.candidates) {
    CHECK(!candidate.cheapest);
    CHECK(!candidate.present_cost);
    CHECK(candidate.cost.sd > 0);
  }
}

TEST_CASE("the horizon's rates are drawn as well") {
  // Present cost of 87.6 kWh at 0.30 over two years with price rise g: 26.28 (2 + g), g from 0 to
  // 1: sd 26.28 / sqrt(12).
  const Uncertainty doubt = doubt_of(kYear2027 + "[finance]\nyears = 2\nprice_rise = [0, 1]\n" +
                                         kFlatTariff + box("box", "", "idle = 10"),
                                     {kMany, 1, 2});
  CHECK(doubt.candidates[0].cost.sd == 0);
  CHECK(doubt.candidates[0].present_cost->sd ==
        doctest::Approx(26.28 / std::sqrt(12.0)).epsilon(1e-3));
  CHECK(doubt.candidates[0].present_cost->mean == doctest::Approx(26.28 * 2.5).epsilon(1e-3));
  CHECK(keys_of(doubt) == std::vector<std::string>{"study.toml:finance.price_rise"});
}

TEST_CASE("equal candidates are won by the first in the file") {
  const Uncertainty doubt = doubt_of(kYear2027 + R"([tariff]
currency = "EUR"
band = [ { name = "all", price = [0.1, 0.5] } ]
)" + box("one", "", "idle = 10") + box("two", "", "idle = 10"),
                                     {200, 1, 1});
  CHECK(*doubt.candidates[0].cheapest == 1);
  CHECK(*doubt.candidates[1].cheapest == 0);
  CHECK(doubt.drivers.empty());
}

TEST_CASE("a study without ranges is certain, and has its best two all the same") {
  const Uncertainty doubt =
      doubt_of(kYear2027 + kFlatTariff + box("one", "", "idle = 12") + box("two", "", "idle = 10"),
               {100, 1, 2});
  CHECK(doubt.ranges == 0);
  CHECK(doubt.best_two == std::pair<std::size_t, std::size_t>(1, 0));
  CHECK(*doubt.candidates[1].cheapest == 1);
  CHECK(doubt.candidates[0].cost.sd == 0);
  CHECK(doubt.drivers.empty());
  CHECK(doubt.explained == 0);
}
