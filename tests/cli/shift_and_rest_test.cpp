// `whatif --shift` and `whatif --rest`, as they are run.

#include <nlohmann/json.hpp>

#include "program.hpp"
#include "small_study.hpp"

namespace wattweek::cli {
namespace {

using nlohmann::json;

const std::string kWhatIf = "whatif docs/examples/ostrawick.toml ";

json compared(const std::string& words) {
  return json::parse(wattweek("compare " + words + " --format json").out)["candidates"];
}

TEST_CASE("shift: today's start is what compare says") {
  const json today = json::parse(
      wattweek(kWhatIf + "--shift backup --format json").out)["starts"][0]["candidates"];
  const json candidates = compared("docs/examples/ostrawick.toml");
  REQUIRE(today.size() == candidates.size());
  for (std::size_t c = 0; c < candidates.size(); ++c) {
    CHECK(today[c]["cost"].get<double>() ==
          doctest::Approx(candidates[c]["cost"].get<double>()).epsilon(1e-12));
    CHECK(today[c]["unit_hours"] == candidates[c]["workloads"][6]["unit_hours"]);
  }
}

/// Ostrawick, all files beside each other, with one line of the study replaced.
json of_edited_ostrawick(const std::string& replacement) {
  const TemporaryFolder folder;
  const std::string command = "cp docs/examples/*.toml '" + folder.path().string() + "' && cd '" +
                              folder.path().string() + "' && sed -i '" + replacement +
                              "' ostrawick.toml && wattweek compare ostrawick.toml --format json";
  return json::parse(shell(WATTWEEK_SOURCE_DIR, command).out)["candidates"];
}

TEST_CASE("shift: each start is what compare says of a file with other hours in it") {
  const json start =
      json::parse(wattweek(kWhatIf + "--shift backup --format json").out)["starts"][3];
  CHECK(start["time"] == "01:00");
  const json edited = of_edited_ostrawick("s/22:00-01:00/01:00-04:00/");
  for (std::size_t c = 1; c < 3; ++c) {  // The rack is what the household was metered with.
    CHECK(start["candidates"][c]["cost"].get<double>() ==
          doctest::Approx(edited[c]["cost"].get<double>()).epsilon(1e-12));
    CHECK(start["candidates"][c]["unserved_unit_hours"].get<double>() ==
          doctest::Approx(edited[c]["workloads"][6]["unserved_unit_hours"].get<double>()));
  }
}

TEST_CASE("shift: a workload with days is reckoned at 168 starts, text within 80 columns") {
  const json shift = json::parse(wattweek(kWhatIf + "--shift photos --format json").out);
  CHECK(shift["starts"].size() == 168);
  CHECK(shift["starts"][0]["day"] == "sun");
  const std::string text = wattweek(kWhatIf + "--shift photos").out;
  std::size_t line = 0;
  for (std::size_t end = text.find('\n'); end != text.npos; end = text.find('\n', line)) {
    CHECK(end - line <= 80);
    line = end + 1;
  }
}

TEST_CASE("shift: years on the command line are the horizon") {
  const json choice = json::parse(wattweek(kWhatIf + "--shift backup --years 1 --format json")
                                      .out)["candidates"][0]["cheapest"];
  CHECK(choice["saves_present_cost"].get<double>() ==
        doctest::Approx(choice["saves_cost"].get<double>() / 1.02));
}

TEST_CASE("rest: a device is named by itself, by its candidate's id, or by its number") {
  const auto rested = [](const std::string& who) {
    return wattweek(kWhatIf + "--format json --rest '" + who + "=00:00-01:00'").out;
  };
  const std::string by_name = rested("refitted office tower");
  CHECK(json::parse(by_name)["devices"].size() == 1);
  CHECK(rested("tower/refitted office tower") == by_name);
  CHECK(rested("tower/1") == by_name);
  CHECK(json::parse(rested("tower"))["devices"].size() == 2);
}

TEST_CASE("rest: asleep where all can sleep, else off, and as is asked for") {
  const auto state = [](const std::string& rest) {
    return json::parse(wattweek(kWhatIf + "--format json --rest " + rest).out)["state"];
  };
  CHECK(state("tower/1=00:00-01:00") == "sleep");
  CHECK(state("tower=00:00-01:00") == "off");
  CHECK(state("tower/1=00:00-01:00:off") == "off");
  CHECK(state("tower/1=00:00-01:00:sleep") == "sleep");
}

TEST_CASE("rest: what it gives is what compare says of a file with the rest in it") {
  const json with =
      json::parse(wattweek(kWhatIf + "--rest palm/2=01:00-06:00 --format json").out)["with"];
  const json edited =
      of_edited_ostrawick("/^assists/a rest = [ { hours = \"01:00-06:00\", state = \"off\" } ]")[1];
  CHECK(with["energy_kwh"].get<double>() ==
        doctest::Approx(edited["energy_kwh"].get<double>()).epsilon(1e-12));
  CHECK(with["cost"].get<double>() == doctest::Approx(edited["cost"].get<double>()).epsilon(1e-12));
}

TEST_CASE("rest: until midnight may be written as 00:00") {
  CHECK(wattweek(kWhatIf + "--rest rack=22:00-00:00").out ==
        wattweek(kWhatIf + "--rest rack=22:00-24:00").out);
}

void check_refused(const std::string& words, const std::string& message) {
  const Run run = wattweek(kWhatIf + words);
  CHECK(run.exit_code == 2);
  CHECK(run.out == "");
  CHECK(run.err == "wattweek: error: " + message + "\n");
}

TEST_CASE("what if: exactly one of vary, shift and rest is asked") {
  const std::string expected =
      "; expected one of --vary FACTOR=LOW..HIGH, --turns, --shift WORKLOAD and --rest "
      "DEVICE=HH:MM-HH:MM";
  check_refused("", "whatif: no question is asked" + expected);
  check_refused("--shift films --vary price=0..2",
                "whatif: --vary and --shift are two questions" + expected);
  check_refused("--shift films --rest rack=01:00-06:00",
                "whatif: --shift and --rest are two questions" + expected);
  check_refused("--shift films --threads 2", "--threads: goes with --vary");
}

TEST_CASE("rest: wrong hours are refused") {
  for (const std::string hours : {"1:00-06:00", "01:00-01:00", "01:00-25:00", "24:00-06:00",
                                  "01:60-06:00", "01:00+06:00", "01:00-06:00off", ""}) {
    check_refused("--rest 'rack=" + hours + "'",
                  "--rest: found the hours '" + hours +
                      "', accepted is HH:MM-HH:MM with two different times from 00:00 to 24:00");
  }
}

TEST_CASE("rest: a name that several devices have is refused, with what tells them apart") {
  const TemporaryFolder folder;
  folder.write("study.toml", kSmallStudy);
  const std::string command = "wattweek whatif study.toml --rest 'device 1=01:00-06:00'";
  CHECK(
      shell(folder.path(), command).err ==
      "wattweek: error: --rest: 'device 1' is the name of 2 devices; accepted are old/1, new/1\n");
}

}  // namespace
}  // namespace wattweek::cli
