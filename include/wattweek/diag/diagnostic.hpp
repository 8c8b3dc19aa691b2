#pragma once
// Where the mistake in the user's file is, what was found and what is accepted.

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace wattweek::diag {

/// A position in a file that the user wrote. Lines and columns count from 1, columns in
/// characters (code points). `file` is the path as the user gave it, never null in a place
/// that a reader made.
struct Place {
  std::shared_ptr<const std::string> file;
  int line = 1;
  int column = 1;
};

/// `FILE:LINE:COLUMN`.
std::string to_text(const Place& place);

/// One mistake: the message names the key, the value found and what is accepted.
struct Diagnostic {
  Place place;
  std::string message;
};

/// `FILE:LINE:COLUMN: error: MESSAGE`, without a line end. Control characters are shown as
/// `\xNN`, so that a file cannot write to the terminal.
std::string to_text(const Diagnostic& diagnostic);

/// Puts diagnostics in order of file (in order of first mention), line and column, and
/// drops exact repetitions.
void sort_by_place(std::vector<Diagnostic>& diagnostics);

/// Words of more letters than this are near to nothing.
inline constexpr std::size_t kLongestWord = 64;

/// The candidate that is most likely meant by `word`: the one with the smallest edit
/// distance (insert, delete, replace, swap of neighbours; Damerau 1964, optimal string
/// alignment), upper and lower case alike, the first of equals. Empty when none is near: more
/// than a third of the longer word's letters would have to change.
std::string_view nearest(std::string_view word, const std::vector<std::string_view>& candidates);

}  // namespace wattweek::diag
