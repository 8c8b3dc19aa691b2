#pragma once
// A line of delimited text, taken apart (RFC 4180, and blanks as delimiter).

#include <string_view>
#include <vector>

namespace wattweek::logs {

/// The fields of a row: without quotes and without blanks around them. They point into the line.
using Fields = std::vector<std::string_view>;

/// Takes a line apart; a blank as delimiter stands for any number of blanks. Quotes that are never
/// closed end with the line. A doubled quote within quotes stays doubled: no value has one.
void split(std::string_view line, char delimiter, Fields& fields);

/// Without blanks at both ends.
std::string_view trimmed(std::string_view text);

/// Whether the line has nothing to say: blank, or a comment ('#', "//").
bool is_silent(std::string_view line);

}  // namespace wattweek::logs
