#pragma once
// Cautions where work can hurt: a line each, in the output of commands that speak of measuring, of
// switching off, or of the highest watts. docs/safety.md says them whole.

#include <string>
#include <string_view>
#include <vector>

#include "wattweek/report/report.hpp"

namespace wattweek::report {

/// Before a meter is put between plug and socket.
std::string_view measuring_caution();

/// Before a machine is put to rest or switched off.
std::string_view switching_caution();

/// What the highest watts are not for.
std::string_view highest_watts_caution();

/// Cautions one after the other, lines at most `columns` wide.
std::string cautions_text(const std::vector<std::string_view>& cautions, const Style& style);

}  // namespace wattweek::report
