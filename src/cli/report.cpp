#include <future>

#include "cli/console.hpp"
#include "cli/draws.hpp"
#include "cli/report_files.hpp"
#include "cli/run.hpp"
#include "cli/study_file.hpp"
#include "cli/study_options.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/version.hpp"

namespace wattweek::cli {
namespace {

// As many as show where the band lies, in a time that is not felt.
constexpr std::size_t kSweepDraws = 256;

using Problems = std::vector<diag::Diagnostic>;
using Draws = std::optional<decide::DrawOptions>;

/// What is to be reckoned.
struct Job {
  read::StudyInput input;
  std::size_t month = 0;
  Draws draws;
  unsigned threads = 1;
};

/// As many draws as are asked for, or as are not felt. What else is reckoned has threads too, so
/// that `--threads` needs no `--draws`.
std::variant<Draws, Misuse> draws_for(const read::StudyInput& input, const Arguments& arguments,
                                      unsigned threads) {
  if (arguments.has("draws") || arguments.has("seed")) return draws_of(input.study, arguments);
  return unasked_draws(input, threads);
}

std::variant<Job, Outcome> job_of(const Arguments& arguments, Sources& sources) {
  auto loaded = studies_of(arguments, &sources);
  if (auto* outcome = std::get_if<Outcome>(&loaded)) return std::move(*outcome);
  Job job{std::move(std::get<std::vector<read::StudyInput>>(loaded).front()), 0, std::nullopt, 1};
  const auto month = month_of(job.input.study, arguments);
  if (const auto* misuse = std::get_if<Misuse>(&month)) return refused(misuse->message);
  job.month = std::get<std::optional<std::size_t>>(month).value_or(0);
  const auto threads = threads_of(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&threads)) return refused(misuse->message);
  job.threads = std::get<unsigned>(threads);
  const auto draws = draws_for(job.input, arguments, job.threads);
  if (const auto* misuse = std::get_if<Misuse>(&draws)) return refused(misuse->message);
  job.draws = std::get<Draws>(draws);
  return job;
}

using Drawn = std::variant<decide::Uncertainty, Problems>;

/// The draws, while this thread reckons something else, unless only one thread is wanted.
std::future<Drawn> begin_draws(const Job& job, const decide::Progress& progress) {
  const auto how = job.threads > 1 ? std::launch::async : std::launch::deferred;
  return std::async(how, [&job, progress] {
    return decide::draw(job.input.study, job.input.zone, *job.draws, progress);
  });
}

/// What would change the answer, where there is one.
Problems add_changes(const Job& job, const decide::Progress& progress, report::ReportShown& shown) {
  const auto& [study, zone] = job.input;
  if (decide::criterion_of(study) == decide::Criterion::none) return {};
  decide::PriceSweepOptions options;
  if (job.draws) {
    options.draws = kSweepDraws;
    options.seed = job.draws->seed;
  }
  options.threads = job.threads;
  auto prices = decide::price_sweep(study, zone, options, progress);
  if (auto* problems = std::get_if<Problems>(&prices)) return std::move(*problems);
  shown.prices = std::get<decide::PriceSweep>(std::move(prices));
  auto turns = decide::turns(study, zone, job.threads, progress);
  if (auto* problems = std::get_if<Problems>(&turns)) return std::move(*problems);
  shown.turns = std::get<decide::AllTurns>(std::move(turns));
  return {};
}

/// Fills in all but the input files.
Problems reckon(const Job& job, decide::Assessment& assessment, report::ReportShown& shown) {
  ProgressLine line;
  const decide::Progress progress = shown_on(line);
  std::future<Drawn> draws;
  if (job.draws) draws = begin_draws(job, progress);
  shown.weeks = decide::weeks(job.input.study, job.input.zone, progress);
  shown.loads = decide::load_durations(job.input.study, job.input.zone, progress);
  Problems problems = add_changes(job, progress, shown);
  if (!job.draws) return problems;
  Drawn drawn = draws.get();
  if (auto* of_draws = std::get_if<Problems>(&drawn)) return std::move(*of_draws);
  assessment.uncertainty = std::get<decide::Uncertainty>(std::move(drawn));
  return problems;
}

Outcome reported(const Job& job, const ReportFiles& files) {
  auto found = assess(job.input);
  if (auto* problems = std::get_if<Problems>(&found)) return refused(std::move(*problems));
  auto& assessment = std::get<decide::Assessment>(found);
  report::ReportShown shown{job.input.study,       assessment, {}, {}, {}, {}, job.month,
                            std::string(kVersion), {}};
  if (Problems problems = reckon(job, assessment, shown); !problems.empty()) {
    return refused(std::move(problems));
  }
  for (const read::SourceText& input : files.inputs) {
    shown.inputs.push_back({input.name, input.text});
  }
  std::vector<report::PictureFile> pictures;
  if (files.pictures) pictures = report::report_pictures(shown);
  return write_report(files,
                      files.is_markdown ? report::report_markdown(shown, link_to_pictures(files))
                                        : report::report_page(shown),
                      pictures);
}

}  // namespace

Outcome run_report(const Arguments& arguments) {
  const auto format = format_of(*command_named("report"), arguments);
  if (const auto* misuse = std::get_if<Misuse>(&format)) return refused(misuse->message);
  Sources sources;
  const auto job = job_of(arguments, sources);
  if (const auto* outcome = std::get_if<Outcome>(&job)) return *outcome;
  const ReportFiles files =
      report_files_of(arguments, std::get<std::string>(format), std::move(sources));
  if (const auto why = why_no_report(files)) return *why;
  return reported(std::get<Job>(job), files);
}

}  // namespace wattweek::cli
