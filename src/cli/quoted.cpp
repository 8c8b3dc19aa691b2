#include "cli/quoted.hpp"

namespace wattweek::cli {

bool is_plain(std::string_view text) {
  constexpr std::string_view kPlain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-./";
  return !text.empty() && text.find_first_not_of(kPlain) == std::string_view::npos;
}

std::string single_quoted(std::string_view text) {
  if (is_plain(text)) return std::string(text);
  std::string quoted = "'";
  for (const char c : text) quoted += c == '\'' ? std::string(R"('\'')") : std::string(1, c);
  return quoted + '\'';
}

std::string backslashed(std::string_view text, std::string_view characters) {
  std::string marked;
  for (const char c : text) {
    if (characters.find(c) != std::string_view::npos) marked += '\\';
    marked += c;
  }
  return marked;
}

}  // namespace wattweek::cli
