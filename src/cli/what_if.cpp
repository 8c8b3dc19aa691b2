#include "wattweek/report/what_if.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "cli/console.hpp"
#include "cli/draws.hpp"
#include "cli/run.hpp"
#include "cli/shift_and_rest.hpp"
#include "cli/study_file.hpp"
#include "cli/study_options.hpp"
#include "cli/sweeps.hpp"
#include "wattweek/decide/ranking.hpp"

namespace wattweek::cli {
namespace {

// Rows that are reckoned, and written, at a time.
constexpr std::size_t kBatch = 65'536;

// Lines of a map of two factors.
constexpr std::size_t kMapLines = 16;

using Problems = std::vector<diag::Diagnostic>;

/// All that one call needs, kept until its last row is written.
struct Job {
  read::StudyInput input;
  decide::Assessment assessment;
  std::vector<decide::Sweep> sweeps;
  unsigned threads = 1;
  std::unique_ptr<decide::WhatIf> grid;
  std::vector<decide::Crossing> crossings;  ///< Of a single sweep.

  report::WhatIfShown shown() const { return {input.study, assessment, sweeps}; }
};

/// Which one is best must be defined for every row.
std::optional<Misuse> criterion_problem(const model::Study& study,
                                        const std::vector<decide::Sweep>& sweeps) {
  if (auto misuse = without_criterion("whatif", study)) return misuse;
  if (decide::criterion_of(study) == decide::Criterion::present_cost) return std::nullopt;
  for (const decide::Sweep& sweep : sweeps) {
    if (sweep.factor.kind != decide::Factor::Kind::purchase_of) continue;
    return Misuse{fmt::format(
        "whatif: with {} the purchases differ, so which candidate is best depends on how long it "
        "is kept; expected years under [finance] in {}, or --years N",
        decide::name_of(study, sweep.factor), *study.candidates.front().place.file)};
  }
  return std::nullopt;
}

Problems prepare(Job& job) {
  ProgressLine line;
  job.grid =
      std::make_unique<decide::WhatIf>(job.input.study, job.input.zone, job.sweeps, job.threads);
  Problems problems = job.grid->prepare(shown_on(line));
  if (!problems.empty() || job.sweeps.size() != 1) return problems;
  auto found = job.grid->crossings();
  if (auto* none = std::get_if<Problems>(&found)) return std::move(*none);
  job.crossings = std::get<std::vector<decide::Crossing>>(std::move(found));
  return {};
}

std::string piece(const Job& job, const std::string& format, const decide::Rows& rows) {
  return format == "csv" ? report::what_if_csv(job.shown(), rows)
                         : report::what_if_json(job.shown(), rows);
}

/// The rows after the first batch, and the end.
std::string write_rest(Job& job, const std::string& format, const Write& write) {
  ProgressLine line;
  decide::Rows rows;
  for (std::size_t first = kBatch; first < job.grid->rows(); first += kBatch) {
    line.show("rows", static_cast<double>(first) / static_cast<double>(job.grid->rows()));
    const std::size_t count = std::min(kBatch, job.grid->rows() - first);
    const Problems problems = job.grid->reckon(first, count, rows);
    if (!problems.empty()) return to_text(problems.front());
    if (!write(piece(job, format, rows))) return "";
  }
  if (format == "json") write(report::what_if_json_end(job.shown(), job.crossings));
  return "";
}

/// The first rows are reckoned before anything is printed, so that what is wrong with the study is
/// said in its place.
Outcome in_pieces(const std::shared_ptr<Job>& job, const std::string& format) {
  decide::Rows rows;
  const Problems problems = job->grid->reckon(0, std::min(kBatch, job->grid->rows()), rows);
  if (!problems.empty()) return refused(problems);
  Outcome outcome;
  outcome.out = format == "csv" ? report::what_if_csv_header(job->shown())
                                : report::what_if_json_begin(job->shown());
  outcome.out += piece(*job, format, rows);
  outcome.rest = [job, format](const Write& write) { return write_rest(*job, format, write); };
  return outcome;
}

/// All rows of the same sweeps at other points.
std::variant<decide::Rows, Problems> rows_at(const Job& job,
                                             const std::vector<std::size_t>& points) {
  std::vector<decide::Sweep> sweeps = job.sweeps;
  for (std::size_t s = 0; s < sweeps.size(); ++s) sweeps[s].points = points[s];
  decide::WhatIf grid(job.input.study, job.input.zone, sweeps, job.threads);
  Problems problems = grid.prepare();
  decide::Rows rows;
  if (problems.empty()) problems = grid.reckon(0, grid.rows(), rows);
  if (!problems.empty()) return problems;
  return rows;
}

Outcome as_text(Job& job, const report::Style& style) {
  const std::size_t columns = report::what_if_columns(style);
  if (job.sweeps.size() == 2) {
    auto map = rows_at(job, {kMapLines, columns});
    if (const auto* problems = std::get_if<Problems>(&map)) return refused(*problems);
    return {kDone, report::what_if_map(job.shown(), std::get<decide::Rows>(map), kMapLines, style)};
  }
  auto rows = rows_at(job, {job.sweeps.front().points});
  auto line = rows_at(job, {columns});
  for (const auto* each : {&rows, &line}) {
    if (const auto* problems = std::get_if<Problems>(each)) return refused(*problems);
  }
  return {kDone, report::what_if_text(job.shown(), std::get<decide::Rows>(rows),
                                      std::get<decide::Rows>(line), job.crossings, style)};
}

/// What `--vary` and `--turns` need.
std::variant<std::shared_ptr<Job>, Outcome> job_of(const Arguments& arguments) {
  auto job = std::make_shared<Job>();
  const auto threads = threads_of(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&threads)) return refused(misuse->message);
  job->threads = std::get<unsigned>(threads);
  auto loaded = studies_of(arguments);
  if (auto* outcome = std::get_if<Outcome>(&loaded)) return std::move(*outcome);
  job->input = std::move(std::get<std::vector<read::StudyInput>>(loaded).front());
  const model::Study& study = job->input.study;
  auto sweeps = sweeps_of(study, arguments);
  if (const auto* misuse = std::get_if<Misuse>(&sweeps)) return refused(misuse->message);
  job->sweeps = std::get<std::vector<decide::Sweep>>(std::move(sweeps));
  if (const auto misuse = criterion_problem(study, job->sweeps)) return refused(misuse->message);
  auto assessed = assess(job->input);
  if (const auto* problems = std::get_if<Problems>(&assessed)) return refused(*problems);
  job->assessment = std::get<decide::Assessment>(std::move(assessed));
  return job;
}

Outcome run_vary(const Arguments& arguments, const std::string& format,
                 const report::Style& style) {
  const bool is_text = format == "text";
  if (is_text && arguments.list("vary").size() > 2) {
    return refused("--vary: text shows one or two factors; for more take --format csv or json");
  }
  auto loaded = job_of(arguments);
  if (auto* outcome = std::get_if<Outcome>(&loaded)) return std::move(*outcome);
  auto job = std::get<std::shared_ptr<Job>>(std::move(loaded));
  if (is_text && job->sweeps.size() == 2) return as_text(*job, style);
  const Problems problems = prepare(*job);
  if (!problems.empty()) return refused(problems);
  return is_text ? as_text(*job, style) : in_pieces(job, format);
}

Outcome run_turns(const Arguments& arguments, const std::string& format,
                  const report::Style& style) {
  if (format == "csv") return refused("--turns: found --format csv, accepted is text or json");
  auto loaded = job_of(arguments);
  if (auto* outcome = std::get_if<Outcome>(&loaded)) return std::move(*outcome);
  const Job& job = *std::get<std::shared_ptr<Job>>(loaded);
  ProgressLine line;
  const auto found = decide::turns(job.input.study, job.input.zone, job.threads, shown_on(line));
  if (const auto* problems = std::get_if<Problems>(&found)) return refused(*problems);
  const auto& turns = std::get<decide::AllTurns>(found);
  return {kDone, format == "json" ? report::turns_json(job.shown(), turns)
                                  : report::turns_text(job.shown(), turns, style)};
}

/// Exactly one question at a time.
std::variant<std::string_view, Misuse> question_of(const Arguments& arguments) {
  constexpr std::string_view kExpected =
      "expected one of --vary FACTOR=LOW..HIGH, --turns, --shift WORKLOAD and --rest "
      "DEVICE=HH:MM-HH:MM";
  std::string_view question;
  for (const std::string_view option : {"vary", "turns", "shift", "rest"}) {
    if (!arguments.has(option)) continue;
    if (!question.empty()) {
      return Misuse{
          fmt::format("whatif: --{} and --{} are two questions; {}", question, option, kExpected)};
    }
    question = option;
  }
  if (question.empty()) return Misuse{fmt::format("whatif: no question is asked; {}", kExpected)};
  return question;
}

}  // namespace

Outcome run_what_if(const Arguments& arguments, const report::Style& style) {
  const auto format = format_of(*command_named("whatif"), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return refused(misuse->message);
  const auto question = question_of(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&question)) return refused(misuse->message);
  const auto& answer = std::get<std::string>(format);
  if (std::get<std::string_view>(question) == "shift") return run_shift(arguments, answer, style);
  if (std::get<std::string_view>(question) == "rest") return run_rest(arguments, answer, style);
  if (std::get<std::string_view>(question) == "turns") return run_turns(arguments, answer, style);
  return run_vary(arguments, answer, style);
}

}  // namespace wattweek::cli
