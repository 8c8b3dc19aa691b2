#pragma once
// Counts, lists and watts as people say them.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "wattweek/model/profile.hpp"

namespace wattweek::report {

/// `1 block`, `3 blocks`. \pre The plural of `word` is made with an s.
std::string counted(std::size_t number, std::string_view word);

/// The same of a number that stands written: `1 year`, `2.5 years`.
std::string counted(const std::string& number, std::string_view word);

/// `a`, `a and b`, `a, b and c`.
std::string listed(const std::vector<std::string>& items);

/// `13 W`, unrounded.
std::string watts_text(units::Power power);

/// `13 W`, `13 to 14 W`.
std::string watts_text(const model::PowerRange& range);

}  // namespace wattweek::report
