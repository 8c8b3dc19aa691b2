// Profiles that `fit` writes, and studies that name them.

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <numeric>
#include <random>

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

/// Three weeks of minutes of a box that idles at 9 W, with 4.1 W more for a film from 20:00 to
/// 22:00, read to 0.1 W by a meter that flickers.
std::string simulated_log() {
  std::string log = "time,watts\n";
  std::minstd_rand flicker(7);
  for (int minute = 0; minute < 21 * 1440; ++minute) {
    const int hour = minute / 60 % 24;
    const int tenths = (hour == 20 || hour == 21 ? 131 : 90) + static_cast<int>(flicker() % 7) - 3;
    log += fmt::format("2027-02-{:02} {:02}:{:02},{}.{}\n", 1 + minute / 1440, hour, minute % 60,
                       tenths / 10, tenths % 10);
  }
  return log;
}

std::string simulated_uses() {
  std::string uses = "workload,start,end\n";
  for (int day = 1; day <= 21; ++day) {
    uses += fmt::format("films,2027-02-{0:02} 20:00,2027-02-{0:02} 22:00\n", day);
  }
  return uses;
}

double year_kwh(const Desk& desk, const std::string& study) {
  desk.write("study.toml", study);
  const Run run = desk.run("estimate study.toml --format json");
  REQUIRE(run.exit_code == 0);
  return ordered_json::parse(run.out)["candidates"][0]["energy_kwh"].get<double>();
}

TEST_CASE("fit: of a log that was simulated from a study, the profile gives the study's year") {
  const Desk desk;
  const std::string films = "[[workload]]\nid = \"films\"\nuse = [{ hours = \"20:00-22:00\" }]\n";
  const double truth_kwh =
      year_kwh(desk, study_with("watts = { idle = 9 }\nincrements = { films = 4.1 }\n", films));
  desk.write("log.csv", simulated_log());
  desk.write("uses.csv", simulated_uses());
  const std::string fit = "fit log.csv --zone Europe/Dublin --format json ";

  const Run noted = desk.run(fit + "--activity uses.csv --profile noted.toml");
  REQUIRE(noted.exit_code == 0);
  const ordered_json json = ordered_json::parse(noted.out);
  const double noted_kwh = year_kwh(desk, study_with("profile = \"noted.toml\"\n", films));
  // 8760 h of idle and 730 h of films, each within 1.96 standard errors.
  const double doubt_kwh = 1.96 * (8.76 * json["idle_w"]["standard_error"].get<double>() +
                                   0.73 * json["increments"][0]["standard_error"].get<double>());
  CHECK(std::abs(noted_kwh - truth_kwh) <= doubt_kwh);
  CHECK(doubt_kwh < 0.01 * truth_kwh);

  const Run bare = desk.run(fit + "--profile week.toml");
  REQUIRE(bare.exit_code == 0);
  const ordered_json year = ordered_json::parse(bare.out)["year"];
  CHECK(year["low"].get<double>() <= truth_kwh);
  CHECK(year["high"].get<double>() >= truth_kwh);
  CHECK(year_kwh(desk, study_with("profile = \"week.toml\"\n")) ==
        doctest::Approx(truth_kwh).epsilon(0.002));
}

}  // namespace
}  // namespace wattweek::cli
