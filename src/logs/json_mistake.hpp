#pragma once
// What is wrong with a text that is no JSON, in our words.

#include <simdjson.h>

#include <string_view>

#include "json_rows.hpp"

namespace wattweek::logs {

/// The mistake that made the parser give up at `at`. An end that comes early is told from something
/// behind the end by counting brackets.
JsonMistake mistake_of(std::string_view text, simdjson::error_code code, const char* at);

}  // namespace wattweek::logs
