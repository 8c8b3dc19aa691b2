#include "cli/commands.hpp"

namespace wattweek::cli {
namespace {

constexpr int kMany = 1'000'000;

const Option kReportFormat{"format", "FORMAT", "text (default), json, csv or markdown"};
const Option kYears{"years", "N",
                    "look ahead over N years, 1 to 30, in place of finance.years in the study; "
                    "without [finance] the discount rate and the price rise are 0"};

const Option kBaseline{"baseline", "ID",
                       "the candidate that the others are compared with, in place of the study's"};

const Option kMonth{"month", "YYYY-MM",
                    "only the household's bill of this month, line by line, without and with each "
                    "candidate"};

const Option kSeed{"seed", "S",
                   "draw other numbers: 0 to 2147483647, 1 if not given; with --draws"};

const Option kThreads{"threads", "N",
                      "use N threads, 1 to 256, in place of one for each core; the results are the "
                      "same"};

Command estimate() {
  return {"estimate",
          "STUDY.toml",
          1,
          1,
          "energy, cost and bill of each candidate of a study",
          "Reckons for each candidate of the study the energy that it draws and what it adds to "
          "the household's electricity bill, and shows where both go.",
          {kReportFormat, kYears, kMonth},
          {"text", "json", "csv", "markdown"},
          "wattweek estimate docs/examples/ostrawick.toml"};
}

Command compare() {
  return {"compare",
          "STUDY.toml",
          1,
          1,
          "the same, and each candidate against a baseline",
          "Reckons what `estimate` does, and what each candidate saves against the baseline: "
          "energy and money a year, and over a horizon of years whether its purchase pays.",
          {kReportFormat,
           kBaseline,
           kYears,
           kMonth,
           {"tariff", "TARIFF.toml",
            "this contract in place of the study's own, or shipped:NAME; given several times, the "
            "candidates under each of them side by side",
            false, true},
           {"payback-within", "N",
            "what each candidate may cost to buy to have paid back within N years, 1 to 30"},
           {"draws", "N",
            "draw every range of the files N times, 100 to 10000000, and say how far the results "
            "can be trusted; text says so with a few draws even if not asked"},
           kSeed,
           kThreads},
          {"text", "json", "csv", "markdown"},
          "wattweek compare docs/examples/ostrawick.toml --years 8"};
}

Command what_if() {
  return {"whatif",
          "STUDY.toml",
          1,
          1,
          "what if figures were others, work were moved, or devices rested",
          "One question at a time. --vary reckons the study with factors on its figures, on a "
          "grid, and says which candidate is then the best and where two swap places. Factors are "
          "price, use, purchase, household, and for one thing alone use.WORKLOAD, idle.CANDIDATE "
          "and purchase.CANDIDATE; 1 is how things are. --turns says what would change the "
          "answer. --shift says at which start hour of the "
          "week a workload costs least, --rest what putting devices to rest every day saves and "
          "what goes unserved for it.",
          {{"vary", "FACTOR=LOW..HIGH[:POINTS]",
            "the factor takes so many values, 11 if not given, evenly from LOW to HIGH; given more "
            "than once, a grid, the first varying slowest. Text shows one or two factors",
            false, true},
           {"turns", "",
            "for each factor alone, from 0 to 10 times today's, where another candidate becomes "
            "the best"},
           {"shift", "WORKLOAD",
            "the workload starts at every hour of the week, all its hours and days moved together"},
           {"rest", "DEVICE=HH:MM-HH:MM[:STATE]",
            "the device rests at these hours every day; DEVICE is its name, CANDIDATE/NAME, "
            "CANDIDATE/NUMBER, or CANDIDATE for all of its devices; STATE is sleep or off, if not "
            "given sleep where all of them have sleep watts"},
           {"format", "FORMAT", "text (default), json or csv; no csv with --turns and --rest"},
           kYears,
           kThreads},
          {"text", "json", "csv"},
          "wattweek whatif docs/examples/ostrawick.toml --vary price=0.5..1.5"};
}

Command report_page() {
  return {"report",
          "STUDY.toml",
          1,
          1,
          "a page to look at, print and publish, with pictures",
          "Writes one page that explains itself to somebody who never heard of the program: which "
          "candidate costs least, its week, where the energy goes, what would change the answer, a "
          "month's bill line by line, and all files that it was reckoned from. It needs no network "
          "and no other file. A report that is there is replaced, any other file only with "
          "--force.",
          {{"output", "FILE", "the file to write; - is standard output", true, false, 'o'},
           {"format", "FORMAT", "html (default) or markdown"},
           {"pictures", "DIR",
            "write each picture as DIR/NAME.svg too, and as DIR/NAME.png where the program "
            "rsvg-convert is installed; the report in Markdown shows these files"},
           kBaseline,
           kYears,
           {"tariff", "TARIFF.toml", "this contract in place of the study's own, or shipped:NAME"},
           {"month", "YYYY-MM", "whose bill is shown, in place of the study's first month"},
           {"draws", "N",
            "draw every range of the files N times, 100 to 10000000, in place of as many as are "
            "not felt"},
           kSeed,
           kThreads,
           {"force", "", "replace the file that is there, and the pictures, whatever they are"}},
          {"html", "markdown"},
          "wattweek report docs/examples/ostrawick.toml -o report.html"};
}

Command fit() {
  return {"fit",
          "LOG",
          1,
          1,
          "a meter's log: what the machine draws, its week and its year",
          "Reads the log of a meter at the plug, in text with columns or in JSON, plain or "
          "compressed by gzip, and says how much of the time it covers, at which watts the machine "
          "stays, what its week is like and what the year comes to. How the log is laid out is "
          "inferred and said; where two readings fit, it asks. With --activity it says what each "
          "workload adds, and with --profile it writes what `estimate` reads.",
          {{"zone", "ZONE", "the time zone of the week, and of times that name none"},
           {"kind", "power|energy|counter",
            "what the values are: watts, the energy of each interval, or a counter that runs on"},
           {"stamps", "start|end", "which end of its interval a time names, for energy"},
           {"where", "COLUMN=VALUE",
            "keep only these rows. COLUMN here and NAME below are headings, or numbers from 1"},
           {"delimiter", "C", "what sets columns apart: one of , ; | or the word tab or blank"},
           {"decimal", "C", "the decimal mark, . or ,"},
           {"date-order", "dmy|mdy|ymd", "the order of day, month and year in numbers"},
           {"columns", "time=NAME,power=NAME",
            "the columns to read; energy=NAME in place of power=NAME for energy and counters"},
           {"unit", "W|kW|Wh|kWh", "the unit of the values"},
           {"gap", "SECONDS",
            "leave out intervals that are longer; if not given, than 300 s and 3 times the "
            "typical step"},
           {"activity", "ACTIVITY.csv",
            "when which workload was in use: columns workload, start, end and perhaps units"},
           {"meter-error", "PERCENT,WATTS",
            "the meter's limits of error: percent of the reading and watts"},
           {"tariff", "TARIFF.toml", "what the year costs under this contract, or shipped:NAME"},
           {"profile", "OUT.toml", "write a profile of this machine"},
           {"force", "", "replace the profile that is there"},
           {"format", "FORMAT", "text (default) or json"}},
          {"text", "json"},
          "wattweek fit docs/examples/plug-log.csv --zone Europe/Dublin"};
}

Command check() {
  return {"check",
          "FILE.toml...",
          1,
          kMany,
          "all mistakes in studies, profiles and tariffs",
          "Reads each file, and what it names, as a study, a profile or a tariff, and prints all "
          "mistakes, each with file, line and column. A study is reckoned too, so that what a "
          "careful adviser would note about it is said as well. Of a tariff it says which price "
          "holds when, of a profile what its watts come to in a year.",
          {{"strict", "", "notes are errors"}},
          {},
          "wattweek check docs/examples/ostrawick.toml --strict"};
}

Command quick() {
  return {"quick",
          "",
          0,
          0,
          "a year's cost from one or two meter readings and a price",
          "A year of 365 days at one price per kWh: H hours of each day at the busy watts, the "
          "rest at the idle watts. Needs no file. Watts are real power at the wall socket.",
          {{"idle", "W", "watts with nobody using it", true},
           {"busy", "W", "watts in use, not below the idle ones; goes with --busy-hours"},
           {"busy-hours", "H", "hours of each day in use, 0 to 24; goes with --busy"},
           {"price", "P", "price of a kWh", true},
           {"currency", "C",
            "three capitals, such as EUR; without it amounts are in whatever the price is in, "
            "and null in JSON"},
           {"format", "FORMAT", "text (default) or json"}},
          {"text", "json"},
          "wattweek quick --idle 13.5 --busy 29 --busy-hours 4 --price 0.3 --currency EUR"};
}

Command new_study() {
  return {"new",
          "DIR",
          0,
          1,
          "a study, profile and tariff of your own, from a meter and a bill",
          "Writes DIR/study.toml, DIR/profile.toml and DIR/tariff.toml: files with comments that "
          "run at once, and that you change to what your home is like. What is not given is "
          "assumed, and said. DIR is made where there is none; nothing in it is overwritten. "
          "With --list in place of all else it names the profiles and tariffs that ship.",
          {{"idle", "W", "watts at the wall socket with nobody using the machine"},
           {"busy", "W", "watts in use, with two streams at once; not below the idle ones"},
           {"price", "P", "price of a kWh, in whole units of the currency"},
           {"currency", "C", "three capitals, such as EUR"},
           {"zone", "ZONE", "the home's time zone, such as Europe/Dublin"},
           {"start", "YYYY-MM", "the first month of the year that is reckoned"},
           {"list", "", "name what ships, and write nothing"}},
          {},
          "wattweek new home --idle 13.5 --busy 29 --price 0.30 --currency EUR"};
}

Command help() {
  return {"help",
          "[COMMAND]",
          0,
          1,
          kHelpOption.help,
          "Without a command: the list of commands.",
          {},
          {},
          "wattweek help compare"};
}

}  // namespace

std::string dashed(const Option& option) { return "--" + std::string(option.name); }

std::string dashed_letter(const Option& option) {
  return option.letter == '\0' ? "" : std::string("-") + option.letter;
}

const std::vector<Command>& commands() {
  static const std::vector<Command> kCommands = {estimate(),    compare(),   what_if(),
                                                 report_page(), fit(),       check(),
                                                 quick(),       new_study(), help()};
  return kCommands;
}

const Command* command_named(std::string_view name) {
  for (const Command& command : commands()) {
    if (command.name == name) return &command;
  }
  return nullptr;
}

std::vector<std::string_view> command_names() {
  std::vector<std::string_view> names;
  for (const Command& command : commands()) names.push_back(command.name);
  return names;
}

}  // namespace wattweek::cli
