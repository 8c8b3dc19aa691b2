#pragma once
// Windows as people write them, with edges where clocks change more often than not.

#include <chrono>
#include <string>
#include <vector>

#include "dice.hpp"

namespace wattweek::oracle {

/// The months of a study, so that dates can be drawn in and around them.
struct Period {
  std::chrono::year_month first;
  int months = 1;
};

/// `key = value` pairs, ready to stand on lines or, joined by commas, in braces.
using Keys = std::vector<std::string>;

/// One span of hours and its length by the clock face.
struct Span {
  std::string text;
  int length_min = 0;
};

Span random_span(Dice& dice);
/// `2027-03-01..2027-03-20`, in the period or near it.
std::string random_date_span(Dice& dice, const Period& period);

/// The key `holidays`, with up to three dates.
std::string random_holidays(Dice& dice, const Period& period);

/// The filters `days`, `months` and `dates`, each or none.
Keys random_day_filters(Dice& dice, const Period& period);

/// All four filters, hours with one span or several.
Keys random_window(Dice& dice, const Period& period);

std::string on_lines(const Keys& keys);
std::string in_braces(const Keys& keys);

}  // namespace wattweek::oracle
