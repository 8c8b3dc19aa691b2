#pragma once
// Start here: results as text that people and programs read. No files, no streams, no
// computing: everything shown was reckoned before.

#include <string>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/quick.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::report {

/// Which question the output answers.
enum class Scope {
  estimate,  ///< Each candidate by itself.
  compare,   ///< The same, and each against the baseline.
};

/// JSON of the format `wattweek-estimate-1`: full double precision, keys in a fixed order,
/// the same bytes for the same results. See docs/json.md.
std::string json(const model::Study& study, const decide::Assessment& assessment, Scope scope);

/// A plain text table, where each candidate's energy goes, what is saved, and every note as a
/// sentence. Lines are at most `columns` wide, counted in characters.
std::string text(const model::Study& study, const decide::Assessment& assessment, Scope scope,
                 int columns);

/// Tables in Markdown, to be pasted under an article.
std::string markdown(const model::Study& study, const decide::Assessment& assessment, Scope scope);

/// One row for each candidate, RFC 4180. Text cells that a spreadsheet would take for a formula are
/// neutralised. Notes about the study as a whole stand in every row.
std::string csv(const model::Study& study, const decide::Assessment& assessment, Scope scope);

/// JSON of the format `wattweek-quick-1`. An empty `currency` (none was named) is null.
std::string quick_json(const decide::QuickResult& result, const std::string& currency);

/// The same as two sentences. An empty `currency` leaves the amounts without a code.
std::string quick_text(const decide::QuickInput& input, const decide::QuickResult& result,
                       const std::string& currency);

}  // namespace wattweek::report
