#include "text_check.hpp"

#include <algorithm>

namespace wattweek::read {

namespace {

// No key of ours has more than five parts. The parser takes any number, makes a table of each,
// and needs the stack to delete them again; its own limit of 256 counts brackets only.
constexpr int kMostKeyParts = 16;

unsigned byte_at(std::string_view text, std::size_t i) {
  return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
}

bool continues(std::string_view text, std::size_t i) { return (byte_at(text, i) & 0xC0U) == 0x80U; }

// Length of the UTF-8 sequence that starts at i, 0 where there is none (RFC 3629, section 4).
std::size_t sequence_length(std::string_view text, std::size_t i) {
  const unsigned first = byte_at(text, i);
  const unsigned second = byte_at(text, i + 1);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return continues(text, i + 1) ? 2 : 0;
  const bool three = continues(text, i + 1) && continues(text, i + 2);
  if (first == 0xE0) return three && second >= 0xA0 ? 3 : 0;
  if (first == 0xED) return three && second <= 0x9F ? 3 : 0;  // no surrogates
  if (first >= 0xE1 && first <= 0xEF) return three ? 3 : 0;
  const bool four = three && continues(text, i + 3);
  if (first == 0xF0) return four && second >= 0x90 ? 4 : 0;
  if (first >= 0xF1 && first <= 0xF3) return four ? 4 : 0;
  return first == 0xF4 && four && second <= 0x8F ? 4 : 0;
}

std::optional<TextFault> encoding_fault(std::string_view text) {
  const std::string_view mark = text.substr(0, 2);
  if (mark == "\xFF\xFE" || mark == "\xFE\xFF") {
    return TextFault{0, "the text is UTF-16; expected UTF-8: save it as UTF-8"};
  }
  if (const std::size_t nul = text.find('\0'); nul != std::string_view::npos) {
    return TextFault{nul, "not a text file: it holds a NUL byte; expected TOML text in UTF-8"};
  }
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = sequence_length(text, i);
    if (length == 0) {
      return TextFault{i, "not UTF-8 text from here on; expected TOML text: save it as UTF-8"};
    }
    i += length;
  }
  return std::nullopt;
}

// Where the text, comment or quotes that starts at i ends.
std::size_t end_of_quotes(std::string_view text, std::size_t i) {
  const char quote = text[i];
  const std::string three(3, quote);
  const bool is_long = text.substr(i, 3) == three;
  i += is_long ? 3 : 1;
  for (; i < text.size(); ++i) {
    if (text[i] == '\\' && quote == '"') {
      ++i;
    } else if (is_long ? text.substr(i, 3) == three : text[i] == quote || text[i] == '\n') {
      return i + (is_long ? 3 : 1);
    }
  }
  return text.size();
}

// Counts the dots between the marks that end a key; quotes and comments are passed over.
std::optional<TextFault> depth_fault(std::string_view text) {
  int dots = 0;
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    if (c == '"' || c == '\'') {
      i = end_of_quotes(text, i);
      continue;
    }
    if (c == '#') i = std::min(text.find('\n', i), text.size() - 1);
    if (c == '#' || c == '\n' || c == '=' || c == ',' || c == '[' || c == '{') dots = 0;
    if (c == '.' && ++dots > kMostKeyParts) {
      return TextFault{i, "a key of more than 16 parts; no key here has more than 5"};
    }
    ++i;
  }
  return std::nullopt;
}

}  // namespace

std::optional<TextFault> text_fault(std::string_view text) {
  if (auto fault = encoding_fault(text)) return fault;
  return depth_fault(text);
}

}  // namespace wattweek::read
