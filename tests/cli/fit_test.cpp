// `fit`, as it is run, on the log of the examples.

#include <nlohmann/json.hpp>

#include "../support/widest_line.hpp"
#include "fit_desk.hpp"
#include "terminal.hpp"

namespace wattweek::cli {
namespace {

using nlohmann::ordered_json;

/// What `fit` says in JSON; options behind the example's.
ordered_json said(const std::string& options = "") {
  const Run run = wattweek(kFit + options + " --format json");
  REQUIRE(run.exit_code == 0);
  return ordered_json::parse(run.out);
}

std::vector<std::string> members(const ordered_json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  return names;
}

TEST_CASE("fit: JSON has the members of the contract, in its order") {
  using Names = std::vector<std::string>;
  const ordered_json json = said();
  CHECK(members(json) == Names{"format", "log", "energy_kwh", "mean_w", "lowest_w", "highest_w",
                               "levels", "idle_w", "increments", "week", "year"});
  CHECK(json["format"] == "wattweek-fit-1");
  CHECK(members(json["log"]) == Names{"rows", "used", "dropped", "first", "last", "span_hours",
                                      "covered_hours", "longest_gap_s", "typical_step_s",
                                      "resolution_w", "change_only"});
  CHECK(members(json["levels"][0]) == Names{"state", "watts", "hours"});
  CHECK(members(json["idle_w"]) == Names{"value", "standard_error"});
  CHECK(members(json["year"]) == Names{"energy_kwh", "low", "high"});
  CHECK(json["increments"].empty());
  CHECK(json["week"].size() == 168);
  const ordered_json noted = said(kActivity);
  CHECK(members(noted["increments"][0]) ==
        Names{"workload", "each_w", "standard_error", "unit_hours"});
}

TEST_CASE("fit: what the example's log covers, by hand") {
  const ordered_json log = said()["log"];
  // Of 21 days in steps of 5 min: 12 rows less where the clocks are put forward, 43 less between
  // 09:25 and 13:05, and two without a value.
  CHECK(log["rows"] == 21 * 288 - 12 - 43);
  CHECK(log["used"] == 21 * 288 - 12 - 43 - 2);
  CHECK(log["dropped"].dump() == R"({"no-value":2})");
  CHECK(log["first"] == "2027-03-08T00:00:00+00:00");
  CHECK(log["last"] == "2027-03-28T23:55:00+01:00");
  // To the last row: 21 days less the missing hour and less five minutes. Dropped: the hole and two
  // intervals of five minutes.
  const double span_hours = 21 * 24 - 1 - 5.0 / 60;
  CHECK(log["span_hours"].get<double>() == doctest::Approx(span_hours));
  CHECK(log["covered_hours"].get<double>() ==
        doctest::Approx(span_hours - (3 + 40.0 / 60) - 10.0 / 60));
  CHECK(log["longest_gap_s"] == 13'200);
  CHECK(log["typical_step_s"] == 300);
  CHECK(log["resolution_w"].get<double>() == doctest::Approx(0.1));
  CHECK(log["change_only"] == false);
}

TEST_CASE("fit: energy, mean and the year go together") {
  const ordered_json json = said();
  CHECK(json["energy_kwh"].get<double>() * 1000 / json["log"]["covered_hours"].get<double>() ==
        doctest::Approx(json["mean_w"].get<double>()));
  double sum_w = 0;
  for (const auto& watts : json["week"]) sum_w += watts.get<double>();
  CHECK(json["year"]["energy_kwh"].get<double>() == doctest::Approx(sum_w / 168 * 8.76));
  CHECK(json["year"]["low"] < json["year"]["energy_kwh"]);
  CHECK(json["year"]["high"] > json["year"]["energy_kwh"]);
}

TEST_CASE("fit: what was noted beside the example's log has the watts that it was made with") {
  const ordered_json json = said(kActivity);
  const auto is_near = [](const ordered_json& figure, double truth) {
    return std::abs(figure.get<double>() - truth) < 0.2;
  };
  CHECK(is_near(json["idle_w"]["value"], 9.3));
  REQUIRE(json["increments"].size() == 2);
  CHECK(json["increments"][0]["workload"] == "backup");
  CHECK(is_near(json["increments"][0]["each_w"], 6.6));
  CHECK(json["increments"][1]["workload"] == "films");
  CHECK(is_near(json["increments"][1]["each_w"], 4.1));
  CHECK(json["residuals"]["lag_one"] > 0.1);
}

TEST_CASE("fit: findings go to standard error, a line each, with what overrules them") {
  const Run run = wattweek(kFit);
  CHECK(run.err ==
        "wattweek: docs/examples/plug-log.csv: columns: separated by ',' (--delimiter)\n"
        "wattweek: docs/examples/plug-log.csv: time: 'time', without zone (--columns)\n"
        "wattweek: docs/examples/plug-log.csv: values: 'power (W)' (--columns)\n"
        "wattweek: docs/examples/plug-log.csv: kind: power in W (--kind, --unit)\n");
}

TEST_CASE("fit: a log in UTC has its week in UTC, with a warning, unless a zone is given") {
  const Desk desk;
  desk.write("utc.csv", "time,watts\n2027-03-01T12:00:00Z,10\n2027-03-01T12:01:00Z,12\n");
  const std::string warning =
      "warning: the week is in UTC; say where the machine stands by --zone\n";
  CHECK(desk.run("fit utc.csv").err.find(warning) != std::string::npos);
  CHECK(desk.run("fit utc.csv --zone Europe/Dublin").err.find("warning") == std::string::npos);
}

TEST_CASE("fit: screens of the example at 60, 80 and 100 columns") {
  for (const int columns : {60, 80, 100}) {
    const std::string got =
        on_terminal(columns, "export NO_COLOR=1 TERM=xterm; wattweek " + kFit + kActivity +
                                 " --meter-error 2,0.5 --tariff shipped:flat 2>&-");
    const std::filesystem::path path =
        std::filesystem::path(WATTWEEK_SOURCE_DIR) /
        ("tests/cli/screens/plug-" + std::to_string(columns) + ".txt");
    if (std::getenv("WATTWEEK_WRITE_SCREENS") != nullptr) {
      std::ofstream(path, std::ios::binary) << got;
    }
    CHECK(text_of(path) == got);
    CHECK(tests::widest_line(got) <= static_cast<std::size_t>(columns));
  }
}

TEST_CASE("fit: the same bytes in any language") {
  const std::string command = "wattweek " + kFit + kActivity;
  const Run plain = shell(WATTWEEK_SOURCE_DIR, "export LC_ALL=C; " + command);
  const Run german = shell(WATTWEEK_SOURCE_DIR, "export LC_ALL=de_DE.UTF-8; " + command);
  CHECK(plain.out == german.out);
  CHECK(plain.err == german.err);
}

TEST_CASE("fit: a packed log says the same as the log") {
  const Desk desk;
  const Run packed = shell(
      desk.path(), "gzip -c " + kLog + " >plug.gz; wattweek fit plug.gz --zone Europe/Dublin");
  CHECK(packed.out == wattweek(kFit).out);
}

TEST_CASE("fit: the meter's error widens the year and is said of each figure") {
  const ordered_json bare = said();
  const ordered_json json = said(" --meter-error 2,0.5");
  CHECK(json["year"]["low"] < bare["year"]["low"]);
  CHECK(json["year"]["high"] > bare["year"]["high"]);
  const double mean_w = json["mean_w"].get<double>();
  CHECK(json["meter_error"]["mean_w"].get<double>() == doctest::Approx(0.02 * mean_w + 0.5));
}

TEST_CASE("fit: under a contract the year costs what its energy costs") {
  const Desk desk;
  desk.write("contract.toml", "currency = \"EUR\"\nband = [{ name = \"all\", price = 0.3 }]\n");
  const Run run = desk.run(kFit + " --tariff contract.toml --format json");
  REQUIRE(run.exit_code == 0);
  const ordered_json json = ordered_json::parse(run.out);
  const ordered_json& cost = json["cost"];
  CHECK(cost["currency"] == "EUR");
  CHECK(cost["year"] == 2027);
  CHECK(cost["cost"].get<double>() == doctest::Approx(0.3 * cost["energy_kwh"].get<double>()));
  const double factor =
      json["year"]["high"].get<double>() / json["year"]["energy_kwh"].get<double>();
  CHECK(cost["high"].get<double>() == doctest::Approx(factor * cost["cost"].get<double>()));
}

TEST_CASE("fit: a log that leaves hours of the week unseen gives no profile and no year's cost") {
  const Desk desk;
  desk.write("short.csv",
             "time,watts\n2027-03-01 12:00,10\n2027-03-01 12:01,12\n2027-03-01 12:02,9\n");
  const std::string fit = "fit short.csv --zone Europe/Dublin";
  const Run profile = desk.run(fit + " --profile box.toml");
  CHECK(profile.exit_code == 2);
  CHECK(
      profile.err ==
      "wattweek: error: --profile: some hour of the week is not in the log; expected a log of all "
      "hours of the week, or an --activity file\n");
  CHECK_FALSE(desk.has("box.toml"));
  CHECK(
      desk.run(fit + " --tariff shipped:flat").err ==
      "wattweek: error: --tariff: some hour of the week is not in the log, so that no year can be "
      "reckoned; expected a log of all hours of the week\n");
  desk.write("use.csv", "workload,start,end\ndoor,2027-03-01 11:00,2027-03-01 13:00\n");
  CHECK(
      desk.run(fit + " --activity use.csv --profile box.toml").err ==
      "wattweek: error: --profile: idle watts cannot be told from this log; expected time in which "
      "no workload is in use\n");
}

TEST_CASE("fit: a log of which nothing is kept is answered so, and not divided by") {
  const Run run = wattweek(kFit + " --gap 1");
  CHECK(run.exit_code == 0);
  CHECK(run.out.find("No time in this log can be told the watts of.\n") == 0);
  CHECK(said(" --gap 1")["mean_w"] == 0);
}

}  // namespace
}  // namespace wattweek::cli
