#pragma once
// One study under several contracts: which candidate is best under each.
//
// Amounts in different currencies are never held against each other, and a purchase has no price in
// the other currency: where currencies differ, candidates are ranked by the year's cost alone.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/ranking.hpp"

namespace wattweek::decide {

/// A study under one of the contracts, reckoned.
struct UnderTariff {
  std::string path;    ///< The contract's file as the user named it.
  model::Study study;  ///< With this contract in place of its own.
  Assessment assessment;
};

/// What all rows are ranked by.
struct Yardstick {
  Criterion criterion = Criterion::none;  ///< `criterion_of`, unless the currencies differ.
  bool is_year_alone = false;  ///< Currencies differ: the study's cost, scaled to a year.
};

/// \pre There is at least one; all are the same study but for the tariff.
Yardstick yardstick_of(const std::vector<const model::Study*>& studies);

/// The candidates under one contract.
struct TariffRow {
  std::string tariff;            ///< Its name; its path where two names are equal.
  std::vector<double> criteria;  ///< By candidate, in this contract's currency.
  std::size_t best = 0;          ///< The lowest; of equal ones the first.
  bool is_shared = false;        ///< Another candidate is as good.
};

struct SeveralTariffs {
  Yardstick yardstick;
  std::optional<int> years;  ///< The horizon; nothing where it is not the criterion's.
  std::vector<TariffRow> rows;
};

/// Ranks the candidates under each contract. \pre There is a criterion (`yardstick_of`).
SeveralTariffs under_each(const std::vector<UnderTariff>& all);

}  // namespace wattweek::decide
