#include "wattweek/decide/load_duration.hpp"

namespace wattweek::decide {

std::vector<LoadDuration> load_durations(const model::Study& study, const calendar::ZoneRules&,
                                         const Progress&) {
  return std::vector<LoadDuration>(study.candidates.size());
}

}  // namespace wattweek::decide
