#include "numbers.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "fields.hpp"
#include "words.hpp"

namespace wattweek::logs {
namespace {

constexpr std::size_t kLongestNumber = 64;
constexpr std::array<std::string_view, 5> kGroupMarks = {"'", "\xe2\x80\x99", "\xe2\x80\xaf",
                                                         "\xe2\x80\x89", "\xc2\xa0"};
constexpr std::array<std::string_view, 16> kNoValue = {
    "-",   "--",  "---", "?",         "unavailable", "unknown", "none",    "null",
    "nan", "n/a", "na",  "undefined", "missing",     "no data", "invalid", "error"};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::optional<Unit> unit_named(std::string_view text) {
  if (same_word(text, "w") || same_word(text, "watt") || same_word(text, "watts")) return Unit::w;
  if (same_word(text, "kw")) return Unit::kw;
  if (same_word(text, "wh")) return Unit::wh;
  if (same_word(text, "kwh")) return Unit::kwh;
  return std::nullopt;
}

// Length of the group mark at the beginning; 0: there is none.
std::size_t group_mark(std::string_view text) {
  for (const std::string_view mark : kGroupMarks) {
    if (text.substr(0, mark.size()) == mark) return mark.size();
  }
  return 0;
}

// The digits of a field as `from_chars` takes them.
struct Digits {
  std::array<char, kLongestNumber> text{};
  std::size_t size = 0;

  bool add(char c) { return size < text.size() && (text[size++] = c, true); }
};

// Thousands marks stand between digits, three to a group behind them.
bool is_group(std::string_view behind) {
  return behind.size() >= 3 && is_digit(behind[0]) && is_digit(behind[1]) && is_digit(behind[2]) &&
         (behind.size() == 3 || !is_digit(behind[3]));
}

// What is left of the field behind the number; nothing where it begins with none.
std::optional<std::string_view> take_digits(std::string_view field, NumberStyle style, Digits& to) {
  if (!field.empty() && (field.front() == '-' || field.front() == '+')) {
    if (field.front() == '-') to.add('-');
    field.remove_prefix(1);
  }
  const char other = style.decimal == '.' ? ',' : '.';
  bool seen_digit = false, seen_decimal = false;
  while (!field.empty()) {
    const char c = field.front();
    std::size_t mark = style.groups && c == other ? 1 : group_mark(field);
    if (is_digit(c)) {
      seen_digit = true;
      if (!to.add(c)) return std::nullopt;
    } else if (c == style.decimal && !seen_decimal) {
      seen_decimal = true;
      if (!to.add('.')) return std::nullopt;
    } else if ((c == 'e' || c == 'E') && seen_digit && field.size() > 1 &&
               (is_digit(field[1]) || field[1] == '-' || field[1] == '+')) {
      to.add('e');
      if (field[1] == '-') to.add('-');
      field.remove_prefix(is_digit(field[1]) ? 1 : 2);
      while (!field.empty() && is_digit(field.front()) && to.add(field.front())) {
        field.remove_prefix(1);
      }
      return field;
    } else if (mark > 0 && seen_digit && !seen_decimal && is_group(field.substr(mark))) {
      field.remove_prefix(mark);
      continue;
    } else {
      break;
    }
    field.remove_prefix(1);
  }
  if (!seen_digit) return std::nullopt;
  return field;
}

}  // namespace

std::optional<Number> number_of(std::string_view field, NumberStyle style) {
  Digits digits;
  const auto rest = take_digits(field, style, digits);
  if (!rest) return std::nullopt;
  Number number;
  if (!rest->empty()) {
    number.unit = unit_named(trimmed(*rest));
    if (!number.unit) return std::nullopt;
  }
  const char* const end = digits.text.data() + digits.size;
  const auto [stop, error] = std::from_chars(digits.text.data(), end, number.value);
  if (error != std::errc{} || stop != end || !std::isfinite(number.value)) return std::nullopt;
  return number;
}

bool says_no_value(std::string_view field) {
  return field.empty() || std::any_of(kNoValue.begin(), kNoValue.end(), [&](std::string_view word) {
           return same_word(field, word);
         });
}

void weigh(std::string_view field, char mark, MarkEvidence& evidence) {
  const char other = mark == '.' ? ',' : '.';
  const std::size_t first = field.find(mark);
  if (first == std::string_view::npos) return;
  const std::size_t last = field.rfind(mark);
  const std::size_t other_at = field.rfind(other);
  if (first != last) {
    evidence.thousands = true;
  } else if (other_at != std::string_view::npos) {
    (other_at > first ? evidence.thousands : evidence.decimal) = true;
  } else {
    const std::string_view before = field.substr(0, first);
    const auto digits = static_cast<std::size_t>(
        std::count_if(before.begin(), before.end(), [](char c) { return is_digit(c); }));
    const bool begins_with_zero = digits > 0 && before[before.size() - digits] == '0';
    const bool may_be_group =
        digits >= 1 && digits <= 3 && !begins_with_zero && is_group(field.substr(first + 1));
    (may_be_group ? evidence.either : evidence.decimal) = true;
  }
}

bool looks_like_number(std::string_view field) {
  return number_of(field, {'.', true}).has_value() || number_of(field, {',', true}).has_value();
}

}  // namespace wattweek::logs
