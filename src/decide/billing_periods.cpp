#include "billing_periods.hpp"

#include <cstdint>

namespace wattweek::decide {

std::vector<billing::BillingPeriod> billing_periods(const calendar::Fold& folded) {
  const std::vector<std::int64_t> seconds = calendar::seconds_by_cell(folded);
  std::vector<billing::BillingPeriod> periods;
  for (std::size_t m = 0; m < folded.months.size(); ++m) {
    billing::BillingPeriod& period = periods.emplace_back();
    period.month = static_cast<unsigned>(folded.months[m].month.month()) - 1;
    period.days = folded.months[m].days;
    for (std::size_t b = 0; b < folded.bands; ++b) {
      period.band_hours.push_back(
          units::hours(static_cast<double>(seconds[folded.cell(m, b)]) / 3600.0));
    }
  }
  return periods;
}

}  // namespace wattweek::decide
