#pragma once
// The three files that `new` writes: figures of the user's own where they were given, and marked
// guesses in place of all others.

#include <string>
#include <vector>

#include "cli/place_and_time.hpp"
#include "cli/readings.hpp"
#include "cli/written_files.hpp"

namespace wattweek::cli {

struct NewStudy {
  std::vector<NewFile> files;        ///< study.toml, profile.toml, tariff.toml.
  std::vector<std::string> assumed;  ///< What is a guess, a sentence for each file.
};

/// The same input gives the same bytes. `title` may be any text. Numbers read back as the same
/// doubles.
NewStudy new_study(const std::string& title, const Readings& readings, const PlaceAndTime& where);

}  // namespace wattweek::cli
