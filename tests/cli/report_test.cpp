// `report`: what is written, and what goes into it.

#include "report_desk.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

const std::string kNoConverter =
    "wattweek: note: no .png was made: rsvg-convert is not installed; on Debian it is in "
    "librsvg2-bin\n";

bool begins(const std::string& text, std::string_view beginning) {
  return text.compare(0, beginning.size(), beginning) == 0;
}

/// So many files and folders, the hidden ones too.
std::ptrdiff_t count_in(const fs::path& folder) {
  return std::distance(fs::directory_iterator(folder), {});
}

TEST_CASE("report: the page is written whole, and said; nothing else is left") {
  const ReportDesk desk;
  const Run run = desk.run("-o report.html");
  CHECK(run.exit_code == 0);
  CHECK(run.out == "Written:\n  report.html\n");
  CHECK(run.err == "");
  CHECK(begins(desk.read("report.html"), report::kPageBegins));
  CHECK(count_in(desk.path()) == 2);
  CHECK(desk.run("--output=-").out == desk.read("report.html"));
  const Run markdown = desk.run("--format markdown -o -");
  CHECK(begins(markdown.out, report::kMarkdownBegins));
  CHECK(markdown.err == "");
}

TEST_CASE("report: Ostrawick's page is under 120 kB") {
  const ReportDesk desk;
  const std::string study = WATTWEEK_SOURCE_DIR "/docs/examples/ostrawick.toml";
  const std::string page = desk.words_run("report " + study + " -o -").out;
  CHECK(begins(page, report::kPageBegins));
  CHECK(page.size() < 120'000);
}

TEST_CASE("report: without the converter pictures are lines alone, and a line says what lacks") {
  const ReportDesk desk;
  const Run run = desk.run("-o report.html --pictures pics");
  CHECK(run.exit_code == 0);
  CHECK(run.err == kNoConverter);
  CHECK(begins(run.out, "Written:\n  report.html\n  pics/"));
  std::size_t pictures = 0;
  for (const auto& entry : fs::directory_iterator(desk.path() / "pics")) {
    CHECK(entry.path().extension() == ".svg");
    CHECK(begins(text_of(entry.path()), report::kPictureBegins));
    ++pictures;
  }
  CHECK(pictures > 0);
}

TEST_CASE("report: with the converter each picture has its dots beside it") {
  ReportDesk desk;
  desk.set_converter(kDots);
  const Run run = desk.run("-o report.html --pictures pics/");
  CHECK(run.exit_code == 0);
  CHECK(run.err == "");
  std::size_t pictures = 0;
  for (const auto& entry : fs::directory_iterator(desk.path() / "pics")) {
    if (entry.path().extension() != ".svg") continue;
    CHECK(text_of(fs::path(entry.path()).replace_extension(".png")) == "dots");
    CHECK(run.out.find("  pics/" + entry.path().stem().string() + ".png\n") != std::string::npos);
    ++pictures;
  }
  CHECK(count_in(desk.path() / "pics") == static_cast<std::ptrdiff_t>(2 * pictures));
}

TEST_CASE("report: where the converter fails it says why, and nothing is left behind") {
  ReportDesk desk;
  desk.set_converter("#!/bin/sh\necho 'Error: no ink' >&2\nexit 3\n");
  const Run run = desk.run("-o report.html --pictures pics");
  CHECK(run.exit_code == 1);
  CHECK(run.out == "");
  CHECK(begins(run.err, "wattweek: error: --pictures: 'pics/"));
  CHECK(run.err.find(".png' cannot be made: rsvg-convert: Error: no ink; nothing was left "
                     "behind\n") != std::string::npos);
  CHECK(count_in(desk.path()) == 2);  // The study, and the converter's folder.
  desk.set_converter("#!/bin/sh\nexit 3\n");
  CHECK(desk.run("-o report.html --pictures pics")
            .err.find(": rsvg-convert ended with exit code "
                      "3;") != std::string::npos);
  desk.set_converter("#!/bin/sh\nkill -9 $$\n");
  CHECK(desk.run("-o - --pictures pics").err.find(": rsvg-convert was ended by signal 9;") !=
        std::string::npos);
  desk.set_converter("#!/bin/sh\n");
  CHECK(desk.run("-o - --pictures pics").err.find(": rsvg-convert wrote no file;") !=
        std::string::npos);
  CHECK(count_in(desk.path()) == 2);
}

TEST_CASE("report: to standard output the page alone, and the pictures only if that was written") {
  ReportDesk desk;
  desk.set_converter(kDots);
  const Run run = desk.run("-o - --pictures pics");
  CHECK(run.exit_code == 0);
  CHECK(begins(run.out, report::kPageBegins));
  CHECK(run.err == "");
  CHECK(count_in(desk.path() / "pics") >= 2);
  fs::remove_all(desk.path() / "pics");
  const Run full = desk.run("-o - --pictures pics >/dev/full");
  CHECK(full.exit_code == 1);
  CHECK(full.err == refusal("standard output cannot be written: No space left on device"));
  CHECK_FALSE(desk.has("pics"));
}

TEST_CASE("report: a page that cannot be placed takes its pictures with it") {
  ReportDesk desk;
  desk.set_converter(kDots);
  // No file can be made there, by whomever.
  const Run run = desk.run("-o /proc/report.html --pictures pics");
  CHECK(run.exit_code == 1);
  CHECK(begins(run.err, "wattweek: error: --output: '/proc/report.html' cannot be written: "));
  CHECK(count_in(desk.path()) == 2);
}

TEST_CASE("report: any study has a report, whatever can be said of it") {
  const ReportDesk desk;
  desk.write("differ.toml", kSmallStudy);  // The purchases differ, and there is no horizon.
  CHECK(desk.words_run("report differ.toml -o -").exit_code == 0);
  CHECK(desk.words_run("report differ.toml -o - --years 5 --baseline new").exit_code == 0);
  desk.write("one.toml", kSmallStudy.substr(0, kSmallStudy.rfind("[[candidate]]")));
  const Run one = desk.words_run("report one.toml -o -");
  CHECK(one.exit_code == 0);
  CHECK(one.err == "");
}

TEST_CASE("report: options are those of compare, threads without draws too") {
  const ReportDesk desk;
  CHECK(desk.run("-o - --threads 1").out == desk.run("-o - --threads 3").out);
  CHECK(desk.run("-o - --month 2027-03").exit_code == 0);
  CHECK(desk.run("-o - --month 2028-03").err ==
        refusal("--month: found '2028-03', accepted is a month of the study, 2027-01 to 2027-12"));
  CHECK(desk.run("-o - --seed 3").err == refusal("--seed: goes with --draws"));
  CHECK(desk.run("-o - --draws 3").err ==
        refusal("--draws: found '3', accepted is a whole number from 100 to 10000000"));
  CHECK(desk.run("-o - --format pdf").err ==
        refusal("--format: unknown format 'pdf'; accepted are html, markdown"));
  CHECK(desk.run("-o - --tariff shipped:flat --tariff shipped:flat").err ==
        refusal("report: --tariff is given twice"));
  CHECK(desk.run("-o - --draws 200 --seed 7 --threads 2 --tariff shipped:flat").exit_code == 0);
}

}  // namespace
}  // namespace wattweek::cli
