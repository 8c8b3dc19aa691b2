#pragma once
// Ranges in words, for people who never saw the files.

#include <string>

#include "wattweek/decide/range_place.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::report {

/// `the idle watts of refitted office tower`, `the purchase of Palm-size box`.
std::string range_words(const model::Study& study, const decide::RangePlace& place);

}  // namespace wattweek::report
