#include "program.hpp"

namespace wattweek::cli {
namespace {

// 10 kWh a day in the house, 2.4 kWh a day by the box: figures to be followed by hand.
const std::string kStudy = R"(title = "Paper"
time_zone = "Etc/UTC"
start = 2027-01-01
[household]
kwh_per_year = 3650
[tariff]
name = "Ladder"
currency = "EUR"
tax = 0.2
standing_per_month = 5
minimum_per_month = 60
band = [ { name = "all hours", price = 0.1 } ]
[[tariff.block]]
up_to = 250
price = 0.05
[[tariff.block]]
price = 0.1
[[candidate]]
id = "box"
[[candidate.device]]
watts = { idle = 100 }
)";

Run run(const std::string& words) {
  const TemporaryFolder folder;
  folder.write("study.toml", kStudy);
  return shell(folder.path(), "wattweek " + words);
}

// February: 280 kWh without, 347.2 with. Without: 5 + 28 + 12.50 + 3 = 48.50, so 11.50 are missing
// to the minimum; with: 5 + 34.72 + 12.50 + 9.72 = 61.94. Tax is a fifth of either.
TEST_CASE("month: February's paper bill, line by line, without and with") {
  CHECK(run("estimate study.toml --month 2027-02").out ==
        R"(Paper: the electricity bill of 2027-02
Ladder, in EUR. Prices before tax. Nothing is rounded before it is printed; a
bill that rounds each line differs by cents.

Without and with box

                              price  without  without    with   with
                                EUR      kWh      EUR     kWh    EUR
standing charge of the month   5.00              5.00           5.00
all hours                      0.10   280.00    28.00  347.20  34.72
block up to 250 kWh            0.05   250.00    12.50  250.00  12.50
block beyond                   0.10    30.00     3.00   97.20   9.72
up to the minimum bill                          11.50           0.00
tax, 20 %                                       12.00          12.39
total                                 280.00    72.00  347.20  74.33

It adds 67.20 kWh and 2.33 EUR.
)");
}

TEST_CASE("month: the bill can be pasted under an article") {
  const std::string shown = run("compare study.toml --month 2027-02 --format markdown").out;
  CHECK(shown.find("## Paper: the electricity bill of 2027-02\n") == 0);
  CHECK(shown.find("| total | | 280.00 | 72.00 | 347.20 | 74.33 |\n") != std::string::npos);
}

TEST_CASE("month: one that the study does not hold is refused with those that it does") {
  const Run got = run("compare study.toml --month 2028-02");
  CHECK(got.exit_code == 2);
  CHECK(got.out == "");
  CHECK(got.err ==
        "wattweek: error: --month: found '2028-02', accepted is a month of the study, 2027-01 to "
        "2027-12\n");
  CHECK(run("compare study.toml --month feb").err ==
        "wattweek: error: --month: found 'feb', accepted is a month of the study, 2027-01 to "
        "2027-12\n");
}

TEST_CASE("month: goes with what people read, programs have all months in JSON") {
  for (const char* format : {"json", "csv"}) {
    const Run got = run(std::string("compare study.toml --month 2027-02 --format ") + format);
    CHECK(got.exit_code == 2);
    CHECK(got.err ==
          "wattweek: error: --month: goes with text and markdown; json holds the bills of all "
          "months\n");
  }
}

}  // namespace
}  // namespace wattweek::cli
