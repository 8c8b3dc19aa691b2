#pragma once
// Start here for "what if": a study reckoned with factors on its prices, use, purchases, household
// and idle watts, on a grid; and where two candidates swap places.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/decide/progress.hpp"
#include "wattweek/decide/scenario.hpp"
#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

/// What is multiplied.
struct Factor {
  enum class Kind {
    price,      ///< Every band and block price.
    use,        ///< Every share; each result at most 1, of a range each end.
    purchase,   ///< Every candidate's purchase.
    household,  ///< The household's kWh, after what `includes` takes off.
    use_of,     ///< The shares of one workload.
    idle_of,    ///< watts.idle of all devices of one candidate that have one; busy and max rise to
                ///< it where needed.
    purchase_of,  ///< One candidate's purchase.
  };
  Kind kind = Kind::price;
  std::size_t index = 0;  ///< Of the workload or candidate.

  friend bool operator==(const Factor&, const Factor&) = default;
};

/// `price`, `use`, `purchase`, `household`, and `use.WORKLOAD`, `idle.CANDIDATE`,
/// `purchase.CANDIDATE` for all that the study has.
std::vector<std::string> factor_names(const model::Study& study);

/// The factor of that name, if there is one.
std::optional<Factor> factor_named(const model::Study& study, const std::string& name);

/// The name of a factor.
std::string name_of(const model::Study& study, const Factor& factor);

/// A factor and the values that it takes: `points` of them, evenly from low to high, both included.
struct Sweep {
  Factor factor;
  double low = 0;
  double high = 1;
  std::size_t points = 11;

  double at(std::size_t point) const;
};

/// The factors' values in a row of the grid: the first sweep varies slowest.
std::vector<double> values_in_row(const std::vector<Sweep>& sweeps, std::size_t row);

/// Rows of the grid, one after the other. A row's totals are those of all candidates.
struct Rows {
  std::size_t first = 0;  ///< Number of the first row.
  std::vector<Totals> totals;
  std::vector<std::uint32_t> best;  ///< Of each row.
};

/// The values of the factors at which the criteria of two candidates are equal, with a change of
/// sign, or at an end of the sweep; of an interval of equality its lower end.
struct Crossing {
  std::size_t first = 0;  ///< Candidates, in the study's order.
  std::size_t second = 0;
  double at = 0;
  /// Which of the two is the cheaper below, as far as can be seen; nothing where they are equal
  /// throughout.
  std::optional<std::size_t> cheaper_below;
};

/// Reckons a grid: the first sweep varies slowest.
class WhatIf {
 public:
  /// `study` and `zone` must outlive it. \pre `assess` has accepted the study; it has a criterion
  /// (see `criterion_of`) under all factors; no factor comes twice.
  WhatIf(const model::Study& study, const calendar::ZoneRules& zone, std::vector<Sweep> sweeps,
         unsigned threads);
  /// The same study with other sweeps; what no factor changes is reckoned once for both.
  WhatIf(const WhatIf& other, std::vector<Sweep> sweeps, unsigned threads);
  ~WhatIf();
  WhatIf(const WhatIf&) = delete;
  WhatIf& operator=(const WhatIf&) = delete;

  std::size_t rows() const;
  const std::vector<Sweep>& sweeps() const;

  /// Reckons what all rows share, if it fits. Diagnostics where that has too many joint outcomes.
  std::vector<diag::Diagnostic> prepare(const Progress& progress = {});

  /// Fills `rows` with so many from `first` on. \pre `prepare` has been called and found nothing.
  std::vector<diag::Diagnostic> reckon(std::size_t first, std::size_t count, Rows& rows);

  /// Crossings of a single sweep, for every pair of candidates (of one candidate with all others,
  /// where `of` names it), by place and then in the study's
  /// order. Equality is looked for in so many even steps, at the sweep's own values (of more than
  /// steps, at as many) and wherever a difference comes near to 0 between them, and located to
  /// about 1e-12.
  std::variant<std::vector<Crossing>, std::vector<diag::Diagnostic>> crossings(
      std::size_t steps = 1024, std::optional<std::size_t> of = std::nullopt);

  /// Which candidate is the best at any values of the factors, on the grid or not.
  /// \pre There, too, no device has more outcomes than can be merged.
  std::size_t best_at(const std::vector<double>& values);

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wattweek::decide
