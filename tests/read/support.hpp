#pragma once
// What the tests of the readers share: a small good file of each kind, edits of it, files in
// memory, and the check of whole messages.

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <vector>

#include "wattweek/read/read.hpp"

namespace wattweek::read_tests {

inline const std::string kProfile = R"(name = "box"
capacity = 4
[watts]
idle = 10
busy = 30
[groups]
disks = 5
[increments]
film = 3
)";

inline const std::string kTariff = R"(currency = "EUR"
tax = 0.2
[[band]]
name = "night"
price = 0.2
hours = "22:00-06:00"
[[band]]
name = "day"
price = 0.3
)";

inline const std::string kStudy = R"(time_zone = "Etc/UTC"
start = 2027-01-01
months = 12
tariff = "day.toml"
[[workload]]
id = "film"
[[workload.use]]
hours = "20:00-22:00"
share = 0.5
[[workload]]
id = "cams"
[[workload.use]]
units = 2
[[candidate]]
id = "one"
[[candidate.device]]
name = "big"
[candidate.device.watts]
idle = 10
[candidate.device.increments]
film = 3
cams = 1
[[candidate]]
id = "two"
[[candidate.device]]
profile = "box.toml"
)";

/// The text with one piece of it, which stands there once, exchanged.
std::string edited(std::string text, std::string_view from, std::string_view to);

/// The problems as the user sees them, one a line.
std::string shown(const std::vector<diag::Diagnostic>& problems);

/// The value of a text that must have no problems.
template <class T>
T value_of(const read::Read<T>& got) {
  REQUIRE(shown(got.problems) == "");
  REQUIRE(got.value.has_value());
  return *got.value;
}

/// Read among a few files in memory, see `files` in the source.
read::Read<read::StudyInput> read_study(const std::string& text);
/// Read under tariffs of these texts, called `one.toml`, `two.toml` and `three.toml`.
read::Read<std::vector<read::StudyInput>> read_study_under(const std::string& text,
                                                           const std::vector<std::string>& tariffs);
read::Read<model::Profile> read_profile(const std::string& text);
read::Read<model::Tariff> read_tariff(const std::string& text);

/// A text, what it shows, and all that the reader says of it.
struct Case {
  std::string_view says;
  std::string text;
  std::string_view problems;
};

/// Checks the whole text of all problems, and that there is a value exactly where there is none.
template <class T>
void check_cases(const std::vector<Case>& cases, read::Read<T> (*reader)(const std::string&)) {
  for (const Case& one : cases) {
    CAPTURE(one.says);
    CAPTURE(one.text);
    const read::Read<T> got = reader(one.text);
    CHECK(shown(got.problems) == one.problems);
    CHECK(got.value.has_value() == got.problems.empty());
  }
}

}  // namespace wattweek::read_tests
