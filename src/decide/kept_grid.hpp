#pragma once
// What the rows of a grid share, reckoned ahead; then a row is looked up.

#include <cstdint>
#include <optional>
#include <vector>

#include "factored_reckoner.hpp"
#include "price_lines.hpp"

namespace wattweek::decide {

/// Of each candidate, for all values of the factors that act on its energy and the household: the
/// energy, and the cost as a function of the price factor.
class KeptGrid {
 public:
  /// Both must outlive it.
  KeptGrid(const FactoredBase& base, const std::vector<Sweep>& sweeps);

  /// Is it small enough to be kept? All else is only for those that are.
  bool fits() const;
  void make_room();

  /// How many combinations of values a candidate has.
  std::size_t entries(std::size_t candidate) const { return tables_[candidate].entries; }
  /// Reckons those from begin to end. Different ones may be filled at the same time.
  [[nodiscard]] std::optional<ScenarioRefused> fill(std::size_t candidate, std::size_t begin,
                                                    std::size_t end, FactoredReckoner& reckoner);

  /// So many rows from `first` on: totals of all candidates, and which is the best.
  void look_up(std::size_t first, std::size_t count, Totals* totals, std::uint32_t* best) const;

 private:
  struct Table {
    std::vector<std::size_t> stride;  ///< By sweep; 0 where the sweep does not matter.
    std::size_t entries = 1;
    std::vector<double> energy_kwh;
    std::vector<PriceLine> lines;  ///< [entry * most_lines + line].
  };
  class Run;

  Table lay_out(std::size_t candidate) const;

  const FactoredBase& base_;
  const std::vector<Sweep>& sweeps_;
  PriceLines finder_;  ///< To be copied.
  std::vector<Table> tables_;
};

}  // namespace wattweek::decide
