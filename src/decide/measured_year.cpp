#include "wattweek/decide/measured_year.hpp"

#include "wattweek/decide/assessment.hpp"

namespace wattweek::decide {
namespace {

model::Candidate candidate_of(const model::WeekOfWatts& watts, double factor, std::string id) {
  auto profile = std::make_shared<model::Profile>();
  profile->name = id;
  profile->week.emplace();
  for (std::size_t hour = 0; hour < watts.size(); ++hour) {
    (*profile->week)[hour] = factor * watts[hour];
  }
  model::Device device;
  device.name = id;
  device.profile = std::move(profile);
  model::Candidate candidate;
  candidate.id = candidate.name = std::move(id);
  candidate.devices.push_back(std::move(device));
  return candidate;
}

model::Study study_of(const MeasuredWeek& week, const model::Tariff& tariff,
                      const std::string& time_zone, std::chrono::year year) {
  model::Study study;
  study.title = tariff.name;
  study.time_zone = time_zone;
  study.start = year / std::chrono::January;
  study.tariff = tariff;
  study.candidates.push_back(candidate_of(week.watts, 1, "measured"));
  if (week.factors) {
    study.candidates.push_back(candidate_of(week.watts, week.factors->low, "low"));
    study.candidates.push_back(candidate_of(week.watts, week.factors->high, "high"));
  }
  return study;
}

double cost_of(const CandidateResult& result) { return units::in_currency(result.cost.cost); }

}  // namespace

std::variant<MeasuredYear, std::vector<diag::Diagnostic>> measured_year(
    const MeasuredWeek& week, const model::Tariff& tariff, const std::string& time_zone,
    const calendar::ZoneRules& zone, std::chrono::year year) {
  auto assessed = assess(study_of(week, tariff, time_zone, year), zone);
  if (auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) return *problems;
  const auto& all = std::get<Assessment>(assessed).candidates;
  MeasuredYear result;
  result.year = year;
  result.energy_kwh = units::in_kilowatt_hours(all[0].energy);
  result.cost = cost_of(all[0]);
  if (week.factors) result.costs = units::Range<double>{cost_of(all[1]), cost_of(all[2])};
  for (const Note& note : std::get<Assessment>(assessed).notes) {
    // What is said of the candidates is about no files of the user's.
    if (std::holds_alternative<diag::Place>(note.where)) result.notes.push_back(note);
  }
  return result;
}

}  // namespace wattweek::decide
