#include "wattweek/billing/household.hpp"

#include <algorithm>

namespace wattweek::billing {

using units::Energy;

namespace {

// What is left after taking off an energy that was reckoned differs from nothing by rounding.
constexpr Energy kNothingLeft = units::kilowatt_hours(-1e-9);

double days_of_year(std::chrono::year year) { return year.is_leap() ? 366 : 365; }

}  // namespace

std::vector<Energy> metered_household(const model::Household& household,
                                      const std::vector<calendar::Month>& months) {
  std::vector<Energy> energies;
  for (const calendar::Month& month : months) {
    if (const auto* by_month = std::get_if<std::array<Energy, 12>>(&household.use)) {
      energies.push_back((*by_month)[static_cast<unsigned>(month.month.month()) - 1]);
    } else {
      const Energy of_year = std::get<units::Range<Energy>>(household.use).central();
      energies.push_back(of_year * (month.days / days_of_year(month.month.year())));
    }
  }
  return energies;
}

std::variant<std::vector<Energy>, HouseholdBelowZero> without_candidate(
    std::vector<Energy> metered, const std::vector<Energy>& candidate) {
  for (std::size_t m = 0; m < metered.size(); ++m) {
    const Energy left = metered[m] - candidate[m];
    if (left < kNothingLeft) return HouseholdBelowZero{m, metered[m], candidate[m]};
    metered[m] = std::max(Energy{}, left);
  }
  return metered;
}

std::vector<Energy> without_drawn_candidate(std::vector<Energy> metered,
                                            const Eigen::VectorXd& candidate_kwh) {
  const auto bands = candidate_kwh.size() / static_cast<Eigen::Index>(metered.size());
  for (std::size_t m = 0; m < metered.size(); ++m) {
    const double drawn = candidate_kwh.segment(static_cast<Eigen::Index>(m) * bands, bands).sum();
    metered[m] = std::max(Energy{}, metered[m] - units::kilowatt_hours(drawn));
  }
  return metered;
}

}  // namespace wattweek::billing
