#include "range_words.hpp"

namespace wattweek::report {

std::string range_words(const model::Study&, const std::string& key) { return key; }

}  // namespace wattweek::report
