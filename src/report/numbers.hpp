#pragma once
// Numbers and amounts as people read them.

#include <string>
#include <string_view>
#include <vector>

#include "wattweek/diag/number_text.hpp"
#include "wattweek/units/range.hpp"

namespace wattweek::report {

using diag::fixed;
using diag::rounded;

/// The shortest text that reads back as the same double.
std::string exact(double value);

/// An amount with the minor digits of its currency: `12.30`, in yen `12`.
std::string amount(double value, std::string_view currency);

/// The same with the currency's code: `12.30 EUR`.
std::string money(double value, std::string_view currency);

/// A price per kWh, as contracts quote it: with two digits more than amounts have, fewer where they
/// are zeros.
std::string price_text(double price, std::string_view currency);

/// Does the amount show as zero?
bool shows_as_zero(double value, std::string_view currency);

/// Digits after the point that suit all of these figures: one where the largest is ten or more,
/// else two, below one three.
int decimals_for(const std::vector<double>& values);

/// The fewest digits after the point, from `least` to `most`, that show all ends of these ranges
/// unrounded; else `most`.
int decimals_that_show(const std::vector<units::Range<double>>& ranges, int least, int most);

/// `0.30 to 0.32`; a single figure where both ends look the same.
std::string range_text(const units::Range<double>& range, int decimals);

}  // namespace wattweek::report
