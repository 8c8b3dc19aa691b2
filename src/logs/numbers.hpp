#pragma once
// Numbers as logs write them.

#include <optional>
#include <string_view>

#include "wattweek/logs/read_log.hpp"

namespace wattweek::logs {

/// For the decimal mark of whole numbers.
inline constexpr char kNoMark = '\0';

/// How numbers of a column are written. Thousands marks are whatever may stand between groups and
/// is not the decimal mark: an apostrophe, a dot, a comma, a thin or unbreakable blank.
struct NumberStyle {
  char decimal = '.';   ///< `kNoMark`: none was seen yet.
  bool groups = false;  ///< Thousands marks occur.
};

/// A number, and the unit that stands behind it in the same field, if any.
struct Number {
  double value = 0;
  std::optional<Unit> unit{};
};

/// The number that a field holds; nothing where it holds none. Signs and exponents are taken, "inf"
/// and hexadecimal digits are not. Correctly rounded.
std::optional<Number> number_of(std::string_view field, NumberStyle style);

/// Whether a field says that there is no value: empty, "-", "--", "?", "unavailable", "unknown",
/// "none", "null", "nan", "n/a", and the like; upper and lower case alike.
bool says_no_value(std::string_view field);

/// What numbers with this mark tell about it.
struct MarkEvidence {
  bool decimal = false;    ///< It can only be the decimal mark: `0.5`, `12.25`, `1234.567`.
  bool thousands = false;  ///< It can only be a thousands mark: `1.234.567`, before another mark.
  bool either = false;     ///< Seen where it may be both: `1.234`.
};

/// Adds what a field tells about a mark, '.' or ','.
void weigh(std::string_view field, char mark, MarkEvidence& evidence);

/// Whether the field looks like a number in any style.
bool looks_like_number(std::string_view field);

}  // namespace wattweek::logs
