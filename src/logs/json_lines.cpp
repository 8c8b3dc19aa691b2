#include "json_lines.hpp"

#include "wattweek/logs/read_log.hpp"

namespace wattweek::logs {

std::size_t end_of_value(std::string_view text, std::size_t at) {
  std::size_t depth = 0;
  bool in_string = false;
  for (; at < text.size(); ++at) {
    const char c = text[at];
    if (in_string) {
      at += c == '\\';
      in_string = c != '"';
    } else if (c == '"') {
      in_string = true;
    } else if (c == '{' || c == '[') {
      ++depth;
    } else if (c == '}' || c == ']') {
      if (depth-- <= 1) return at + 1;
    }
  }
  return std::string_view::npos;
}

std::size_t next_token(std::string_view text, std::size_t at) {
  return at < text.size() ? text.find_first_not_of(" \t\r\n", at) : std::string_view::npos;
}

std::string as_array(std::string text, bool& was_lines) {
  const std::size_t begin = next_token(text, 0);
  if (text[begin] != '{') return text;
  // A row is no longer than a line may be; a whole log often is.
  const std::string_view first = std::string_view(text).substr(0, begin + kLongestLine);
  std::size_t end = end_of_value(first, begin);
  std::size_t next = next_token(text, end);
  was_lines = next != std::string::npos && text[next] == '{';
  if (!was_lines) return text;
  std::string array = "[";
  std::size_t copied = 0;
  while (next != std::string::npos && text[next] == '{') {
    array.append(text, copied, end - copied);
    array += ',';
    copied = end;
    end = end_of_value(text, next);
    next = next_token(text, end);
  }
  array.append(text, copied);
  return array + "]";
}

}  // namespace wattweek::logs
