#pragma once
// Words in headings and fields.

#include <string>
#include <string_view>

namespace wattweek::logs {

/// The same word, upper and lower case of the Latin alphabet alike.
bool same_word(std::string_view a, std::string_view b);

/// In lower case; other than Latin letters stay.
std::string lower_case(std::string_view text);

}  // namespace wattweek::logs
