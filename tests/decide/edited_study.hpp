#pragma once
// A study with everything that a factor can act on, and the edits that a person would make by hand
// in place of a factor.

#include <string>
#include <vector>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/what_if.hpp"

namespace wattweek::tests {

/// Shares in every form, a household that was metered with a candidate, a ladder, a minimum that
/// some months pass, a cap, a curve, a table, a rest and an assist.
extern const std::string kEditedStudy;

/// Without the line that starts so.
std::string without_line(const std::string& text, const std::string& start);

/// The home's own months, times a factor, in place of what was metered, so that edits of the
/// machines leave them.
std::string with_household(const std::string& text, double factor);

// Figures of `kEditedStudy` in `text` multiplied, shares at most 1, busy and max raised to idle.
std::string price(double factor, std::string text = kEditedStudy);
std::string films(double factor, std::string text);
std::string use(double factor, std::string text);
std::string purchase(double rack, double palm, double tower, std::string text = kEditedStudy);
std::string idle_of_rack(double factor, std::string text);
std::string idle_of_palm(double factor, std::string text);

/// Within 1e-9.
bool close(double a, double b);

std::vector<decide::Totals> totals_of(const decide::Assessment& assessment);

/// The first figure in which the two differ, in words; empty where they agree.
std::string difference(const std::vector<decide::Totals>& got,
                       const std::vector<decide::Totals>& want);

decide::Sweep sweep(const model::Study& study, const std::string& name, double low, double high,
                    std::size_t points);

/// All rows of a grid.
struct Grid {
  explicit Grid(decide::WhatIf& what_if);
  std::vector<decide::Totals> row(std::size_t r) const;

  std::size_t rows;
  std::size_t candidates = 0;
  decide::Rows all;
};

}  // namespace wattweek::tests
