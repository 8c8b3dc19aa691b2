#include "workloads.hpp"

#include <cmath>
#include <utility>

#include "numbers.hpp"
#include "windows.hpp"

namespace wattweek::read {

namespace {

constexpr NumberRule kUnits{Bounds::not_negative, Unit::none};
constexpr NumberRule kShare{Bounds::fraction, Unit::fraction};
constexpr NumberRule kMinutes{Bounds::positive, Unit::minutes};
constexpr NumberRule kCompute{Bounds::not_negative, Unit::none};

// Each number of independent units is an outcome of its own.
constexpr double kMostIndependentUnits = 1e6;

// Minutes in use on each day of a window with one span: their fraction of the span.
units::Range<double> read_minutes(const Value& value, const model::Window& window) {
  const auto minutes = read_range(value, kMinutes);
  if (!minutes) return {};
  if (window.hours.size() > 1) {
    value.complain("minutes need hours with a single span; expected one span or share");
    return {};
  }
  const int length = window.hours.front().length_min();
  if (minutes->high > length) {
    value.complain("more than the " + std::to_string(length) +
                   " minutes of its hours; expected at most " + std::to_string(length));
    return {};
  }
  return {minutes->low / length, minutes->high / length};
}

units::Range<double> read_share(const Table& table, const model::Window& window) {
  const auto share = table.find("share");
  const auto minutes = table.find("minutes");
  if (share && minutes) {
    table.file().report(table.key_place("minutes"),
                        minutes->name() + ": there is a share as well; expected one of the two");
  }
  if (minutes) return read_minutes(*minutes, window);
  if (share) return read_range(*share, kShare).value_or(units::Range<double>());
  return units::Range<double>(1.0);
}

void check_independent(const Table& table, const model::Use& use) {
  if (use.pattern != model::Pattern::independent) return;
  if (use.units == std::floor(use.units) && use.units <= kMostIndependentUnits) return;
  table.find("units")->refuse("a whole number up to 1000000 where the pattern is \"independent\"");
}

model::Use read_use(const Table& table) {
  model::Use use;
  use.window = read_window(table);
  if (const auto units = table.find("units")) {
    use.units = read_number(*units, kUnits).value_or(use.units);
  }
  use.share = read_share(table, use.window);
  use.is_in_minutes = table.has("minutes");
  if (const auto pattern = table.find("pattern")) {
    const auto word = read_word(*pattern, {"together", "independent"});
    if (word == std::size_t{1}) use.pattern = model::Pattern::independent;
  }
  check_independent(table, use);
  return use;
}

model::Workload read_workload(const Table& table, Ids& ids) {
  model::Workload workload;
  workload.place = table.place();
  workload.id = ids.add(table);
  workload.name = workload.id;
  if (const auto name = table.find("name")) {
    workload.name = read_text(*name, "the workload's name in quotes").value_or("");
  }
  if (const auto unit = table.find("unit")) {
    workload.unit = read_text(*unit, "what is counted, in quotes, such as \"stream\"").value_or("");
  }
  if (const auto compute = table.find("compute")) {
    workload.compute = read_range(*compute, kCompute);
  }
  for (const Table& use : table.at_least_one("use")) workload.uses.push_back(read_use(use));
  return workload;
}

std::vector<std::size_t> all_of(const WorkloadList& list) {
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < list.workloads.size(); ++i) all.push_back(i);
  return all;
}

std::optional<model::Away> read_one_away(const Table& table, const WorkloadList& list) {
  model::Away away;
  away.place = table.place();
  const auto dates = table.require("dates", kDatesAccepted);
  const auto span = dates ? read_date_span(*dates) : std::nullopt;
  if (span) away.dates = *span;
  const ReferenceList named = read_references(table, "workloads", list.ids);
  if (named.is_given && named.is_sound && named.references.empty()) {
    table.find("workloads")->refuse("at least one id; without the key all workloads are meant");
  }
  for (const Reference& reference : named.references) away.workloads.push_back(reference.index);
  if (!named.is_given) away.workloads = all_of(list);
  return span ? std::optional(std::move(away)) : std::nullopt;
}

}  // namespace

WorkloadList read_workloads(const Table& study) {
  WorkloadList list;
  for (const Table& table : study.repeated("workload")) {
    const std::size_t problems_before = study.file().problem_count();
    list.workloads.push_back(read_workload(table, list.ids));
    list.is_sound.push_back(study.file().problem_count() == problems_before);
  }
  return list;
}

std::vector<model::Away> read_away(const Table& study, const WorkloadList& list) {
  std::vector<model::Away> aways;
  for (const Table& table : study.repeated("away")) {
    if (auto away = read_one_away(table, list)) aways.push_back(std::move(*away));
  }
  return aways;
}

}  // namespace wattweek::read
