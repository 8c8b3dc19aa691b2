// Hours and energy: what must be so in every study, whatever its figures.

#include <doctest/doctest.h>

#include "differences.hpp"
#include "every_study.hpp"

using namespace wattweek;
using namespace wattweek::oracle;

namespace {

double month_hours(const decide::Assessment& assessment) {
  double sum = 0;
  for (const calendar::Month& month : assessment.months) sum += month.hours();
  return sum;
}

// The first identity of one candidate's figures that fails; empty where all hold.
std::string what_does_not_add_up(const model::Candidate& candidate, double study_hours,
                                 const decide::CandidateResult& result) {
  double device_hours = 0;
  double state_hours = 0;
  double state_kwh = 0;
  double device_kwh = 0;
  for (const model::Device& device : candidate.devices) device_hours += device.count * study_hours;
  for (const energy::StateTotal& state : result.ledger.states) {
    state_hours += state.device_hours;
    state_kwh += state.energy_kwh;
  }
  for (const energy::DeviceTotal& device : result.ledger.devices) device_kwh += device.energy_kwh;

  const double kwh = units::in_kilowatt_hours(result.energy);
  const double cost = units::in_currency(result.cost.cost);
  const double plain = cost - units::in_currency(result.cost.minimum_cost);
  if (!agree(state_hours, device_hours)) return "states' hours";
  if (!agree(state_kwh, kwh)) return "states' energy";
  if (!agree(device_kwh, kwh)) return "devices' energy";
  if (!agree(result.ledger.total_kwh(), kwh)) return "months', bands' and causes' energy";
  if (!agree(units::in_watts(result.mean) * study_hours / 1000, kwh)) return "mean power";
  if (!agree(sum_of(result.cost.by_period), cost)) return "months' cost";
  if (!agree(sum_of(result.cost.by_band) + units::in_currency(result.cost.blocks_cost), plain)) {
    return "bands' and blocks' cost";
  }
  if (!agree(sum_of(result.cost.by_cause), plain)) return "workloads' and base's cost";
  if (units::in_watts(result.mean) > result.ledger.highest_w + 1e-9) return "highest watts";
  return "";
}

std::string what_does_not_add_up(const billing::Bill& bill) {
  double kwh = 0;
  double sum = units::in_currency(bill.standing + bill.blocks + bill.minimum_top_up + bill.tax);
  for (const billing::BandLine& line : bill.bands) {
    kwh += units::in_kilowatt_hours(line.energy);
    sum += units::in_currency(line.amount);
  }
  if (!agree(kwh, units::in_kilowatt_hours(bill.energy))) return "bill's energy";
  if (!agree(sum, units::in_currency(bill.total))) return "bill's lines";
  return "";
}

// Two spans that hold exactly when the one does; before midnight, because the part after
// midnight of a span that crosses it belongs to the evening.
std::vector<model::HourSpan> split(const model::HourSpan& span) {
  const int before_midnight = span.crosses_midnight() ? 1440 : span.end_min;
  const int middle = (span.start_min + before_midnight) / 2;
  if (middle == span.start_min) return {span};
  return {{span.start_min, middle}, {middle, span.end_min}};
}

void split_hours(model::Window& window) {
  std::vector<model::HourSpan> hours;
  for (const model::HourSpan& span : window.hours) {
    for (const model::HourSpan& part : split(span)) hours.push_back(part);
  }
  window.hours = hours;
}

// Every window's spans cut in two, and every rest with several spans made several rests.
model::Study with_split_windows(model::Study study) {
  for (model::Workload& workload : study.workloads) {
    for (model::Use& use : workload.uses) split_hours(use.window);
  }
  for (model::Band& band : study.tariff.bands) {
    for (model::Window& window : band.when) split_hours(window);
  }
  for (model::Candidate& candidate : study.candidates) {
    for (model::Device& device : candidate.devices) {
      std::vector<model::Rest> rests;
      for (const model::Rest& rest : device.rests) {
        for (const model::HourSpan& span : rest.window.hours) {
          for (const model::HourSpan& part : split(span)) {
            rests.push_back(rest);
            rests.back().window.hours = {part};
          }
        }
      }
      device.rests = rests;
    }
  }
  return study;
}

std::string what_differs(const decide::Assessment& a, const decide::Assessment& b) {
  for (std::size_t c = 0; c < a.candidates.size(); ++c) {
    const decide::CandidateResult& left = a.candidates[c];
    const decide::CandidateResult& right = b.candidates[c];
    if (left.ledger.kwh.size() > 0 &&
        (left.ledger.kwh - right.ledger.kwh).cwiseAbs().maxCoeff() > 1e-9) {
      return "energy by month, band and cause";
    }
    for (std::size_t s = 0; s < energy::kStates; ++s) {
      if (!agree(left.ledger.states[s].device_hours, right.ledger.states[s].device_hours)) {
        return "hours of states";
      }
    }
    for (std::size_t w = 0; w < left.ledger.unit_hours.size(); ++w) {
      if (!agree(left.ledger.unit_hours[w].served, right.ledger.unit_hours[w].served) ||
          !agree(left.ledger.unit_hours[w].unserved, right.ledger.unit_hours[w].unserved)) {
        return "unit-hours";
      }
    }
    if (!agree(left.ledger.highest_w, right.ledger.highest_w)) return "highest watts";
    if (!agree(units::in_currency(left.cost.cost), units::in_currency(right.cost.cost))) {
      return "cost";
    }
  }
  return "";
}

double year_hours(const std::string& zone, int year) {
  const auto rules = calendar::zone_rules(zone, std::chrono::year(year) / std::chrono::January, 12);
  const auto months = calendar::calendar_months(std::get<calendar::ZoneRules>(rules),
                                                std::chrono::year(year) / std::chrono::January, 12);
  double hours = 0;
  for (const calendar::Month& month : months) hours += month.hours();
  return hours;
}

}  // namespace

TEST_CASE("hours, energy and money add up, however they are cut") {
  for_random_studies(
      5001, 250, false, [](const read::StudyInput& input, const decide::Assessment& assessment) {
        std::string wrong;
        if (!agree(month_hours(assessment), assessment.hours)) wrong += "months' hours, ";
        if (!agree(sum_of(assessment.band_hours), assessment.hours)) wrong += "bands' hours, ";
        for (const billing::Bill& bill : assessment.without.bills)
          wrong += what_does_not_add_up(bill);
        for (std::size_t c = 0; c < assessment.candidates.size(); ++c) {
          const decide::CandidateResult& result = assessment.candidates[c];
          wrong += what_does_not_add_up(input.study.candidates[c], assessment.hours, result);
          for (const billing::Bill& bill : result.cost.bills) wrong += what_does_not_add_up(bill);
        }
        CHECK(wrong == "");
      });
}

TEST_CASE("a window cut in two holds as before") {
  for_random_studies(
      8001, 250, false, [](const read::StudyInput& input, const decide::Assessment& assessment) {
        CHECK(what_differs(assessment, assess(with_split_windows(input.study), input.zone)) == "");
      });
}

// Counting days and clock changes: a leap year has 366 x 24 h, and where clocks go forth and back
// within the year, no hour is lost.
TEST_CASE("2028 has 8784 hours, and 2027 has 8760") {
  for (const char* zone : {"Etc/UTC", "Europe/Berlin", "Australia/Lord_Howe", "Antarctica/Troll",
                           "America/Santiago", "America/Havana"}) {
    CAPTURE(zone);
    CHECK(year_hours(zone, 2028) == 8784);
    CHECK(year_hours(zone, 2027) == 8760);
  }
}
