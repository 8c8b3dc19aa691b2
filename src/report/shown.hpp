#pragma once
// A study and its results, and how finely they are shown.

#include <string>
#include <vector>

#include "numbers.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {

struct Shown {
  const model::Study& study;
  const decide::Assessment& all;
  int kwh_decimals = 1;
  int watt_decimals = 1;

  const std::string& currency() const { return study.tariff.currency; }
  bool is_year() const { return study.months == 12; }

  std::string kwh(double value) const { return fixed(value, kwh_decimals); }
  std::string watts(double value) const { return fixed(value, watt_decimals); }
  std::string cost(double value) const { return amount(value, currency()); }
  std::string cost(units::Money value) const { return cost(units::in_currency(value)); }
};

/// As many digits as suit the largest candidate.
Shown shown(const model::Study& study, const decide::Assessment& assessment);

/// `a, b, c`.
std::string joined(const std::vector<std::string>& parts);

}  // namespace wattweek::report
