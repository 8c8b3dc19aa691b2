#pragma once

#include <string>

#include "wattweek/model/study.hpp"

namespace wattweek::report {

std::string range_words(const model::Study& study, const std::string& key);

}  // namespace wattweek::report
