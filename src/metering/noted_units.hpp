#pragma once
// Units in use of each workload over time, as they were noted: constant between two changes.

#include <cstdint>
#include <map>
#include <utility>
#include <vector>

#include "interval.hpp"
#include "wattweek/metering/activity.hpp"
#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

class NotedUnits {
 public:
  explicit NotedUnits(const Activity& activity);

  /// Turns to the piece of this instant; says when it ends.
  logs::Microseconds turn_to(logs::Microseconds at_us);
  /// Row of the units in use in the piece turned to.
  std::uint32_t design() const { return pieces_[piece_].design; }
  /// Row of the time mean of units in use over an interval, whose start was turned to. Where they
  /// change within it, it is a row of its own, even if the mean is that of a piece.
  std::uint32_t mean_design(logs::Microseconds start_us, logs::Microseconds end_us);

  /// Different rows; row 0 is none in use.
  std::vector<Eigen::VectorXd> designs() const;
  /// Of each row: is it the mean of what changes within an interval?
  std::vector<bool> changing() const { return changing_; }

 private:
  using Units = std::vector<double>;
  struct Piece {
    logs::Microseconds from_us;
    std::uint32_t design;
  };

  std::uint32_t row_of(const Units& units, bool changing);
  logs::Microseconds end_us(std::size_t piece) const;

  std::vector<Units> rows_;
  std::vector<bool> changing_;
  std::map<std::pair<Units, bool>, std::uint32_t> row_numbers_;
  std::vector<Piece> pieces_;
  std::size_t piece_ = 0;
};

}  // namespace wattweek::metering
