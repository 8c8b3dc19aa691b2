#pragma once
// A field, taken apart character by character.

#include <optional>
#include <string_view>

#include "words.hpp"

namespace wattweek::logs {

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }
inline bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// Takes a text apart from left to right. What is not there is not taken.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  bool is_over() const { return rest_.empty(); }
  std::size_t left() const { return rest_.size(); }
  char next() const { return rest_.empty() ? '\0' : rest_.front(); }

  bool take(char c) {
    if (next() != c) return false;
    rest_.remove_prefix(1);
    return true;
  }

  bool take_any(std::string_view accepted) {
    if (rest_.empty() || accepted.find(rest_.front()) == std::string_view::npos) return false;
    rest_.remove_prefix(1);
    return true;
  }

  void skip(std::string_view accepted) {
    while (take_any(accepted)) {
    }
  }

  // Blanks, unbreakable ones too.
  void skip_blanks() {
    while (take(' ') || take_text("\xc2\xa0") || take_text("\xe2\x80\xaf")) {
    }
  }

  bool take_text(std::string_view text) {
    if (!same_word(rest_.substr(0, text.size()), text)) return false;
    rest_.remove_prefix(text.size());
    return true;
  }

  std::size_t digits_ahead() const {
    std::size_t digits = 0;
    while (digits < rest_.size() && is_digit(rest_[digits])) ++digits;
    return digits;
  }

  // A number of so many digits. \pre digits_ahead() >= digits, digits <= 9
  int take_number(std::size_t digits) {
    int number = 0;
    for (std::size_t i = 0; i < digits; ++i) number = number * 10 + (rest_[i] - '0');
    rest_.remove_prefix(digits);
    return number;
  }

  std::optional<int> take_short_number() {
    const std::size_t digits = digits_ahead();
    if (digits < 1 || digits > 2) return std::nullopt;
    return take_number(digits);
  }

  std::string_view take_word() {
    std::size_t letters = 0;
    while (letters < rest_.size() && is_letter(rest_[letters])) ++letters;
    const std::string_view word = rest_.substr(0, letters);
    rest_.remove_prefix(word.size());
    return word;
  }

  bool take_word(std::string_view word) {
    Scanner trial(rest_);
    if (!same_word(trial.take_word(), word)) return false;
    *this = trial;
    return true;
  }

 private:
  std::string_view rest_;
};

}  // namespace wattweek::logs
