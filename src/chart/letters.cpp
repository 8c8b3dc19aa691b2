#include "letters.hpp"

#include <algorithm>

#include "wattweek/diag/printable.hpp"

namespace wattweek::chart {
namespace {

constexpr std::string_view kEllipsis = "…";

// Bytes of the first character. \pre valid UTF-8, not empty.
std::size_t first_bytes(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  return lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
}

// Parts of the font size, a little more than common sans-serif fonts take (measured by eye, no
// source).
double em_of(std::string_view character) {
  const char c = character.front();
  if (character.size() > 1) return diag::column_count(character) == 2 ? 1.05 : 0.68;
  if (std::string_view("ijl.,:;'|!").find(c) != std::string_view::npos) return 0.34;
  if (std::string_view(" frtI()[]-/\"").find(c) != std::string_view::npos) return 0.42;
  if (std::string_view("mMwW@%").find(c) != std::string_view::npos) return 1.0;
  if (c >= 'A' && c <= 'Z') return 0.76;
  return 0.64;
}

// Bytes of the longest beginning that fits.
std::size_t bytes_that_fit(std::string_view text, double width, double size) {
  std::size_t bytes = 0;
  while (bytes < text.size()) {
    const std::string_view character = text.substr(bytes, first_bytes(text.substr(bytes)));
    width -= em_of(character) * size;
    if (width < 0) break;
    bytes += character.size();
  }
  return bytes;
}

// Where the longest end that fits begins.
std::size_t end_that_fits(std::string_view text, double width, double size) {
  std::size_t begin = 0;
  while (begin < text.size() && text_width(text.substr(begin), size) > width) {
    begin += first_bytes(text.substr(begin));
  }
  while (begin < text.size() && text[begin] == ' ') ++begin;
  return begin;
}

// Bytes of the first line: up to the last space that fits, or all that fits of a long word; at
// least one character.
std::size_t line_bytes(std::string_view text, double width, double size) {
  const std::size_t fits = bytes_that_fit(text, width, size);
  if (fits == text.size()) return fits;
  const std::size_t space = text.substr(0, fits + 1).rfind(' ');
  if (space != std::string_view::npos && space > 0) return space;
  return std::max(fits, first_bytes(text));
}

}  // namespace

double text_width(std::string_view text, double size) {
  double em = 0;
  while (!text.empty()) {
    const std::size_t bytes = first_bytes(text);
    em += em_of(text.substr(0, bytes));
    text.remove_prefix(bytes);
  }
  return em * size;
}

std::string shortened(std::string_view text, double width, double size) {
  std::string shown = diag::printable(text);
  if (text_width(shown, size) <= width) return shown;
  constexpr double kEndShare = 0.35;
  const double room = width - text_width(kEllipsis, size);
  const std::size_t end = end_that_fits(shown, room * kEndShare, size);
  std::string cut = shown.substr(0, bytes_that_fit(shown, room * (1 - kEndShare), size));
  cut.resize(cut.find_last_not_of(' ') + 1);
  return cut.append(kEllipsis).append(shown, end);
}

std::vector<std::string> wrapped(std::string_view text, const Room& room, double size) {
  const std::string shown = diag::printable(text);
  std::string_view rest = shown;
  std::vector<std::string> lines;
  double width = room.first_width;
  while (lines.size() + 1 < room.most_lines && text_width(rest, size) > width) {
    const std::size_t bytes = line_bytes(rest, width, size);
    lines.emplace_back(rest.substr(0, bytes));
    rest.remove_prefix(bytes);
    if (rest.starts_with(' ')) rest.remove_prefix(1);
    width = room.width;
  }
  if (lines.empty() || !rest.empty()) lines.push_back(shortened(rest, width, size));
  return lines;
}

}  // namespace wattweek::chart
