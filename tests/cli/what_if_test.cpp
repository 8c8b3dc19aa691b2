// `whatif`, as it is run.

#include <algorithm>
#include <nlohmann/json.hpp>

#include "program.hpp"

namespace wattweek::cli {
namespace {

using nlohmann::json;

const std::string kWhatIf = "whatif docs/examples/ostrawick.toml --vary ";

TEST_CASE("what if: a row at 1 is what compare says") {
  const json row = json::parse(wattweek(kWhatIf + "price=0..2:3 --format json").out)["rows"][1];
  const json compared =
      json::parse(wattweek("compare docs/examples/ostrawick.toml --format json").out);
  CHECK(row["at"] == json{1.0});
  for (std::size_t c = 0; c < 3; ++c) {
    const json& is = row["candidates"][c];
    const json& should_be = compared["candidates"][c];
    CHECK(is["energy_kwh"].get<double>() ==
          doctest::Approx(should_be["energy_kwh"].get<double>()).epsilon(1e-12));
    CHECK(is["cost"].get<double>() ==
          doctest::Approx(should_be["cost"].get<double>()).epsilon(1e-12));
    CHECK(is["present_cost"].get<double>() ==
          doctest::Approx(should_be["lifetime"]["present_cost"].get<double>()).epsilon(1e-12));
  }
}

TEST_CASE("what if: the price crossing is the break-even of the comparison") {
  const json crossings =
      json::parse(wattweek(kWhatIf + "price=0.5..2 --format json").out)["crossings"];
  const json compared = json::parse(
      wattweek("compare docs/examples/ostrawick.toml --baseline tower --format json").out);
  REQUIRE(crossings.size() == 1);
  CHECK(crossings[0]["between"] == json{"palm", "tower"});
  const double factor = compared["comparison"]["rows"][1]["break_even_price_factor"];
  CHECK(crossings[0]["at"].get<double>() == doctest::Approx(factor).epsilon(1e-9));
}

TEST_CASE("what if: a grid of many batches is written whole, the first factor slowest") {
  const TemporaryFolder folder;
  const Run run =
      shell(WATTWEEK_SOURCE_DIR, "wattweek " + kWhatIf +
                                     "price=0..2:300 --vary use=0..1:300 --format csv >'" +
                                     (folder.path() / "grid.csv").string() + "'");
  CHECK(run.exit_code == 0);
  const std::string csv = text_of(folder.path() / "grid.csv");
  CHECK(std::count(csv.begin(), csv.end(), '\n') == 90'001);
  CHECK(csv.find("\r\n0,0,6,") != csv.npos);
  CHECK(csv.rfind("\r\n2,1,6,") > csv.rfind("\r\n2,0,6,"));
}

TEST_CASE("what if: the same bytes on one thread and on seven, in JSON too") {
  for (const std::string format : {"csv", "json"}) {
    const std::string command =
        kWhatIf + "idle.palm=0..2:40 --vary use.films=0..3:40 --format " + format + " --threads ";
    const Run one = wattweek(command + "1");
    REQUIRE(one.exit_code == 0);
    CHECK(wattweek(command + "2").out == one.out);
    CHECK(wattweek(command + "7").out == one.out);
  }
}

TEST_CASE("what if: a full disk is exit code 1, also in the middle of a grid") {
  const Run run = wattweek(kWhatIf + "price=0..2:300 --vary use=0..1:300 --format csv >/dev/full");
  CHECK(run.exit_code == 1);
  CHECK(run.err == "wattweek: error: standard output cannot be written: No space left on device\n");
}

TEST_CASE("what if: with a horizon from the command line purchases may differ") {
  const std::string command =
      "whatif docs/examples/ostrawick.toml --vary purchase.palm=0..2:3 --format json --years ";
  CHECK(json::parse(wattweek(command + "2").out)["rows"][1]["best"] == "tower");
  CHECK(json::parse(wattweek(command + "9").out)["rows"][1]["best"] == "palm");
}

TEST_CASE("what if: the turns of the demo, as sentences and in JSON") {
  const Run text = wattweek("whatif docs/examples/ostrawick.toml --turns");
  CHECK(text.exit_code == 0);
  CHECK(text.out.find("Ostrawick\n\nWhat would change the answer\nPalm-size box with storage box "
                      "costs least over 6 years") == 0);
  CHECK(text.out.find("the idle watts of Refitted office tower (idle.tower): below 0.96") !=
        std::string::npos);
  const json turns =
      json::parse(wattweek("whatif docs/examples/ostrawick.toml --turns --format json").out);
  const json crossings = json::parse(wattweek(kWhatIf + "price=0..10 --format json").out);
  CHECK(turns["best"] == "palm");
  REQUIRE(turns["rows"][0]["factor"] == "price");
  CHECK(turns["rows"][0]["below"]["best"] == "tower");
  const double at = turns["rows"][0]["below"]["at"];
  CHECK(at == doctest::Approx(crossings["crossings"].back()["at"].get<double>()).epsilon(1e-9));
  CHECK(turns["rows"][0]["above"].is_null());
}

}  // namespace
}  // namespace wattweek::cli
