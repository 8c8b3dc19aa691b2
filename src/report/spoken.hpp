#pragma once
// Numbers rounded as people say them, for sentences and pictures.

#include <chrono>
#include <string>
#include <string_view>

#include "wattweek/decide/uncertainty.hpp"

namespace wattweek::report {

/// `138`, `41`, `4.7`, `0.31`: whole from ten on.
std::string spoken(double value);

/// An amount: whole units of currency from ten on, else with its minor digits; `57`, `4.69`.
std::string spoken_amount(double value, std::string_view currency);

/// The same with the currency's code.
std::string spoken_money(double value, std::string_view currency);

/// A central result and where 95 of 100 draws lie, with as few digits as tell the ends apart:
/// `57 (54 to 60)`; without brackets where nothing is open.
std::string with_range(double central, const decide::Spread& spread);

/// `54 to 60`, as `with_range` has it; a single figure where both ends look the same.
std::string likely_range(const decide::Spread& spread);

/// The sentence with a capital at its beginning, where that is a small letter of ASCII.
std::string capitalised(std::string sentence);

/// `January 2027`.
std::string month_name(std::chrono::year_month month);

/// `26 %` of a fraction; what is little, or nearly all, is not called none, or all.
std::string percent_of(double fraction);

}  // namespace wattweek::report
