#pragma once
// A study on the command line: read, and reckoned.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "cli/arguments.hpp"
#include "cli/console.hpp"
#include "cli/files.hpp"
#include "cli/outcome.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/week.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::cli {

/// The file's text, or the refusal to read it.
std::variant<read::SourceText, Outcome> text_of(const std::string& path);

/// The study in the file and all that it names, or the mistakes in them. `sources`, where given,
/// gets what was read for it, the study first.
std::variant<read::StudyInput, Outcome> read_study(const std::string& path,
                                                   Sources* sources = nullptr);

/// The study in the file under each of these tariffs in place of its own, or the mistakes in all of
/// them. Paths are seen from the working directory, `shipped:NAME` is a tariff that ships.
std::variant<std::vector<read::StudyInput>, Outcome> read_study_under(
    const std::string& path, const std::vector<std::string>& tariffs, Sources* sources = nullptr);

/// The tariff in a file, or one that ships, or the mistakes in it.
std::variant<model::Tariff, Outcome> read_tariff(const std::string& path);

/// Progress that is shown on a line of standard error.
decide::Progress shown_on(ProgressLine& line);

/// The reckoned study, or what only reckoning shows to be wrong. Progress goes to standard error.
std::variant<decide::Assessment, std::vector<diag::Diagnostic>> assess(
    const read::StudyInput& input);

/// The week of each candidate, for a study that has been reckoned. Progress goes to standard error.
std::vector<decide::Week> weeks(const read::StudyInput& input);

/// The draws of a study that has been reckoned, or what only a draw shows to be too much.
std::variant<decide::Uncertainty, std::vector<diag::Diagnostic>> draw(
    const read::StudyInput& input, const decide::DrawOptions& options);

/// `a study`, `a profile`, `a tariff`.
std::string_view with_article(read::FileKind kind);

}  // namespace wattweek::cli
