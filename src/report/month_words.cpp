#include "month_words.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace wattweek::report {
namespace {

constexpr std::size_t kMonths = 12;
constexpr std::array<std::string_view, kMonths> kNames = {"jan", "feb", "mar", "apr", "may", "jun",
                                                          "jul", "aug", "sep", "oct", "nov", "dec"};

/// The run of months from `first` on, and how long it is.
std::string run_words(std::size_t first, std::size_t length) {
  std::string words(kNames[first]);
  if (length > 1) {
    words += length == 2 ? " and " : " to ";
    words += kNames[(first + length - 1) % kMonths];
  }
  return words;
}

}  // namespace

std::string months_words(const model::MonthSet& months) {
  if (months.all()) return "all year";
  std::vector<std::string> runs;
  for (std::size_t m = 0; m < kMonths; ++m) {
    if (!months[m] || months[(m + kMonths - 1) % kMonths]) continue;
    std::size_t length = 1;
    while (months[(m + length) % kMonths]) ++length;
    runs.push_back(run_words(m, length));
  }
  std::string words;
  for (std::size_t i = 0; i < runs.size(); ++i) words += (i > 0 ? ", " : "") + runs[i];
  return words;
}

}  // namespace wattweek::report
