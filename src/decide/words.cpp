#include "words.hpp"

namespace wattweek::decide {

std::string quoted(const std::string& name) { return "'" + name + "'"; }

}  // namespace wattweek::decide
