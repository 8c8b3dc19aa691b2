#include <algorithm>
#include <array>

#include "wattweek/diag/diagnostic.hpp"

namespace wattweek::diag {

namespace {

char lower(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

bool alike(char a, char b) { return lower(a) == lower(b); }

using Row = std::array<std::size_t, kLongestWord + 1>;

// Optimal string alignment, row by row: d(i, j) from the rows i-1 and i-2.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  Row two_before{};
  Row before{};
  Row now{};
  for (std::size_t j = 0; j <= b.size(); ++j) now[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    two_before = before;
    before = now;
    now[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = before[j - 1] + (alike(a[i - 1], b[j - 1]) ? 0 : 1);
      now[j] = std::min({before[j] + 1, now[j - 1] + 1, replaced});
      const bool swapped = i > 1 && j > 1 && alike(a[i - 1], b[j - 2]) && alike(a[i - 2], b[j - 1]);
      if (swapped) now[j] = std::min(now[j], two_before[j - 2] + 1);
    }
  }
  return now[b.size()];
}

}  // namespace

std::string_view nearest(std::string_view word, const std::vector<std::string_view>& candidates) {
  std::string_view best;
  std::size_t least = word.size() + kLongestWord;
  if (word.size() > kLongestWord) return best;
  for (const std::string_view candidate : candidates) {
    if (candidate.size() > kLongestWord) continue;
    const std::size_t distance = edit_distance(word, candidate);
    const bool is_near = 3 * distance <= std::max(word.size(), candidate.size());
    if (is_near && distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace wattweek::diag
