#include "points.hpp"

#include <algorithm>
#include <boost/random/sobol.hpp>

namespace wattweek::decide {

namespace {

// What Boost's table of directions holds.
constexpr std::size_t kMostDimensions = 3667;

std::uint32_t reversed(std::uint32_t x) {
  x = ((x & 0xaaaaaaaaU) >> 1U) | ((x & 0x55555555U) << 1U);
  x = ((x & 0xccccccccU) >> 2U) | ((x & 0x33333333U) << 2U);
  x = ((x & 0xf0f0f0f0U) >> 4U) | ((x & 0x0f0f0f0fU) << 4U);
  x = ((x & 0xff00ff00U) >> 8U) | ((x & 0x00ff00ffU) << 8U);
  return (x >> 16U) | (x << 16U);
}

// SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014): its output function.
std::uint64_t mixed(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15U;
  x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9U;
  x = (x ^ (x >> 27U)) * 0x94d049bb133111ebU;
  return x ^ (x >> 31U);
}

std::uint64_t hash_of(std::uint64_t a, std::uint64_t b) { return mixed(mixed(a) ^ b); }

/// The middle of the cell that the digits name.
double within_unit(std::uint32_t digits) { return (static_cast<double>(digits) + 0.5) * 0x1p-32; }

}  // namespace

std::uint32_t scrambled(std::uint32_t digits, std::uint32_t seed) {
  std::uint32_t x = reversed(digits);
  x ^= x * 0x3d20adeaU;
  x += seed;
  x *= (seed >> 16U) | 1U;
  x ^= x * 0x05526c56U;
  x ^= x * 0x53a22864U;
  return reversed(x);
}

class Points::Inside {
 public:
  Inside(std::size_t dimensions, std::uint64_t seed, std::uint64_t first)
      : dimensions_(dimensions),
        even_(std::min(dimensions, kMostDimensions)),
        sobol_(std::max<std::size_t>(even_, 1)),
        seed_(seed),
        index_(first) {
    for (std::size_t d = 0; d < even_; ++d) {
      seeds_.push_back(static_cast<std::uint32_t>(hash_of(seed, d)));
    }
    if (first > 0) sobol_.discard((first - 1) * std::max<std::size_t>(even_, 1));
  }

  void next(std::vector<double>& point) {
    point.resize(dimensions_);
    for (std::size_t d = 0; d < even_; ++d) {
      point[d] = within_unit(scrambled(index_ == 0 ? 0 : sobol_(), seeds_[d]));
    }
    for (std::size_t d = even_; d < dimensions_; ++d) {
      point[d] = within_unit(static_cast<std::uint32_t>(hash_of(hash_of(seed_, d), index_) >> 32U));
    }
    ++index_;
  }

 private:
  // Boost's leaves out the sequence's first point, of which all digits are 0. Without it runs of
  // 2^m points fill nothing evenly (A. B. Owen, "On dropping the first Sobol' point", 2020).
  using Sobol = boost::random::sobol_engine<std::uint32_t, 32>;

  std::size_t dimensions_;
  std::size_t even_;
  Sobol sobol_;
  std::uint64_t seed_;
  std::uint64_t index_;
  std::vector<std::uint32_t> seeds_;
};

Points::Points(std::size_t dimensions, std::uint64_t seed, std::uint64_t first)
    : inside_(std::make_unique<Inside>(dimensions, seed, first)) {}
Points::~Points() = default;

void Points::next(std::vector<double>& point) { inside_->next(point); }

}  // namespace wattweek::decide
