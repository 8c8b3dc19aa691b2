#pragma once
// What a candidate adds to the bills as a function of the price factor: straight lines.

#include <cstddef>
#include <vector>

#include "wattweek/billing/charges.hpp"

namespace wattweek::decide {

/// The cost at a price factor x, from `from` to where the next line begins: at_zero + slope x.
struct PriceLine {
  double from = 0;
  double at_zero = 0;
  double slope = 0;
};

/// Each month's bill bends where its minimum begins or ceases to bind, with the candidate and
/// without; their sum is a line between two bends.
class PriceLines {
 public:
  /// Of price factors from low to high, which may be equal.
  PriceLines(const billing::TariffLaw& law, std::size_t months, double low, double high);

  /// So many are found at most, with the one at infinity that ends them.
  std::size_t most() const { return most_; }

  /// Fills all `most()` of `lines`, in order. The first begins at minus infinity, and those that
  /// are not needed at infinity.
  void find(const std::vector<billing::Charges>& charges, const std::vector<double>& with,
            PriceLine* lines);

 private:
  void find_bends(const std::vector<billing::Charges>& charges, const std::vector<double>& with);
  void add_bend(double floor, double charge);
  PriceLine line_at(double factor, const std::vector<billing::Charges>& charges,
                    const std::vector<double>& with) const;

  double minimum_;
  double with_tax_;
  double low_;
  double high_;
  std::size_t most_;
  std::vector<double> bends_;
};

}  // namespace wattweek::decide
