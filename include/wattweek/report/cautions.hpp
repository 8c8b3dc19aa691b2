#pragma once
// Cautions where work can hurt: a line each, in the output of commands that speak of measuring, of
// switching off, or of the highest watts. docs/safety.md says them whole.

#include <string_view>

namespace wattweek::report {

/// Before a meter is put between plug and socket.
std::string_view measuring_caution();

/// Before a machine is put to rest or switched off.
std::string_view switching_caution();

/// What the highest watts are not for.
std::string_view highest_watts_caution();

}  // namespace wattweek::report
