#pragma once
// Points in the unit cube that fill it evenly: a Sobol' sequence, scrambled.
//
// Sobol' directions: S. Joe, F. Y. Kuo, SIAM J. Sci. Comput. 30 (2008), as Boost.Random has them.
// Scrambling: A. B. Owen's nested uniform scrambling (1995), each digit flipped by a hash of the
// digits before it: B. Burley, "Practical Hash-based Owen Scrambling", JCGT 9 (2020), with the hash
// of N. Vegdahl, "Building a Better LK Hash" (2021). Scrambled points are each uniform, so means
// over them are unbiased.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

namespace wattweek::decide {

/// One point after the other; where it begins costs nothing.
class Points {
 public:
  /// Points `first`, `first + 1`, ... of the sequence that belongs to a seed. Coordinates beyond
  /// what a Sobol' sequence offers (thousands) are independent random numbers.
  Points(std::size_t dimensions, std::uint64_t seed, std::uint64_t first);
  ~Points();
  Points(const Points&) = delete;
  Points& operator=(const Points&) = delete;

  /// Fills `point` with the next one; coordinates lie within 0 and 1, ends excluded.
  void next(std::vector<double>& point);

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

/// Owen's scrambling of the 32 digits of a coordinate: a one-to-one map in which each digit is
/// flipped or not depending on `seed` and the digits before it alone.
std::uint32_t scrambled(std::uint32_t digits, std::uint32_t seed);

}  // namespace wattweek::decide
