#pragma once
// What a careful adviser would add to the figures.

#include <string>
#include <variant>
#include <vector>

#include "wattweek/diag/diagnostic.hpp"

namespace wattweek::decide {

/// `where` is a place in a file, or a candidate's id.
struct Note {
  std::string code;  ///< One of a fixed set: see docs/method.md.
  std::variant<diag::Place, std::string> where;
  std::string text;  ///< A sentence, without a full stop at its end.
};

/// `FILE:LINE:COLUMN`, or the candidate's id.
std::string where_text(const Note& note);

}  // namespace wattweek::decide
