#include "cli/placeholder.hpp"

#include <algorithm>

namespace wattweek::cli {
namespace {

std::vector<std::string_view> between_bars(std::string_view text) {
  std::vector<std::string_view> words;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('|'), text.size());
    words.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return words;
}

}  // namespace

Accepted accepted_at(const Command& command, std::string_view placeholder) {
  const std::string_view name = bare(placeholder);
  if (name == "FORMAT") return {Place::word, command.formats};
  if (name == "COMMAND") return {Place::command};
  if (name == "DIR") return {Place::folder};
  if (name == "LOG" || name == "FILE") return {Place::file};
  if (name.find('|') != std::string_view::npos) return {Place::word, between_bars(name)};
  const std::size_t dot = name.rfind('.');
  if (dot != std::string_view::npos && dot + 1 < name.size())
    return {Place::file, {}, name.substr(dot)};
  return {};
}

std::string_view bare(std::string_view placeholder) {
  constexpr std::string_view kDots = "...";
  if (placeholder.size() > 1 && placeholder.front() == '[' && placeholder.back() == ']') {
    return bare(placeholder.substr(1, placeholder.size() - 2));
  }
  const bool repeats = placeholder.size() > kDots.size() && placeholder.ends_with(kDots);
  return repeats ? placeholder.substr(0, placeholder.size() - kDots.size()) : placeholder;
}

}  // namespace wattweek::cli
