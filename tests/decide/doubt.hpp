#pragma once
// A study's text, drawn.

#include <doctest/doctest.h>

#include <cstdio>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "../support/study_text.hpp"
#include "wattweek/decide/uncertainty.hpp"

namespace wattweek::tests {

/// A number with all its digits, as TOML reads it.
inline std::string digits(double number) {
  char text[32];
  std::snprintf(text, sizeof text, "%.17e", number);
  return text;
}

inline std::string range(double low, double high) {
  return "[" + digits(low) + ", " + digits(high) + "]";
}

inline decide::Uncertainty doubt_of(const read::StudyInput& input,
                                    const decide::DrawOptions& options) {
  auto drawn = decide::draw(input.study, input.zone, options);
  REQUIRE(std::holds_alternative<decide::Uncertainty>(drawn));
  return std::get<decide::Uncertainty>(std::move(drawn));
}

inline decide::Uncertainty doubt_of(const std::string& text, const decide::DrawOptions& options) {
  return doubt_of(read_study(text), options);
}

/// All figures, to be compared to the last bit.
inline std::vector<double> figures(const decide::Uncertainty& doubt) {
  std::vector<double> all = {static_cast<double>(doubt.ranges), doubt.explained};
  const auto add = [&all](const decide::Spread& spread) {
    all.insert(all.end(), {spread.mean, spread.sd, spread.p2_5, spread.p50, spread.p97_5});
  };
  for (const decide::CandidateDoubt& candidate : doubt.candidates) {
    add(candidate.energy_kwh);
    add(candidate.cost);
    if (candidate.present_cost) add(*candidate.present_cost);
    all.push_back(candidate.cheapest.value_or(-1));
    all.push_back(candidate.first_order_sd);
  }
  for (const decide::Driver& driver : doubt.drivers) all.push_back(driver.share);
  return all;
}

/// `from` must be there.
inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE_MESSAGE(at != std::string::npos, from);
  return text.replace(at, from.size(), to);
}

/// The benchmarks' eight services, with ranges in all sorts of places.
inline read::StudyInput read_bench_study_with_ranges() {
  std::ifstream file(std::string(WATTWEEK_SOURCE_DIR) + "/tests/bench/eight-services.toml");
  std::ostringstream read;
  read << file.rdbuf();
  std::string text = read.str();
  text = replaced(text, "kwh_per_year = 4200", "kwh_per_year = [3900, 4600]");
  text = replaced(text, "price_rise = 0.01", "price_rise = [0, 0.03]");
  text = replaced(text, "price = 0.31", "price = [0.27, 0.35]");
  text = replaced(text, "share = 0.4", "share = [0.2, 0.6]");
  text = replaced(text, "idle = 128", "idle = [110, 146]");
  text = replaced(text, "max = 230", "max = [226, 250]");
  text = replaced(text, "disks = 18", "disks = [12, 24]");
  text = replaced(text, "purchase = 480", "purchase = [440, 520]");
  text = replaced(text, "idle = 8.5", "idle = [7, 10]");
  text = replaced(text, "films = 3.1", "films = [2.5, 3.7]");
  return read_study(text);
}

}  // namespace wattweek::tests
