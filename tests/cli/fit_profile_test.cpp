// Profiles that `fit` writes, and studies that name them.

#include <nlohmann/json.hpp>
#include <numeric>

#include "fit_desk.hpp"

namespace wattweek::cli {
namespace {

using nlohmann::ordered_json;

std::string study_with(const std::string& device, const std::string& more = "") {
  return "time_zone = \"Europe/Dublin\"\nstart = 2027-01-01\n"
         "tariff = { currency = \"EUR\", band = [{ name = \"all\", price = 0.3 }] }\n" +
         more + "[[candidate]]\nid = \"box\"\n[[candidate.device]]\n" + device;
}

TEST_CASE("fit: a profile of the week goes into a study, whose year is the sum of its hours") {
  const Desk desk;
  const Run run = desk.run(kFit + " --format json --profile box.toml");
  CHECK(run.exit_code == 0);
  CHECK(run.err.find("wattweek: written: box.toml\n") != std::string::npos);
  CHECK(desk.run("check box.toml").out.find("box.toml: ok") == 0);
  desk.write("study.toml", study_with("profile = \"box.toml\"\n"));
  const Run estimate = desk.run("estimate study.toml --format json");
  REQUIRE(estimate.err == "");
  const double energy_kwh =
      ordered_json::parse(estimate.out)["candidates"][0]["energy_kwh"].get<double>();
  // 2027 is 52 weeks and a Friday. The hour that the clocks skip on a Sunday comes twice on
  // another.
  const auto week = ordered_json::parse(run.out)["week"].get<std::vector<double>>();
  const double wh = 52 * std::accumulate(week.begin(), week.end(), 0.0) +
                    std::accumulate(week.begin() + 96, week.begin() + 120, 0.0);
  CHECK(energy_kwh == doctest::Approx(wh / 1000).epsilon(1e-7));
}

TEST_CASE("fit: a profile with increments goes into a study whose workloads it names") {
  const Desk desk;
  CHECK(desk.run(kFit + kActivity + " --profile box.toml").exit_code == 0);
  const std::string text = desk.read("box.toml");
  CHECK(text.find("\n[increments] # W for each unit in use\n\"backup\" = [") != std::string::npos);
  desk.write("study.toml",
             study_with("profile = \"box.toml\"\n",
                        "[[workload]]\nid = \"backup\"\nuse = [{ hours = \"02:30-03:15\" }]\n"
                        "[[workload]]\nid = \"films\"\nuse = [{ hours = \"20:00-22:00\" }]\n"));
  const Run compare = desk.run("estimate study.toml");
  CHECK(compare.exit_code == 0);
  CHECK(compare.err == "");
}

TEST_CASE("fit: a profile is never overwritten without --force, and whole with it") {
  const Desk desk;
  desk.write("box.toml", "mine\n");
  const Run refused = desk.run(kFit + " --profile box.toml");
  CHECK(refused.exit_code == 2);
  CHECK(refused.out == "");
  CHECK(refused.err ==
        "wattweek: error: --profile: there is 'box.toml' already, and nothing is overwritten; say "
        "--force to replace it, or name another file\n");
  CHECK(desk.read("box.toml") == "mine\n");
  CHECK(desk.run(kFit + " --profile box.toml --force").exit_code == 0);
  CHECK(desk.read("box.toml").find("# Fitted by wattweek to docs/examples/plug-log.csv:\n") == 0);
  const auto files = std::distance(std::filesystem::directory_iterator(desk.path()), {});
  CHECK(files == 2);
}

TEST_CASE("fit: a profile's folder is made, and not the folder above it") {
  const Desk desk;
  CHECK(desk.run(kFit + " --profile home/box.toml").exit_code == 0);
  CHECK(desk.has("home/box.toml"));
  CHECK(
      desk.run(kFit + " --profile a/b/box.toml").err ==
      "wattweek: error: --profile: the folder 'a/b' cannot be made: there is no folder above it\n");
  CHECK(desk.run(kFit + " --profile home/").err ==
        "wattweek: error: --profile: found 'home/', accepted is a file's name\n");
  CHECK(desk.run(kFit + " --profile ''").err ==
        "wattweek: error: --profile: found '', accepted is a file's name\n");
}

TEST_CASE("fit: with the meter's error the profile names a meter, and its entry is printed") {
  const Desk desk;
  const Run run = desk.run(kFit + " --meter-error 2,0.5 --profile box.toml");
  CHECK(desk.read("box.toml").find("\nmeter = \"plug\"\n") != std::string::npos);
  const std::string before = "paste this into the study:\n";
  const std::size_t at = run.err.find(before);
  REQUIRE(at != std::string::npos);
  const std::string entry = run.err.substr(at + before.size());
  // 2 % and 0.5 W of 9.85 W: 7.08 %.
  CHECK(entry == "[[meter]]\nid = \"plug\"\nscale = [0.9292, 1.0708]\n");
  desk.write("study.toml", study_with("profile = \"box.toml\"\n", entry));
  CHECK(desk.run("estimate study.toml").err == "");
}

}  // namespace
}  // namespace wattweek::cli
