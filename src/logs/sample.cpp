#include "sample.hpp"

#include <algorithm>

namespace wattweek::logs {

void Sample::add(const Fields& fields, std::uint64_t line) {
  fields_.insert(fields_.end(), fields.begin(), fields.end());
  begins_.push_back(fields_.size());
  lines_.push_back(line);
  columns_ = std::max(columns_, fields.size());
}

}  // namespace wattweek::logs
