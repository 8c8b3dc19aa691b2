#include "wattweek/diag/markup.hpp"

#include "wattweek/diag/printable.hpp"

namespace wattweek::diag {
namespace {

std::string_view entity_of(char c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return "";
  }
}

// Puts `shown` in place of each `wanted`.
void replace_all(std::string& text, std::string_view wanted, std::string_view shown) {
  std::size_t at = 0;
  while ((at = text.find(wanted, at)) != std::string::npos) {
    text.replace(at, wanted.size(), shown);
    at += shown.size();
  }
}

}  // namespace

std::string markup_text(std::string_view text) {
  std::string safe;
  for (const char c : printable(text)) {
    const std::string_view entity = entity_of(c);
    entity.empty() ? safe += c : safe += entity;
  }
  // U+FFFE and U+FFFF are no Char: Extensible Markup Language 1.0 (fifth edition), production 2.
  replace_all(safe, "\xEF\xBF\xBE", "\\xEF\\xBF\\xBE");
  replace_all(safe, "\xEF\xBF\xBF", "\\xEF\\xBF\\xBF");
  return safe;
}

}  // namespace wattweek::diag
