#pragma once
// A workload moved, and devices at rest, as text that people and programs read.

#include <string>

#include "wattweek/decide/rest.hpp"
#include "wattweek/decide/shift.hpp"
#include "wattweek/report/report.hpp"

namespace wattweek::report {

struct ShiftShown {
  const model::Study& study;
  const decide::Shift& shift;
};

/// When the workload costs least with each candidate, as sentences, and what it costs at each
/// start.
std::string shift_text(const ShiftShown& shown, const Style& style);

/// JSON of the format `wattweek-shift-1`.
std::string shift_json(const ShiftShown& shown);

/// RFC 4180: a line of headers and one for each start.
std::string shift_csv(const ShiftShown& shown);

struct RestShown {
  const model::Study& study;
  const decide::RestPlan& plan;
  const decide::RestResult& result;
  bool is_state_given = false;  ///< Else asleep where all of the devices can sleep.
};

/// What the rest saves and what goes unserved for it, with the caution on switching off.
std::string rest_text(const RestShown& shown, const Style& style);

/// JSON of the format `wattweek-rest-1`; it holds the caution too.
std::string rest_json(const RestShown& shown);

}  // namespace wattweek::report
