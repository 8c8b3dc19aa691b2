#pragma once
// Where values of JSON begin and end, found by counting brackets.

#include <string>
#include <string_view>

namespace wattweek::logs {

/// Behind the object or array that begins at `at`; npos where it is not closed.
std::size_t end_of_value(std::string_view text, std::size_t at);

/// The first character from `at` on that is no blank and no line end; npos where there is none.
std::size_t next_token(std::string_view text, std::size_t at);

/// An object in each line, as an array of them: line breaks stay, but the first line is moved by
/// one character. Another text stays as it is; `was_lines` says which. \pre the text has a token
std::string as_array(std::string text, bool& was_lines);

}  // namespace wattweek::logs
