#pragma once
// What a careful adviser would add to the figures.

#include <string>
#include <variant>
#include <vector>

#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/model/profile.hpp"
#include "wattweek/model/tariff.hpp"

namespace wattweek::decide {

/// `where` is a place in a file, or a candidate's id.
struct Note {
  std::string code;  ///< One of a fixed set: see docs/method.md.
  std::variant<diag::Place, std::string> where;
  std::string text;  ///< A sentence, without a full stop at its end.
};

/// What there is to note about a contract by itself: prices that look like cents.
std::vector<Note> notes_of_tariff(const model::Tariff& tariff);

/// What there is to note about a profile by itself: watts that look like kilowatts.
std::vector<Note> notes_of_profile(const model::Profile& profile);

/// `FILE:LINE:COLUMN`, or the candidate's id.
std::string where_text(const Note& note);

}  // namespace wattweek::decide
