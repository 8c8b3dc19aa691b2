#pragma once
// A study on the command line: read, and reckoned.

#include <string>
#include <variant>
#include <vector>

#include "cli/outcome.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/week.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::cli {

/// The file's text, or the refusal to read it.
std::variant<read::SourceText, Outcome> text_of(const std::string& path);

/// The study in the file and all that it names, or the mistakes in them.
std::variant<read::StudyInput, Outcome> read_study(const std::string& path);

/// The reckoned study, or what only reckoning shows to be wrong. Progress goes to standard error.
std::variant<decide::Assessment, std::vector<diag::Diagnostic>> assess(
    const read::StudyInput& input);

/// The week of each candidate, for a study that has been reckoned. Progress goes to standard error.
std::vector<decide::Week> weeks(const read::StudyInput& input);

/// `a study`, `a profile`, `a tariff`.
std::string_view with_article(read::FileKind kind);

}  // namespace wattweek::cli
