#include "dumb_reckoning.hpp"

#include <algorithm>
#include <map>

#include "decision.hpp"
#include "minutes.hpp"
#include "money.hpp"
#include "watts.hpp"

namespace wattweek::oracle {
namespace {

// Everything of a candidate that is energy or time.
struct Energies {
  CandidateReckoned reckoned;
  EnergyTable kwh;
};

void add_expected(Energies& sum, std::size_t m, std::size_t b, const CandidateExpected& expected,
                  double hours) {
  const auto kwh = [hours](double watts) { return watts * hours / 1000; };
  CandidateReckoned& reckoned = sum.reckoned;
  reckoned.energy_kwh += kwh(expected.watts);
  reckoned.highest_w = std::max(reckoned.highest_w, expected.highest_w);
  reckoned.months[m].energy_kwh += kwh(expected.watts);
  reckoned.bands[b].energy_kwh += kwh(expected.watts);
  reckoned.base_kwh += kwh(expected.base_w);
  sum.kwh[m][b][0] += kwh(expected.base_w);
  for (std::size_t w = 0; w < expected.workload_w.size(); ++w) {
    sum.kwh[m][b][1 + w] += kwh(expected.workload_w[w]);
    reckoned.workloads[w].energy_kwh += kwh(expected.workload_w[w]);
    reckoned.workloads[w].unit_hours += hours * expected.served_units[w];
    reckoned.workloads[w].unserved_unit_hours += hours * expected.unserved_units[w];
  }
  for (std::size_t s = 0; s < kStateCount; ++s) {
    reckoned.states[s].hours += hours * expected.state_devices[s];
    reckoned.states[s].energy_kwh += kwh(expected.state_w[s]);
  }
}

void add_devices(CandidateReckoned& reckoned, const model::Candidate& candidate,
                 const CandidateExpected& expected, double hours) {
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    const int count = candidate.devices[d].count;
    DeviceOfCandidate& device = reckoned.devices[d];
    device.energy_kwh += count * expected.devices[d].watts * hours / 1000;
    device.highest_w = std::max(device.highest_w, count * expected.devices[d].highest_w);
    device.overload_hours += hours * expected.devices[d].overload_probability;
  }
}

Energies reckon_energy(const model::Study& study, std::size_t candidate, const Minutes& minutes) {
  const std::size_t months = minutes.months.size();
  const std::size_t bands = study.tariff.bands.size();
  Energies sum;
  sum.reckoned.months.resize(months);
  sum.reckoned.bands.resize(bands);
  sum.reckoned.workloads.resize(study.workloads.size());
  sum.reckoned.devices.resize(study.candidates[candidate].devices.size());
  const std::vector<double> no_cause(1 + study.workloads.size(), 0.0);
  sum.kwh.assign(months, std::vector<std::vector<double>>(bands, no_cause));

  std::map<Situation, CandidateExpected> seen;
  for (std::size_t m = 0; m < months; ++m) {
    for (std::size_t b = 0; b < bands; ++b) {
      for (const auto& [situation, count] : minutes.count[m][b]) {
        if (!seen.contains(situation)) {
          seen[situation] = expected_draw(study, candidate, situation);
        }
        add_expected(sum, m, b, seen[situation], count / 60.0);
        add_devices(sum.reckoned, study.candidates[candidate], seen[situation], count / 60.0);
      }
    }
  }
  return sum;
}

void reckon_hours(const Minutes& minutes, std::size_t bands, Reckoned& reckoned,
                  std::vector<BilledMonth>& billed) {
  reckoned.band_hours.assign(bands, 0.0);
  for (std::size_t m = 0; m < minutes.months.size(); ++m) {
    BilledMonth month;
    month.month = minutes.months[m];
    month.days = minutes.days[m];
    month.band_hours.assign(bands, 0.0);
    for (std::size_t b = 0; b < bands; ++b) {
      for (const auto& [situation, count] : minutes.count[m][b]) {
        month.band_hours[b] += count / 60.0;
      }
      reckoned.band_hours[b] += month.band_hours[b];
    }
    double hours = 0;
    for (const double in_band : month.band_hours) hours += in_band;
    reckoned.month_hours.push_back(hours);
    reckoned.hours += hours;
    reckoned.days += month.days;
    billed.push_back(month);
  }
}

// R8.
void reckon_household(const model::Household& household, const std::vector<Energies>& energies,
                      Reckoned& reckoned, std::vector<BilledMonth>& billed) {
  for (std::size_t m = 0; m < billed.size(); ++m) {
    double kwh = metered_kwh(household, billed[m].month);
    if (household.includes) kwh -= energies[*household.includes].reckoned.months[m].energy_kwh;
    if (kwh < -1e-9) reckoned.household_below_zero = true;
    billed[m].household_kwh = std::max(kwh, 0.0);
  }
}

Contender contender_of(const model::Study& study, std::size_t c, const Energies& energies,
                       const CandidateReckoned& reckoned, const std::vector<BilledMonth>& billed) {
  Contender contender;
  contender.candidate = &study.candidates[c];
  contender.energy_kwh = reckoned.energy_kwh;
  contender.cost = reckoned.cost;
  contender.cost_at = [&study, &energies, &billed](double price_factor) {
    return cost_at(study.tariff, billed, energies.kwh, price_factor);
  };
  contender.kinks = minimum_kinks(study.tariff, billed, energies.kwh);
  return contender;
}

void finish_candidate(const model::Study& study, const model::Candidate& candidate,
                      double study_hours, CandidateReckoned& reckoned) {
  reckoned.mean_w = reckoned.energy_kwh * 1000 / study_hours;
  if (study.carbon_kg_per_kwh) {
    reckoned.co2_kg = reckoned.energy_kwh * study.carbon_kg_per_kwh->central();
  }
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    reckoned.devices[d].mean_w = reckoned.devices[d].energy_kwh * 1000 / study_hours;
    if (reckoned.devices[d].overload_hours > 0) reckoned.lower_bound = true;
  }
}

}  // namespace

Reckoned reckon_dumbly(const model::Study& study) {
  const Minutes minutes = walk_minutes(study);
  Reckoned reckoned;
  reckoned.windows_that_never_hold = minutes.windows_that_never_hold;
  std::vector<BilledMonth> billed;
  reckon_hours(minutes, study.tariff.bands.size(), reckoned, billed);

  std::vector<Energies> energies;
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    energies.push_back(reckon_energy(study, c, minutes));
  }
  reckon_household(study.household, energies, reckoned, billed);
  if (reckoned.household_below_zero) return reckoned;

  const std::vector<double> nothing(study.tariff.bands.size(), 0.0);
  for (const BilledMonth& month : billed) {
    reckoned.without.push_back(bill_of(study.tariff, month, nothing));
  }
  std::vector<Contender> contenders;
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    CandidateReckoned candidate = energies[c].reckoned;
    reckon_cost(study.tariff, billed, energies[c].kwh, candidate);
    finish_candidate(study, study.candidates[c], reckoned.hours, candidate);
    contenders.push_back(contender_of(study, c, energies[c], candidate, billed));
    candidate.lifetime = lifetime_of(study, contenders[c]);
    reckoned.candidates.push_back(candidate);
  }
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    if (c == study.baseline) continue;
    reckoned.rows.push_back(compare(study, contenders[c], contenders[study.baseline]));
    reckoned.rows.back().candidate = c;
  }
  return reckoned;
}

}  // namespace wattweek::oracle
