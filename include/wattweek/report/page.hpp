#pragma once
// A report on a study to look at, print and publish: one page that explains itself to somebody who
// never heard of the program, the same in Markdown, and its pictures as files. No files are read;
// everything shown was reckoned before.

#include <optional>
#include <string>
#include <vector>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/load_duration.hpp"
#include "wattweek/decide/price_sweep.hpp"
#include "wattweek/decide/turns.hpp"
#include "wattweek/decide/week.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::report {

/// A file that the study was read from, so that anyone can check the report.
struct InputFile {
  std::string name;  ///< As messages name it.
  std::string text;
};

/// What a report shows.
struct ReportShown {
  const model::Study& study;
  const decide::Assessment& assessment;  ///< With its uncertainty, where somebody drew.
  std::vector<decide::Week> weeks;       ///< Of each candidate.
  std::vector<decide::LoadDuration> loads;
  std::optional<decide::PriceSweep> prices;  ///< Nothing where there is no criterion.
  std::optional<decide::AllTurns> turns;     ///< Nothing where there is no criterion.
  std::size_t month = 0;          ///< Whose bill is shown: an index into the assessment's months.
  std::string version;            ///< Of the program.
  std::vector<InputFile> inputs;  ///< The study first, in the order in which they were read.
};

/// How every page begins, and nothing else does: what tells that a file may be replaced by another
/// report.
extern const std::string_view kPageBegins;
/// The same of the report in Markdown, and of a picture.
extern const std::string_view kMarkdownBegins;
extern const std::string_view kPictureBegins;

/// One self-contained page, HTML 5: no script, nothing from the network, for screens light and
/// dark and for paper. Any text in the study is safe.
std::string report_page(const ReportShown& shown);

/// A picture of the report: an SVG that stands alone.
struct PictureFile {
  std::string name;  ///< Without its ending: small letters, digits, `-` and `_`; another for each.
  std::string svg;
};
std::vector<PictureFile> report_pictures(const ReportShown& shown);

/// The report in Markdown. Each picture is named as `FOLDER/NAME.svg`, or left out where no
/// `folder` is given; its numbers stand in a table in either case. Without `folder` nothing is
/// lost but the pictures.
std::string report_markdown(const ReportShown& shown, const std::optional<std::string>& folder);

}  // namespace wattweek::report
