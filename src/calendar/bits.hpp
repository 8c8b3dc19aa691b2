#pragma once
// Sets of small numbers, packed into words.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace wattweek::calendar {

using Words = std::vector<std::uint64_t>;

constexpr std::size_t words_for(std::size_t bits) { return (bits + 63) / 64; }

inline bool test_bit(const Words& words, std::size_t bit) {
  return (words[bit / 64] >> (bit % 64) & 1U) != 0;
}

inline void set_bit(std::uint64_t* words, std::size_t bit) {
  words[bit / 64] |= std::uint64_t{1} << (bit % 64);
}

struct WordsHash {
  std::size_t operator()(const Words& words) const {
    std::uint64_t hash = 0x9E3779B97F4A7C15U;
    for (const std::uint64_t word : words) {
      hash = (hash ^ word) * 0xFF51AFD7ED558CCDU;
      hash ^= hash >> 32U;
    }
    return static_cast<std::size_t>(hash);
  }
};

}  // namespace wattweek::calendar
