#include "price_lines.hpp"

#include <algorithm>
#include <limits>

namespace wattweek::decide {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

}  // namespace

PriceLines::PriceLines(const billing::TariffLaw& law, std::size_t months, double low, double high)
    : minimum_(law.minimum_per_month ? units::in_currency(*law.minimum_per_month) : -kInfinity),
      with_tax_(1 + law.tax),
      low_(low),
      high_(high),
      most_(law.minimum_per_month && low < high ? 2 * months + 2 : 2) {}

void PriceLines::find(const std::vector<billing::Charges>& charges, const std::vector<double>& with,
                      PriceLine* lines) {
  find_bends(charges, with);
  double begin = low_;
  for (std::size_t i = 0; i <= bends_.size(); ++i) {
    const double end = i < bends_.size() ? bends_[i] : high_;
    lines[i] = line_at(begin + (end - begin) / 2, charges, with);
    lines[i].from = i == 0 ? -kInfinity : begin;
    begin = end;
  }
  std::fill(lines + bends_.size() + 1, lines + most_, PriceLine{kInfinity, 0, 0});
}

void PriceLines::find_bends(const std::vector<billing::Charges>& charges,
                            const std::vector<double>& with) {
  bends_.clear();
  for (std::size_t m = 0; m < with.size(); ++m) {
    const double floor = minimum_ - charges[m].standing;
    add_bend(floor, charges[m].without);
    add_bend(floor, with[m]);
  }
  std::sort(bends_.begin(), bends_.end());
}

void PriceLines::add_bend(double floor, double charge) {
  if (charge == 0) return;
  const double factor = floor / charge;
  if (factor > low_ && factor < high_) bends_.push_back(factor);
}

// Month by month in their order, so that where no minimum binds, or every one does, nothing is left
// of them, to the last digit.
PriceLine PriceLines::line_at(double factor, const std::vector<billing::Charges>& charges,
                              const std::vector<double>& with) const {
  PriceLine line;
  for (std::size_t m = 0; m < with.size(); ++m) {
    const double floor = minimum_ - charges[m].standing;
    const bool binds_after = factor * with[m] < floor;
    const bool binds_before = factor * charges[m].without < floor;
    line.at_zero += (binds_after ? floor : 0) - (binds_before ? floor : 0);
    line.slope += (binds_after ? 0 : with[m]) - (binds_before ? 0 : charges[m].without);
  }
  line.at_zero *= with_tax_;
  line.slope *= with_tax_;
  return line;
}

}  // namespace wattweek::decide
