#pragma once
// Where the files of `report` go, and which of those that are there may be replaced.

#include <optional>
#include <string>
#include <vector>

#include "cli/arguments.hpp"
#include "cli/files.hpp"
#include "cli/outcome.hpp"
#include "wattweek/report/page.hpp"

namespace wattweek::cli {

struct ReportFiles {
  std::string output;                   ///< `-` is standard output.
  std::optional<std::string> pictures;  ///< A folder.
  bool is_markdown = false;
  bool force = false;
  Sources inputs;  ///< Never overwritten.
};

ReportFiles report_files_of(const Arguments& arguments, const std::string& format, Sources inputs);

/// Why they cannot be written, as far as that shows before the names of the pictures are known.
std::optional<Outcome> why_no_report(const ReportFiles& files);

/// The folder of the pictures as a link in the report leads to it.
std::optional<std::string> link_to_pictures(const ReportFiles& files);

/// Writes all of it or nothing, and says so.
Outcome write_report(const ReportFiles& files, const std::string& page,
                     const std::vector<report::PictureFile>& pictures);

}  // namespace wattweek::cli
