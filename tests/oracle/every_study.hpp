#pragma once
// What is so in every study is tried on many.

#include <doctest/doctest.h>

#include <variant>
#include <vector>

#include "lots.hpp"
#include "reading.hpp"

namespace wattweek::oracle {

/// Calls `check(input, assessment)` for so many studies; those that cannot be assessed, because
/// their household falls below zero, are passed over.
template <class Check>
void for_random_studies(std::uint64_t first_seed, int count, bool whole_year, Check check) {
  for (int i = 0; i < count / kLotDivisor + 1; ++i) {
    const StudyWish wish{first_seed + static_cast<std::uint64_t>(i), whole_year};
    const StudyText text = random_study(wish);
    const read::StudyInput input = read_valid(text);
    const auto assessed = decide::assess(input.study, input.zone);
    if (!std::holds_alternative<decide::Assessment>(assessed)) continue;
    INFO("seed " << wish.seed << "\n" << text.all());
    check(input, std::get<decide::Assessment>(assessed));
  }
}

inline decide::Assessment assess(const model::Study& study, const calendar::ZoneRules& zone) {
  return std::get<decide::Assessment>(decide::assess(study, zone));
}

inline double sum_of(const std::vector<double>& numbers) {
  double sum = 0;
  for (const double number : numbers) sum += number;
  return sum;
}

inline double sum_of(const std::vector<units::Money>& amounts) {
  double sum = 0;
  for (const units::Money amount : amounts) sum += units::in_currency(amount);
  return sum;
}

}  // namespace wattweek::oracle
