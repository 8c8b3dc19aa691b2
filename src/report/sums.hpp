#pragma once
// Sums over the rows and columns of a candidate's ledger, in file and calendar order.

#include <cstddef>

#include "wattweek/decide/assessment.hpp"

namespace wattweek::report {

/// All that a candidate draws in a month, kWh.
inline double month_kwh(const decide::Assessment& all, const decide::CandidateResult& result,
                        std::size_t month) {
  const auto bands = static_cast<Eigen::Index>(all.band_hours.size());
  return result.ledger.kwh.middleRows(static_cast<Eigen::Index>(month) * bands, bands).sum();
}

/// All that a candidate draws in a price band, kWh.
inline double band_kwh(const decide::Assessment& all, const decide::CandidateResult& result,
                       std::size_t band) {
  const auto bands = static_cast<Eigen::Index>(all.band_hours.size());
  double sum = 0;
  for (auto row = static_cast<Eigen::Index>(band); row < result.ledger.kwh.rows(); row += bands) {
    sum += result.ledger.kwh.row(row).sum();
  }
  return sum;
}

/// What a cause draws, kWh: 0 is the base, 1 + w the workload w.
inline double cause_kwh(const decide::CandidateResult& result, std::size_t cause) {
  return result.ledger.kwh.col(static_cast<Eigen::Index>(cause)).sum();
}

/// Mean watts of one device (all its copies) over the study.
inline double device_mean_w(const decide::Assessment& all, const energy::DeviceTotal& device) {
  return units::in_watts(units::kilowatt_hours(device.energy_kwh) / units::hours(all.hours));
}

}  // namespace wattweek::report
