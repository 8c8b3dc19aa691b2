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
// Apostrophes and blanks, the last one in Latin-1.
constexpr std::array<std::string_view, 7> kGroupMarks = {
    "'", " ", "\xe2\x80\x99", "\xe2\x80\xaf", "\xe2\x80\x89", "\xc2\xa0", "\xa0"};
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

// Thousands marks stand between digits, three to a group behind them.
bool is_group(std::string_view behind) {
  return behind.size() >= 3 && is_digit(behind[0]) && is_digit(behind[1]) && is_digit(behind[2]) &&
         (behind.size() == 3 || !is_digit(behind[3]));
}

// Takes a number off the beginning of a field.
class NumberScanner {
 public:
  NumberScanner(std::string_view field, NumberStyle style)
      : rest_(field), style_(style), other_(style.decimal == '.' ? ',' : '.') {}

  // False where the field begins with no number.
  bool take() {
    take_sign("+-");
    while (take_digit() || take_group_mark()) {
    }
    if (style_.decimal != kNoMark && !rest_.empty() && rest_.front() == style_.decimal) {
      add('.');
      while (take_digit()) {
      }
    }
    if (has_digit_) take_exponent();
    return has_digit_ && fits_;
  }

  std::string_view rest() const { return rest_; }
  std::string_view digits() const { return {text_.data(), size_}; }

 private:
  // Puts `c` for the first character of the rest.
  void add(char c) {
    rest_.remove_prefix(1);
    fits_ = fits_ && size_ < text_.size();
    if (fits_) text_[size_++] = c;
  }

  bool take_digit() {
    if (rest_.empty() || !is_digit(rest_.front())) return false;
    has_digit_ = true;
    add(rest_.front());
    return true;
  }

  void take_sign(std::string_view signs) {
    if (rest_.empty() || signs.find(rest_.front()) == std::string_view::npos) return;
    if (rest_.front() == '-') return add('-');
    rest_.remove_prefix(1);
  }

  bool take_group_mark() {
    if (!has_digit_ || rest_.empty()) return false;
    const std::size_t length = style_.groups && rest_.front() == other_ ? 1 : group_mark(rest_);
    if (length == 0 || !is_group(rest_.substr(length))) return false;
    rest_.remove_prefix(length);
    return true;
  }

  void take_exponent() {
    if (rest_.size() < 2 || (rest_[0] != 'e' && rest_[0] != 'E')) return;
    const bool has_sign = rest_[1] == '-' || rest_[1] == '+';
    if (rest_.size() < (has_sign ? 3U : 2U) || !is_digit(rest_[has_sign ? 2 : 1])) return;
    add('e');
    take_sign("+-");
    while (take_digit()) {
    }
  }

  std::string_view rest_;
  NumberStyle style_;
  char other_;
  bool has_digit_ = false;
  bool fits_ = true;
  std::array<char, kLongestNumber> text_{};  // As `from_chars` takes it.
  std::size_t size_ = 0;
};

// Most numbers are written as `from_chars` takes them.
std::optional<Number> plain_number(std::string_view field, NumberStyle style) {
  if (style.decimal != '.' || field.empty() || !is_digit(field.front())) return std::nullopt;
  Number number;
  const char* const end = field.data() + field.size();
  const auto [stop, error] = std::from_chars(field.data(), end, number.value);
  const bool is_whole = error == std::errc{} && stop == end && field.size() <= kLongestNumber;
  return is_whole ? std::optional(number) : std::nullopt;
}

}  // namespace

std::optional<Number> number_of(std::string_view field, NumberStyle style) {
  if (const auto plain = plain_number(field, style)) return plain;
  NumberScanner scanner(field, style);
  if (!scanner.take()) return std::nullopt;
  Number number;
  if (!scanner.rest().empty()) {
    number.unit = unit_named(trimmed(scanner.rest()));
    if (!number.unit) return std::nullopt;
  }
  const std::string_view digits = scanner.digits();
  const char* const end = digits.data() + digits.size();
  const auto [stop, error] = std::from_chars(digits.data(), end, number.value);
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
