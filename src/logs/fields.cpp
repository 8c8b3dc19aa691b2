#include "fields.hpp"

#include <algorithm>

namespace wattweek::logs {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t'; }

// The field that begins at `at`; `at` is moved to the delimiter after it, or to the end.
std::string_view quoted_field(std::string_view line, char delimiter, std::size_t& at) {
  const std::size_t begin = ++at;
  while (at < line.size() && (line[at] != '"' || line.substr(at, 2) == "\"\"")) {
    at += line[at] == '"' ? 2U : 1U;
  }
  const std::size_t end = std::min(at, line.size());
  at = std::min(line.find(delimiter, end), line.size());
  return line.substr(begin, end - begin);
}

std::string_view plain_field(std::string_view line, char delimiter, std::size_t& at) {
  const std::size_t begin = at;
  at = std::min(line.find(delimiter, at), line.size());
  return line.substr(begin, at - begin);
}

std::size_t skip_blanks(std::string_view line, std::size_t at, char delimiter) {
  while (at < line.size() && is_blank(line[at]) && (line[at] != delimiter || delimiter == ' ')) {
    ++at;
  }
  return at;
}

}  // namespace

void split(std::string_view line, char delimiter, Fields& fields) {
  fields.clear();
  std::size_t at = 0;
  if (delimiter == ' ') line = trimmed(line);
  while (true) {
    at = skip_blanks(line, at, delimiter);
    const bool quoted = at < line.size() && line[at] == '"';
    fields.push_back(
        trimmed(quoted ? quoted_field(line, delimiter, at) : plain_field(line, delimiter, at)));
    if (at >= line.size()) return;
    ++at;
  }
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

bool is_silent(std::string_view line) {
  line = trimmed(line);
  return line.empty() || line.front() == '#' || line.substr(0, 2) == "//";
}

}  // namespace wattweek::logs
