#include "wattweek/report/fit.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/console.hpp"
#include "cli/fit_options.hpp"
#include "cli/fit_profile.hpp"
#include "cli/log_file.hpp"
#include "cli/run.hpp"
#include "cli/study_file.hpp"
#include "wattweek/diag/printable.hpp"
#include "wattweek/logs/activity_rows.hpp"
#include "wattweek/metering/measuring.hpp"

namespace wattweek::cli {
namespace {

using Problems = std::vector<diag::Diagnostic>;

/// All that was read and measured.
struct Measured {
  logs::LogReport log;
  metering::Measurement measurement;
  std::vector<std::string> workloads;
};

std::variant<metering::Activity, Outcome> activity_of(const FitRequest& request) {
  if (!request.activity) return metering::Activity{};
  const auto file = log_file(*request.activity);
  if (const auto* why = std::get_if<read::Unreadable>(&file)) {
    return refused("--activity: " + why->reason);
  }
  const auto rows = logs::read_activity(std::get<logs::LogFile>(file),
                                        {request.options.zone, request.options.date_order});
  if (const auto* problems = std::get_if<Problems>(&rows)) return refused(*problems);
  return metering::activity_of(std::get<std::vector<logs::ActivityRow>>(rows));
}

std::variant<Measured, Outcome> measure(const FitRequest& request) {
  const auto file = log_file(request.log);
  if (const auto* why = std::get_if<read::Unreadable>(&file)) return refused(why->reason);
  auto activity = activity_of(request);
  if (auto* outcome = std::get_if<Outcome>(&activity)) return std::move(*outcome);
  auto& uses = std::get<metering::Activity>(activity);
  const auto& log = std::get<logs::LogFile>(file);
  std::vector<std::string> workloads = uses.workloads;
  metering::Measuring measuring({request.zone, request.gap_s, std::move(uses)});
  ProgressLine line;
  auto report = logs::read_log(log, request.options, measuring, [&](std::uint64_t bytes) {
    const double all = static_cast<double>(std::max<std::uint64_t>(log.bytes, 1));
    line.show("the log", std::min(1.0, static_cast<double>(bytes) / all));
  });
  if (auto* problems = std::get_if<Problems>(&report)) return refused(std::move(*problems));
  return Measured{std::get<logs::LogReport>(std::move(report)), measuring.finish(),
                  std::move(workloads)};
}

/// What was inferred, and what the user may not expect.
std::string notes_on(const FitRequest& request, const Measured& all) {
  std::string notes;
  const auto note = [&](const std::string& text) {
    notes += diag::printable(fmt::format("wattweek: {}: {}", request.log, text)) + '\n';
  };
  for (const std::string& line : all.log.inferred) note(line);
  if (all.log.stamps_name_zone && !request.is_zone_given()) {
    note("warning: the week is in UTC; say where the machine stands by --zone");
  }
  if (all.log.sorted_whole) {
    note("rows stand far out of order: all are held in memory and sorted");
  }
  return notes;
}

/// The calendar year of the log's end; where it has 366 days, the next, since a forecast has 365.
std::chrono::year year_of(const FitRequest& request, const metering::Coverage& coverage) {
  const calendar::Instant last{std::chrono::seconds(coverage.last_us / 1'000'000)};
  const auto day = std::chrono::floor<std::chrono::days>(calendar::local_time(request.zone, last));
  const std::chrono::year year = std::chrono::year_month_day(day).year();
  return year.is_leap() ? year + std::chrono::years(1) : year;
}

decide::MeasuredWeek week_of(const metering::Fit& fit) {
  decide::MeasuredWeek week;
  for (std::size_t hour = 0; hour < fit.week.size(); ++hour) {
    week.watts[hour] = units::watts(*fit.week[hour]);
  }
  const metering::YearForecast& year = fit.year;
  if (year.low && year.high && *year.energy_kwh > 0) {
    week.factors = {*year.low / *year.energy_kwh, *year.high / *year.energy_kwh};
  }
  return week;
}

/// The contract that was asked for, if any.
std::variant<std::optional<model::Tariff>, Outcome> tariff_of(const FitRequest& request) {
  if (!request.tariff) return std::nullopt;
  auto read = read_tariff(*request.tariff);
  if (auto* outcome = std::get_if<Outcome>(&read)) return std::move(*outcome);
  return std::optional(std::get<model::Tariff>(std::move(read)));
}

std::variant<report::FitShown::UnderContract, Outcome> under_contract(
    const FitRequest& request, const model::Tariff& tariff, const metering::Fit& fit,
    const metering::Coverage& coverage) {
  if (!fit.year.energy_kwh) {
    return refused(
        "--tariff: some hour of the week is not in the log, so that no year can be reckoned; "
        "expected a log of all hours of the week");
  }
  auto year = decide::measured_year(week_of(fit), tariff, request.zone_name, request.zone,
                                    year_of(request, coverage));
  if (auto* problems = std::get_if<Problems>(&year)) return refused(std::move(*problems));
  return report::FitShown::UnderContract{tariff.name, tariff.currency,
                                         std::get<decide::MeasuredYear>(std::move(year))};
}

std::string note_lines(const std::vector<decide::Note>& notes) {
  std::string lines;
  for (const decide::Note& note : notes) {
    lines += diag::printable(
                 fmt::format("{}: note: {} [{}]", decide::where_text(note), note.text, note.code)) +
             '\n';
  }
  return lines;
}

}  // namespace

Outcome run_fit(const Arguments& arguments, const report::Style& style) {
  const auto asked = fit_request(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&asked)) return refused(misuse->message);
  const auto& request = std::get<FitRequest>(asked);
  if (auto why = why_no_profile(request)) return *std::move(why);
  const auto tariff = tariff_of(request);
  if (const auto* outcome = std::get_if<Outcome>(&tariff)) return *outcome;
  auto measured = measure(request);
  if (auto* outcome = std::get_if<Outcome>(&measured)) return std::move(*outcome);
  const auto& all = std::get<Measured>(measured);
  const metering::Fit fit = metering::fit(all.measurement.measured, all.workloads,
                                          request.meter.value_or(metering::MeterError{}));
  report::FitShown shown{request.log, request.zone_name, request.zone, all.log, all.measurement,
                         fit,         request.meter};
  Outcome outcome;
  outcome.err = notes_on(request, all);
  if (const auto& contract_file = std::get<std::optional<model::Tariff>>(tariff)) {
    auto contract = under_contract(request, *contract_file, fit, all.measurement.coverage);
    if (auto* why = std::get_if<Outcome>(&contract)) return std::move(*why);
    shown.contract = std::get<report::FitShown::UnderContract>(std::move(contract));
    outcome.err += note_lines(shown.contract->year.notes);
  }
  if (request.profile) {
    auto said = write_profile(request, shown);
    if (auto* why = std::get_if<Outcome>(&said)) return std::move(*why);
    outcome.err += std::get<std::string>(said);
  }
  outcome.out = request.format == "json" ? report::fit_json(shown) : report::fit_text(shown, style);
  return outcome;
}

}  // namespace wattweek::cli
