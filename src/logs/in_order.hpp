#pragma once
// Readings as they stand in the file into the order of time.

#include <limits>
#include <vector>

#include "wattweek/logs/log.hpp"

namespace wattweek::logs {

/// How far out of order rows may stand. A log is read under the first that is enough: most logs are
/// in order, and pay nothing for those that are not.
enum class Disorder { none, a_little, a_million, any };

/// The next. \pre not the last
Disorder more_than(Disorder less);

/// Hands readings on in time order; of equal times the last that came counts.
class InOrder {
 public:
  InOrder(ReadingSink& sink, Disorder most);

  /// False where the rows stand farther out of order than was said: then all is to be read again.
  bool add(const Reading& reading) {
    if (reading.at_us <= last_us_ || size_ == batch_.size()) return add_otherwise(reading);
    batch_[size_++] = reading;
    last_us_ = reading.at_us;
    return true;
  }

  /// After the last reading.
  void finish();

  std::size_t used() const { return used_; }            ///< Handed on, with a value.
  std::size_t same_time() const { return same_time_; }  ///< Values for which another one counts.
  std::size_t out_of_order() const { return out_of_order_; }

 private:
  static constexpr std::size_t kBatch = 2048;

  bool add_otherwise(const Reading& reading);
  bool add_disordered(const Reading& reading);
  void hand_on_batch();
  std::size_t sort_in();
  void hand_on_sorted(std::size_t kept);
  void drop_same_times(std::size_t from);
  void hand_on(std::span<const Reading> readings);

  ReadingSink& sink_;
  Disorder most_;
  std::size_t window_ = 0;      ///< Rows that are held back, where not all are.
  std::vector<Reading> batch_;  ///< Where rows are in order; else it has no room.
  std::size_t size_ = 0;        ///< Of it, how many are taken.
  std::vector<Reading> held_;   ///< Where they are not ...
  std::size_t in_order_ = 0;    ///< ... of these, how many are by now.
  Microseconds last_us_ = std::numeric_limits<Microseconds>::min();
  Microseconds handed_on_us_ = std::numeric_limits<Microseconds>::min();
  std::size_t used_ = 0;
  std::size_t same_time_ = 0;
  std::size_t out_of_order_ = 0;
};

}  // namespace wattweek::logs
