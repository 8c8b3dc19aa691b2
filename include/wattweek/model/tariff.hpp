#pragma once
// The electricity contract as it is written.

#include <optional>
#include <string>
#include <vector>

#include "wattweek/model/window.hpp"
#include "wattweek/units/quantity.hpp"
#include "wattweek/units/range.hpp"

namespace wattweek::model {

using MoneyRange = units::Range<units::Money>;
using PriceRange = units::Range<units::UnitPrice>;

/// A price that holds in any of its windows, unless an earlier band holds.
struct Band {
  std::string name;
  PriceRange price;          ///< May be negative.
  std::vector<Window> when;  ///< Never empty.
  diag::Place place;
  diag::Place price_place;
};

/// One step of a ladder of prices over the household's consumption, on top of the band's.
struct Block {
  std::optional<double> up_to_kwh;  ///< Upper limit, per month or per day; the last has none.
  PriceRange price;
  MonthSet months = kEveryMonth;
  diag::Place price_place;
};

/// What a block's limit counts.
enum class BlocksPer { month, day };

/// The reader guarantees: at least one band, unique band names, and for each month either no
/// blocks or a ladder whose limits increase strictly and whose last has none.
struct Tariff {
  std::string name;
  std::string currency;      ///< ISO 4217 code, upper case.
  units::Range<double> tax;  ///< Fraction added to everything on the bill.
  MoneyRange standing_per_day;
  MoneyRange standing_per_month;
  std::optional<MoneyRange> minimum_per_month;  ///< Least monthly bill before tax.
  Holidays holidays;              ///< In a study: the contract's own, or the study's dates.
  bool has_own_holidays = false;  ///< The file lists holidays, be it none.
  std::vector<Band> bands;
  std::vector<Block> blocks;
  BlocksPer blocks_per = BlocksPer::month;
  diag::Place place;
};

}  // namespace wattweek::model
