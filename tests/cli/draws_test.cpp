// `compare --draws`, and what plain text says of ranges.

#include <nlohmann/json.hpp>

#include "program.hpp"
#include "small_study.hpp"

namespace wattweek::cli {
namespace {

using nlohmann::json;

const std::string kOstrawick = "compare docs/examples/ostrawick.toml";

TEST_CASE("draws: the same seed gives the same bytes, whatever the threads") {
  const std::string command = kOstrawick + " --format json --draws 1000";
  const Run one = wattweek(command + " --threads 1");
  REQUIRE(one.exit_code == 0);
  CHECK(wattweek(command + " --threads 2").out == one.out);
  CHECK(wattweek(command + " --threads 7 --seed 1").out == one.out);
  CHECK(wattweek(command + " --seed 2").out != one.out);
}

TEST_CASE("draws: the central result is what it is without them") {
  json with = json::parse(wattweek(kOstrawick + " --format json --draws 100").out);
  REQUIRE(with.contains("uncertainty"));
  CHECK(with["uncertainty"]["draws"] == 100);
  CHECK(with["uncertainty"]["seed"] == 1);
  with.erase("uncertainty");
  CHECK(with == json::parse(wattweek(kOstrawick + " --format json").out));
}

TEST_CASE("draws: chances of the candidates and shares of the drivers are all there is") {
  const json all =
      json::parse(wattweek(kOstrawick + " --format json --draws 2000").out)["uncertainty"];
  double chances = 0;
  for (const json& candidate : all["candidates"]) chances += candidate["cheapest"].get<double>();
  CHECK(chances == doctest::Approx(1).epsilon(1e-12));
  double shares = 0;
  for (const json& driver : all["drivers"]) shares += driver["share"].get<double>();
  CHECK(shares == doctest::Approx(1).epsilon(1e-12));
  CHECK(all["drivers"][0]["key"] == "ostrawick-office-tower.toml:watts.idle");
}

TEST_CASE("draws: text speaks of ranges unasked, and of none where there are none") {
  CHECK(wattweek(kOstrawick).out.find("\nHow sure\n14 figures of the files are ranges.") !=
        std::string::npos);
  CHECK(wattweek(kOstrawick + " --format markdown").out.find("\n### How sure\n") !=
        std::string::npos);
  const TemporaryFolder folder;
  folder.write("study.toml", small_study_with("", ""));
  CHECK(shell(folder.path(), "wattweek compare study.toml").out.find("How sure") ==
        std::string::npos);
}

TEST_CASE("draws: where every draw is work, none is made unasked") {
  std::string uses;
  std::string increments;
  for (int w = 0; w < 16; ++w) {
    const std::string id = "w" + std::to_string(w);
    uses += "[[workload]]\nid = \"" + id + "\"\nuse = [{ share = 0.5 }]\n";
    increments += id + " = " + std::to_string(1 + 0.0001 * (1 << w)) + "\n";
  }
  const TemporaryFolder folder;
  folder.write("study.toml",
               "time_zone = \"Etc/UTC\"\nstart = 2027-01-01\n[tariff]\ncurrency = \"EUR\"\n"
               "band = [{ name = \"all\", price = 0.3 }]\n" +
                   uses +
                   "[[candidate]]\nid = \"box\"\n[[candidate.device]]\n"
                   "watts = { idle = [10, 11], max = 20 }\n[candidate.device.increments]\n" +
                   increments);
  const Run run = shell(folder.path(), "wattweek compare study.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.out.find("How sure") == std::string::npos);
}

}  // namespace
}  // namespace wattweek::cli
