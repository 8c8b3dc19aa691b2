#pragma once
// A meter log as a file, and what its rows say: readings in time order.

#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <string>

namespace wattweek::logs {

/// Bytes, one after the other.
class ByteSource {
 public:
  virtual ~ByteSource() = default;
  /// Fills the beginning of `bytes` and says how many; 0 at the end. May give fewer than asked.
  virtual std::size_t read(std::span<char> bytes) = 0;
  /// Why the bytes cannot be trusted (the disk failed, the file changed meanwhile); empty where
  /// they can. Asked after each end.
  virtual std::string failure() const { return {}; }
};

/// A log that can be read from its beginning as often as needed.
struct LogFile {
  std::string
      name;  ///< As the user wrote it; a date in it may decide the order of days and months.
  std::uint64_t bytes = 0;  ///< Its size as it lies there, for progress; 0: not known.
  std::function<std::unique_ptr<ByteSource>()> open;
};

/// What the values are.
enum class Kind {
  power,    ///< W, at the stamp and until the next.
  energy,   ///< Wh, of the interval that starts or ends at the stamp.
  counter,  ///< Wh, running on.
};

/// Which end of its interval a stamp names.
enum class Stamps { start, end };

/// Microseconds since 1970 in UTC, leap seconds not counted.
using Microseconds = std::int64_t;

/// A value at a time: W or Wh, see `Kind`. A value that cannot be used is a NaN: a mark of time.
struct Reading {
  Microseconds at_us = 0;
  double value = 0;
};

struct Meaning {
  Kind kind = Kind::power;
  Stamps stamps = Stamps::start;
};

/// Takes the readings of a log, in time order, no two at the same time.
class ReadingSink {
 public:
  virtual ~ReadingSink() = default;
  /// The readings come, from the first: whatever was taken before is void.
  virtual void begin(const Meaning& meaning) = 0;
  virtual void take(std::span<const Reading> readings) = 0;
};

}  // namespace wattweek::logs
