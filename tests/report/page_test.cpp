// Whole reports, of studies that are read and reckoned.

#include "wattweek/report/page.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <regex>
#include <set>

#include "../support/study_text.hpp"
#include "page_parts.hpp"
#include "wattweek/decide/ranking.hpp"

namespace wattweek::report {
namespace {

/// A study with all that a report needs.
struct Reported {
  tests::Reckoned reckoned;
  ReportShown shown;

  explicit Reported(const std::string& text)
      : reckoned(tests::reckon(text)),
        shown{reckoned.study,
              reckoned.result,
              decide::weeks(reckoned.study, reckoned.zone),
              decide::load_durations(reckoned.study, reckoned.zone),
              {},
              {},
              0,
              "1.2.3",
              {{"study.toml", text}}} {
    if (decide::criterion_of(reckoned.study) == decide::Criterion::none) return;
    shown.prices = std::get<decide::PriceSweep>(
        decide::price_sweep(reckoned.study, reckoned.zone, decide::PriceSweepOptions{}));
    shown.turns = std::get<decide::AllTurns>(decide::turns(reckoned.study, reckoned.zone, 1));
  }

  void draw() {
    reckoned.result.uncertainty = std::get<decide::Uncertainty>(
        decide::draw(reckoned.study, reckoned.zone, decide::DrawOptions{256, 1, 1}));
  }
};

const std::string kFilms = R"(
[[workload]]
id = "films"
name = "Film streaming"
[[workload.use]]
hours = "20:00-22:00"
)";

/// A candidate that draws so many watts idle, and 10 W more for a film.
std::string box(const std::string& id, const std::string& idle_w, const std::string& purchase) {
  return fmt::format(R"(
[[candidate]]
id = "{}"
purchase = {}
[[candidate.device]]
watts.idle = {}
increments.films = 10
)",
                     id, purchase, idle_w);
}

std::string two_boxes() {
  return tests::kYear2027 + tests::kFlatTariff + "[finance]\nyears = 5\n" + kFilms +
         box("old", "100", "0") + box("new", "[10, 12]", "300");
}

bool holds(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos;
}

std::vector<std::string> ids_in(const std::string& html) {
  static const std::regex kId(" id=\"([^\"]*)\"");
  std::vector<std::string> ids;
  for (std::sregex_iterator it(html.begin(), html.end(), kId), end; it != end; ++it) {
    ids.push_back((*it)[1]);
  }
  return ids;
}

const Figure* figure_of(const Page& page, const std::string& name) {
  for (const PageSection& section : page.sections) {
    for (const PageBlock& block : section.blocks) {
      const auto* figures = std::get_if<Figures>(&block);
      if (figures == nullptr) continue;
      for (const Figure& figure : figures->figures) {
        if (figure.name == name) return &figure;
      }
    }
  }
  return nullptr;
}

TEST_CASE("report: the questions come in the reader's order") {
  Reported reported(two_boxes());
  reported.draw();
  std::vector<std::string> sections;
  for (const PageSection& section : page(reported.shown).sections) sections.push_back(section.id);
  CHECK(sections == std::vector<std::string>{"costs", "week", "where", "when", "change", "bill",
                                             "method", "files"});
}

TEST_CASE("report: no two things of a page have the same id, and links lead somewhere") {
  Reported reported(two_boxes());
  reported.draw();
  const std::string html = report_page(reported.shown);
  const std::vector<std::string> ids = ids_in(html);
  const std::set<std::string> distinct(ids.begin(), ids.end());
  CHECK(distinct.size() == ids.size());
  static const std::regex kLink("href=\"#([^\"]*)\"|aria-(?:labelledby|describedby)=\"([^\"]*)\"");
  std::size_t links = 0;
  for (std::sregex_iterator it(html.begin(), html.end(), kLink), end; it != end; ++it, ++links) {
    const std::string to = (*it)[1].length() > 0 ? (*it)[1] : (*it)[2];
    CAPTURE(to);
    CHECK(distinct.count(to) == 1);
  }
  CHECK(links > 20);
}

TEST_CASE("report: each picture of the page is a file, too") {
  Reported reported(two_boxes());
  reported.draw();
  const std::string html = report_page(reported.shown);
  std::set<std::string> names;
  for (const PictureFile& picture : report_pictures(reported.shown)) {
    CAPTURE(picture.name);
    CHECK(holds(html, "<figure id=\"" + picture.name + "\">"));
    CHECK(picture.svg.rfind(std::string(kPictureBegins), 0) == 0);
    names.insert(picture.name);
  }
  CHECK(names == std::set<std::string>{"cost", "present-cost", "week-old", "week-new", "where-old",
                                       "where-new", "months-old", "months-new", "load", "prices",
                                       "lead", "drivers"});
}

TEST_CASE("report: the same results are the same bytes") {
  Reported reported(two_boxes());
  reported.draw();
  CHECK(report_page(reported.shown) == report_page(reported.shown));
}

TEST_CASE("report: where another one becomes the cheapest is marked on the sweep of prices") {
  Reported reported(two_boxes());
  const Page whole = page(reported.shown);
  const Figure* figure = figure_of(whole, "prices");
  REQUIRE(figure != nullptr);
  const auto& lines = std::get<chart::Lines>(figure->picture);
  REQUIRE(lines.markers.size() == 2);
  // 300 EUR more against 89 W all year at 0.30 EUR over 5 years, no discount: 300 / 1169.46.
  CHECK(lines.markers[0].label == "equal at 0.257");
  CHECK(lines.markers[1].label == "today");
  CHECK(figure->alternative ==
        "With free electricity old costs least; from 0.257 times today's prices on new, up to 2 "
        "times.");
}

TEST_CASE("report: half-hours that are alike on all days share a row of the week's numbers") {
  Reported reported(two_boxes());
  const Page whole = page(reported.shown);
  const Figure* figure = figure_of(whole, "week-old");
  REQUIRE(figure != nullptr);
  REQUIRE(figure->numbers.rows.size() == 3);
  CHECK(figure->numbers.rows[0][0] == "00:00 to 20:00");
  CHECK(figure->numbers.rows[1] == std::vector<std::string>{"20:00 to 22:00", "110.0", "110.0",
                                                            "110.0", "110.0", "110.0", "110.0",
                                                            "110.0"});
  CHECK(figure->numbers.rows[2][0] == "22:00 to 24:00");
}

TEST_CASE("report: of forty workloads the nine largest are drawn, and the rest as one") {
  std::string text = tests::kYear2027 + tests::kFlatTariff;
  std::string increments;
  for (int w = 0; w < 40; ++w) {
    text +=
        fmt::format("[[workload]]\nid = \"w{0}\"\n[[workload.use]]\nhours = \"10:00-11:00\"\n", w);
    increments += fmt::format("increments.w{} = {}\n", w, w + 1);
  }
  text += "[[candidate]]\nid = \"box\"\n[[candidate.device]]\nwatts.idle = 10\n" + increments;
  Reported reported(text);
  const Page whole = page(reported.shown);
  const Figure* figure = figure_of(whole, "where-box");
  REQUIRE(figure != nullptr);
  const auto& bars = std::get<chart::Bars>(figure->picture).bars;
  REQUIRE(bars.size() == 10);
  CHECK(bars.back().name == "32 others");
  double drawn_kwh = 0;
  for (const chart::Bar& bar : bars) drawn_kwh += bar.value;
  CHECK(drawn_kwh ==
        doctest::Approx(units::in_kilowatt_hours(reported.reckoned.result.candidates[0].energy)));
  CHECK(figure->numbers.rows.size() == 42);
}

TEST_CASE("report: fifteen candidates with forty workloads stay below a megabyte") {
  std::string text = tests::kYear2027 + tests::kFlatTariff + "[finance]\nyears = 5\n";
  for (int w = 0; w < 40; ++w) {
    text += fmt::format(
        "[[workload]]\nid = \"w{0}\"\nname = \"Task {0} of all that this machine has to do\"\n"
        "[[workload.use]]\nhours = \"{1:02}:00-{2:02}:30\"\nshare = 0.{3}\n",
        w, w % 20, w % 20 + 1, 1 + w % 9);
  }
  for (int c = 0; c < 15; ++c) {
    text += fmt::format(
        "[[candidate]]\nid = \"c{0}\"\nname = \"Set-up {0} of fifteen that were "
        "thought of\"\npurchase = {1}\n[[candidate.device]]\nwatts.idle = [{2}, "
        "{3}]\n",
        c, 60 * c, 60 - 3 * c, 68 - 3 * c);
    for (int w = 0; w < 40; ++w) text += fmt::format("increments.w{} = {}\n", w, 1 + (w + c) % 5);
  }
  Reported reported(text);
  reported.draw();
  const std::string html = report_page(reported.shown);
  CHECK(html.size() > 300'000);
  CHECK(html.size() < 1'000'000);
}

TEST_CASE("report: a study of more than a year names its months with their years") {
  Reported reported("time_zone = \"Etc/UTC\"\nstart = 2027-07-01\nmonths = 30\n" +
                    tests::kFlatTariff + kFilms + box("old", "100", "0"));
  const Page whole = page(reported.shown);
  const Figure* figure = figure_of(whole, "months-old");
  REQUIRE(figure != nullptr);
  const auto& months = std::get<chart::StackedMonths>(figure->picture).months;
  REQUIRE(months.size() == 30);
  CHECK(months.front() == "2027-07");
  CHECK(months.back() == "2029-12");
  // 915 days of 2.42 kWh at 0.30 EUR.
  CHECK(whole.answer.front() == "old adds 664 EUR in 30 months to the electricity bill.");
}

TEST_CASE("report: what draws the same all week has a sentence and no picture") {
  Reported reported(tests::kYear2027 + tests::kFlatTariff +
                    "[[workload]]\nid = \"films\"\n[[workload.use]]\n" + box("old", "100", "0"));
  const std::string html = report_page(reported.shown);
  CHECK(holds(html, "<li>old draws 110.0 W all week.</li>"));
  CHECK_FALSE(holds(html, "id=\"week-old\""));
}

TEST_CASE("report: the bill is that of the month asked for, the best one's first") {
  Reported reported(two_boxes());
  reported.shown.month = 1;
  const std::string html = report_page(reported.shown);
  CHECK(holds(html, "<h2>What does the bill of February 2027 say?</h2>"));
  const std::size_t folded = html.find("<summary>The same for the others</summary>");
  CHECK(html.find("<table id=\"bill-new\">") < folded);
  CHECK(html.find("<table id=\"bill-old\">") > folded);
}

TEST_CASE("report: every note stands in it") {
  Reported reported(tests::kYear2027 + tests::kFlatTariff + kFilms +
                    "[[workload]]\nid = \"music\"\n[[workload.use]]\n" +
                    "[[candidate]]\nid = \"box\"\nskips = [\"music\"]\n[[candidate.device]]\n"
                    "watts.idle = 10\nwatts.busy = 20\nincrements.films = 1\n");
  const std::string html = report_page(reported.shown);
  REQUIRE(reported.reckoned.result.notes.size() == 2);
  for (const decide::Note& note : reported.reckoned.result.notes) {
    CHECK(holds(html, "(" + note.code + ").</li>"));
  }
}

TEST_CASE("report: without notes there is no section of notes") {
  Reported reported(two_boxes());
  REQUIRE(reported.reckoned.result.notes.empty());
  CHECK_FALSE(holds(report_page(reported.shown), "id=\"notes\""));
}

TEST_CASE("report: a profile's first comment says where its watts come from") {
  Reported reported(two_boxes());
  model::Profile profile = *reported.reckoned.study.candidates[0].devices[0].profile;
  profile.name = "old box";
  profile.place.file = std::make_shared<const std::string>("old-box.toml");
  reported.reckoned.study.candidates[0].devices[0].profile =
      std::make_shared<const model::Profile>(profile);
  reported.shown.inputs.push_back(
      {"old-box.toml",
       "#:schema x.json\n\n# Read off a wall meter,\r\n# one evening.\n\n# Not "
       "this.\n[watts]\nidle = 100\n"});
  const std::string html = report_page(reported.shown);
  CHECK(holds(html, "<li>old box: Read off a wall meter, one evening.</li>"));
  CHECK(holds(html, "its file says nothing of a source.</li>"));
}

TEST_CASE("report: where nothing is ranked it says how sure the figures are") {
  Reported reported(tests::kYear2027 + tests::kFlatTariff + kFilms +
                    box("old", "[100, 120]", "50"));
  reported.draw();
  const std::string html = report_page(reported.shown);
  CHECK(holds(html, "<section id=\"change\">\n<h2>How sure is it?</h2>\n"));
  CHECK(
      holds(html,
            "<p>Best to be settled first: the idle watts of device 1 of old. It holds 100 % of the "
            "doubt about the cost.</p>"));
}

TEST_CASE("report: money stands before watts") {
  const Page whole = page(Reported(two_boxes()).shown);
  for (const PageBlock& block : whole.sections.front().blocks) {
    const auto* table = std::get_if<NamedTable>(&block);
    if (table == nullptr) continue;
    std::vector<std::string> headers;
    for (const Column& column : table->table.columns) headers.push_back(column.header);
    CHECK(headers == std::vector<std::string>{"", "EUR a year", "purchase EUR",
                                              "EUR over 5 years, at present value", "kWh a year",
                                              "W on average"});
  }
}

TEST_CASE("report: the files are in it, and the version of the program that read them") {
  const std::string html = report_page(Reported(two_boxes()).shown);
  CHECK(holds(html, "<p>These are the files that wattweek 1.2.3 read, in full."));
  CHECK(holds(html, "<summary>study.toml ("));
  CHECK(holds(html, "purchase = 300\n"));
}

TEST_CASE("report: where the author keeps the files is nobody's business") {
  Reported reported(tests::kYear2027 + tests::kFlatTariff + kFilms +
                    "[[candidate]]\nid = \"box\"\n[[candidate.device]]\nwatts.idle = 10\n"
                    "watts.busy = 20\nincrements.films = 1\n");
  decide::Assessment& all = reported.reckoned.result;
  REQUIRE(all.notes.size() == 1);
  std::get<diag::Place>(all.notes[0].where).file =
      std::make_shared<const std::string>("/home/jane/hall/box.toml");
  reported.shown.inputs = {{"/home/jane/hall/study.toml", "a = 1\n"},
                           {"/home/jane/hall/parts/box.toml", "b = 1\n"},
                           {"/srv/tariff.toml", "c = 1\n"},
                           {"../disk.toml", "d = 1\n"}};
  const std::string html = report_page(reported.shown);
  CHECK_FALSE(holds(html, "/home"));
  CHECK_FALSE(holds(html, "/srv"));
  for (const char* name : {"study.toml", "parts/box.toml", "tariff.toml", "../disk.toml"}) {
    CHECK(holds(html, std::string("<summary>") + name + " (1 line)</summary>"));
  }
  CHECK(holds(html, "<li>box.toml:"));
}

TEST_CASE("report: one candidate alone is compared with nothing") {
  Reported reported(tests::kYear2027 + tests::kFlatTariff + "[finance]\nyears = 5\n" + kFilms +
                    box("old", "100", "50"));
  const std::string html = report_page(reported.shown);
  CHECK_FALSE(holds(html, "id=\"change\""));
  CHECK_FALSE(holds(html, " against "));
}

}  // namespace
}  // namespace wattweek::report
