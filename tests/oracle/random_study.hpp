#pragma once
// Studies nobody would think of: every key in every form, in zones whose clocks do odd things,
// from a seed.

#include <cstdint>
#include <map>
#include <string>

namespace wattweek::oracle {

struct StudyText {
  std::string study;
  std::map<std::string, std::string> files;  ///< Profiles and tariff that stand by themselves.

  /// All of it, to be printed when something is wrong.
  std::string all() const;
};

/// What to draw.
struct StudyWish {
  std::uint64_t seed = 1;
  bool whole_year = false;  ///< 12 months and a horizon; else a month or two as a rule.
};

/// The same text for the same wish, always.
StudyText random_study(const StudyWish& wish);

}  // namespace wattweek::oracle
