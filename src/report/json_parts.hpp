#pragma once
// What all JSON of the program has in common. Only the files whose names begin with `json` know the
// library.

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/model/study.hpp"
#include "wattweek/units/quantity.hpp"

namespace wattweek::report {

using Json = nlohmann::ordered_json;

/// Full precision; -0 is 0.
inline Json number(double value) { return value == 0 ? 0.0 : value; }
inline Json number(units::Energy energy) { return number(units::in_kilowatt_hours(energy)); }
inline Json number(units::Money money) { return number(units::in_currency(money)); }
inline Json number(const std::optional<double>& value) { return value ? number(*value) : Json(); }

/// What was reckoned: title, zone, first day, months, days and hours.
Json study_part(const model::Study& study, const decide::Assessment& all);

Json notes_part(const std::vector<decide::Note>& notes);

/// Indented by so many blanks, or all on one line where that is negative, with a line end. Bytes
/// that are no UTF-8 (a file's name can hold some) become U+FFFD. The library escapes the
/// controls below U+0020; DEL and U+0080 to U+009F, which can only stand inside strings, are
/// escaped here, so that showing JSON on a terminal does nothing but show it.
std::string json_text(const Json& json, int indent = 2);

}  // namespace wattweek::report
