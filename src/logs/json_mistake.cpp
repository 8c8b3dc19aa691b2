#include "json_mistake.hpp"

#include <algorithm>
#include <string>

#include "json_lines.hpp"

namespace wattweek::logs {
namespace {

std::string_view why(simdjson::error_code code) {
  switch (code) {
    case simdjson::INCOMPLETE_ARRAY_OR_OBJECT:
    case simdjson::UNCLOSED_STRING:
    case simdjson::EMPTY:
      return "it ends within an object, an array or a text";
    case simdjson::TRAILING_CONTENT:
      return "something stands behind its end";
    case simdjson::UTF8_ERROR:
      return "its texts are not in UTF-8";
    case simdjson::NUMBER_ERROR:
      return "expected a number";
    case simdjson::STRING_ERROR:
      return "a text has an escape that is none";
    case simdjson::DEPTH_ERROR:
      return "objects and arrays are nested too deep";
    case simdjson::CAPACITY:
    case simdjson::MEMALLOC:
      return "it is too large to be held in memory";
    default:
      return "expected a comma, a colon, a value, or an end of the object or array";
  }
}

JsonMistake mistake_at(std::string_view text, std::size_t at, std::string message) {
  const std::string_view before = text.substr(0, at);
  const std::size_t line_begin = before.rfind('\n') + 1;
  return {1 + static_cast<std::uint64_t>(std::count(before.begin(), before.end(), '\n')),
          static_cast<int>(before.size() - line_begin) + 1, std::move(message)};
}

const char* first_line_not_utf8(std::string_view text) {
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    if (!simdjson::validate_utf8(text.data() + begin, end - begin)) break;
    begin = end + 1;
  }
  return text.data() + std::min(begin, text.size());
}

}  // namespace

JsonMistake mistake_of(std::string_view text, simdjson::error_code code, const char* at) {
  if (code == simdjson::INCOMPLETE_ARRAY_OR_OBJECT) {
    at = text.data() + text.size();
    const std::size_t behind = next_token(text, end_of_value(text, next_token(text, 0)));
    if (behind != std::string_view::npos) {
      at = text.data() + behind;
      code = simdjson::TRAILING_CONTENT;
    }
  }
  if (code == simdjson::UTF8_ERROR) at = first_line_not_utf8(text);
  const bool is_known = at >= text.data() && at <= text.data() + text.size();
  return mistake_at(text, is_known ? static_cast<std::size_t>(at - text.data()) : 0,
                    "this is no JSON: " + std::string(why(code)));
}

}  // namespace wattweek::logs
