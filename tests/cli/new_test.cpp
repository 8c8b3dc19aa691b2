// `new DIR`: three files that run at once, from what was given and from stated guesses.

#include <algorithm>
#include <chrono>
#include <nlohmann/json.hpp>
#include <sstream>
#include <vector>

#include "../support/about.hpp"
#include "new_home.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using tests::about;

constexpr const char* kCheck =
    "wattweek check --strict home/study.toml home/profile.toml home/tariff.toml";

std::size_t widest_line(const std::string& text) {
  std::size_t widest = 0;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) widest = std::max(widest, line.size());
  return widest;
}

TEST_CASE("new: what it writes is right, worth no note, and comes to a verdict") {
  for (const std::string words :
       {"", "--idle 13.5", "--busy 29", "--idle 13.5 --busy 29 --price 0.30 --currency EUR",
        "--idle 0", "--idle 20 --busy 20 --price 0", "--idle 1e9 --busy 1e9 --price -0.1",
        "--currency JPY", "--currency KWD --price 0.03", "--start 1970-02", "--start 9998-12",
        "--zone America/St_Johns --start 2027-07"}) {
    CAPTURE(words);
    const TemporaryFolder folder;
    CHECK(made(folder, words).err == "");
    const Run check = shell(folder.path(), kCheck);
    CHECK(check.exit_code == 0);
    CHECK(check.err == "");
    CHECK(has_line(check.out, "home/study.toml: ok (study: 2 candidates, 1 workload, 12 months)"));
    CHECK(has_line(check.out, "home/profile.toml: ok (profile: my machine, 1 increment)"));
    CHECK(has_line(check.out,
                   std::string("home/tariff.toml: ok (tariff: my contract, 1 price band, ") +
                       (words.find("JPY") != std::string::npos   ? "JPY"
                        : words.find("KWD") != std::string::npos ? "KWD"
                                                                 : "EUR") +
                       ")"));
    const Run compare = shell(folder.path(), "wattweek compare home/study.toml");
    CHECK(compare.exit_code == 0);
    CHECK(compare.out.find("\nCompared with My machine\n- Palm-size box ") != std::string::npos);
    const Run numbers = shell(folder.path(), "wattweek compare home/study.toml --format json");
    CHECK(json::parse(numbers.out)["comparison"]["rows"][0]["saves_present_cost"].is_number());
  }
}

TEST_CASE("new: says what was written, what was assumed and what to run, all of it") {
  const TemporaryFolder folder;
  const Run run = made(folder, "--start 2027-01");
  CHECK(run.err == "");
  CHECK(run.out ==
        "Written:\n"
        "  home/study.toml\n"
        "  home/profile.toml\n"
        "  home/tariff.toml\n"
        "\n"
        "Assumed, since nothing else was given. Each file says beside the figure how to\n"
        "find your own:\n"
        "- profile.toml: 50 W with nobody using it; 5 W more for each stream\n"
        "- tariff.toml: 0.3 EUR per kWh; no tax on top of the price, the same price at\n"
        "  all hours, no standing charge\n"
        "- study.toml: the time zone of this machine, Etc/UTC; 3000 kWh a year for the\n"
        "  rest of the home; when streams run; a palm-size box for 200 EUR, its watts,\n"
        "  and that your own machine would sell for nothing; 5 years ahead at prices that\n"
        "  stay as they are\n"
        "\n"
        "Next, see what they say:\n"
        "  wattweek compare home/study.toml\n"
        "\n"
        "Before a meter goes between plug and socket: shut down, mind its rated current,\n"
        "chain no power strips, open nothing (docs/safety.md).\n");
}

TEST_CASE("new: what was given is not among the assumed, and is said to be given") {
  const TemporaryFolder folder;
  const Run run = made(folder,
                       "--idle 13.5 --busy 29 --price 0.30 --currency EUR --zone Europe/Dublin "
                       "--start 2027-01");
  const std::size_t begin = run.out.find("- profile.toml");
  CHECK(run.out.substr(begin, run.out.find("\n\nNext") - begin) ==
        "- profile.toml: 7.75 W more for each stream, so that 2 of them bring it to 29 W\n"
        "- tariff.toml: no tax on top of the price, the same price at all hours, no\n"
        "  standing charge\n"
        "- study.toml: 3000 kWh a year for the rest of the home; when streams run; a\n"
        "  palm-size box for 200 EUR, its watts, and that your own machine would sell for\n"
        "  nothing; 5 years ahead at prices that stay as they are");
  CHECK(has_line(file(folder, "profile.toml"),
                 "# Switched on, its services up, nobody using them. As given.\nidle = 13.5"));
  CHECK(has_line(file(folder, "tariff.toml"), "# For each kWh. As given.\nprice = 0.3"));
  CHECK(has_line(file(folder, "tariff.toml"), "# Three capitals. As given.\ncurrency = \"EUR\""));
  CHECK(has_line(file(folder, "study.toml"),
                 "# Where the home is. As given.\ntime_zone = \"Europe/Dublin\""));
  CHECK(has_line(file(folder, "study.toml"),
                 "# The first day of the year that is reckoned. As given.\nstart = 2027-01-01"));
}

TEST_CASE("new: beside each guess stands that it is assumed, and where the figure is found") {
  const TemporaryFolder folder;
  made(folder, "");
  CHECK(has_line(file(folder, "profile.toml"),
                 "# Switched on, its services up, nobody using them. Assumed. Let the meter count\n"
                 "# the kWh of a quiet day: 0.324 kWh in 24 hours is 13.5 W.\nidle = 50.0"));
  CHECK(has_line(file(folder, "profile.toml"),
                 "# Assumed. Read the meter while a known number of streams is running: 13.5 W\n"
                 "# idle and 29 W with five streams at once gives (29 - 13.5) / 5 = 3.1 W a\n"
                 "# stream.\nstreaming = 5.0"));
  CHECK(has_line(file(folder, "tariff.toml"),
                 "# Assumed. The three capitals of the bill's currency.\ncurrency = \"EUR\""));
  CHECK(has_line(file(folder, "tariff.toml"),
                 "# Assumed. The price of a kWh stands on the bill, beside the kWh of the period.\n"
                 "price = 0.3"));
  CHECK(has_line(file(folder, "study.toml"),
                 "# Assumed: the time zone of the machine that wrote this. The IANA name of the\n"
                 "# home's time zone, such as Europe/Dublin.\ntime_zone = \"Etc/UTC\""));
}

TEST_CASE("new: the machine draws what was read, idle and with the most streams at once") {
  const TemporaryFolder folder;
  made(folder, "--idle 13.4 --busy 29.1 --price 0.30 --currency EUR --start 2027-01");
  CHECK(has_line(file(folder, "profile.toml"), "streaming = 7.85"));
  const Run run = shell(folder.path(), "wattweek estimate home/study.toml --format json");
  const json mine = json::parse(run.out)["candidates"][0];
  CHECK(mine["highest_w"].get<double>() == about(29.1));
  CHECK(mine["base"]["energy_kwh"].get<double>() == about(13.4 * 8.76));
  CHECK(mine["base"]["cost"].get<double>() == about(13.4 * 8.76 * 0.30));
  // 208 weekday evenings of 3 h at half a stream, 157 weekend evenings of 5 h at one on average:
  // the year 2027 has 365 days and begins on a Friday.
  CHECK(mine["workloads"][0]["energy_kwh"].get<double>() == about(7.85 * 1.097));
}

TEST_CASE("new: given numbers come back from the files as the same numbers") {
  for (const std::string number : {"0.1234567890123456", "13", "1e-7", "123456789.98765433"}) {
    CAPTURE(number);
    const TemporaryFolder folder;
    made(folder, "--idle " + number + " --price 1.0000000000000002 --currency EUR");
    const std::string profile = file(folder, "profile.toml");
    const std::size_t at = profile.find("\nidle = ") + 8;
    const std::string written = profile.substr(at, profile.find('\n', at) - at);
    CHECK(std::stod(written) == std::stod(number));
    CHECK(written.find_first_of(".e") != std::string::npos);
    CHECK(has_line(file(folder, "tariff.toml"), "price = 1.0000000000000002"));
  }
}

/// The text with the `#` of every line taken off behind which there is no blank.
std::string with_examples(const std::string& text) {
  std::string all;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    const bool is_example = line.size() > 1 && line[0] == '#' && line[1] != ' ';
    all += line.substr(is_example ? 1 : 0) + '\n';
  }
  return all;
}

TEST_CASE("new: the examples in the comments work, all of them at once") {
  const TemporaryFolder folder;
  made(folder, "--start 2027-01");
  for (const std::string name : {"study.toml", "profile.toml", "tariff.toml"}) {
    const std::string text = file(folder, name);
    folder.write("home/" + name, with_examples(text));
    CHECK(file(folder, name) != text);
  }
  const Run check = shell(folder.path(), kCheck);
  CHECK(check.err == "");
  CHECK(has_line(check.out, "home/study.toml: ok (study: 3 candidates, 2 workloads, 12 months)"));
  CHECK(has_line(check.out, "home/profile.toml: ok (profile: my machine, 2 increments)"));
  CHECK(has_line(check.out, "home/tariff.toml: ok (tariff: my contract, 2 price bands, EUR)"));
  const Run run = shell(folder.path(), "wattweek compare home/study.toml --format json");
  const json all = json::parse(run.out);
  CHECK(all["candidates"][0]["bands"][0]["hours"].get<double>() == about(365 * 8));
  CHECK(all["candidates"][2]["states"][0]["hours"].get<double>() == about(365 * 6));
  CHECK(all["candidates"][0]["co2_kg"].get<double>() > 0);
}

TEST_CASE("new: lines of the files are as wide as a terminal, and ASCII") {
  const TemporaryFolder folder;
  made(folder, "--idle 123456.789 --busy 1234567.891 --zone America/Argentina/ComodRivadavia");
  for (const std::string name : {"study.toml", "profile.toml", "tariff.toml"}) {
    CAPTURE(name);
    const std::string text = file(folder, name);
    CHECK(widest_line(text) <= 80);
    for (const char letter : text) {
      CHECK_MESSAGE((letter == '\n' || (letter >= ' ' && letter <= '~')), text);
    }
  }
}

TEST_CASE("new: the alternative is a machine that ships, and runs what the workload is called") {
  const TemporaryFolder folder;
  made(folder, "");
  CHECK(has_line(file(folder, "study.toml"), "profile = \"shipped:palm-size-box\""));
  const Run run = shell(folder.path(), "wattweek estimate home/study.toml --format json");
  const json palm = json::parse(run.out)["candidates"][1];
  CHECK(palm["id"] == "palm-size-box");
  CHECK(palm["workloads"][0]["energy_kwh"] > 0);
}

TEST_CASE("new: without a start the year is the calendar's") {
  const auto year = [] {
    const auto today = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    return static_cast<int>(std::chrono::year_month_day(today).year());
  };
  const TemporaryFolder folder;
  const int before = year();
  const Run run = made(folder, "");
  const int after = year();
  const std::string study = file(folder, "study.toml");
  const auto starts_in = [&study, &run](int y) {
    const std::string text = std::to_string(y);
    return has_line(study, "start = " + text + "-01-01") &&
           run.out.find("; the year " + text + ";") != std::string::npos;
  };
  CHECK((starts_in(before) || starts_in(after)));
}

}  // namespace
}  // namespace wattweek::cli
