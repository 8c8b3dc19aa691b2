#pragma once
// A study in which every range has been settled: one value in place of "somewhere between".

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "wattweek/decide/range_place.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

/// A copy of a study whose ranges can be given values one by one. A range belongs to its file, or
/// inline to its own table: two candidates that name one profile share its ranges.
class SettledStudy {
 public:
  /// Every range stands at its midpoint.
  explicit SettledStudy(const model::Study& study);
  ~SettledStudy();
  SettledStudy(const SettledStudy&) = delete;
  SettledStudy& operator=(const SettledStudy&) = delete;

  /// What each range is called: `FILE:path.to.key`, such as `box.toml:watts.idle` or
  /// `study.toml:candidate.small.purchase`; entries without a name are counted from 1. FILE is the
  /// file's name, its path where another file has the same name. Ranges with equal ends, those that
  /// no device of the study uses and the grid's carbon are left out.
  const std::vector<std::string>& keys() const;

  /// Where each range stands, in the order of `keys`.
  const std::vector<RangePlace>& places() const;

  /// Settles a range at low + fraction (high - low).
  void settle(std::size_t range, double fraction);

  /// All its ranges have equal ends.
  const model::Study& study() const;

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wattweek::decide
