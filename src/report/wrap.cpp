#include "wattweek/report/wrap.hpp"

#include <algorithm>

#include "wattweek/diag/printable.hpp"

namespace wattweek::report {

using diag::bytes_within;
using diag::column_count;

std::vector<std::string> wrapped(std::string_view text, std::size_t columns) {
  std::vector<std::string> lines(1);
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::size_t used = column_count(lines.back());
    if (used > 0 && used + 1 + column_count(word) > columns) lines.emplace_back();
    if (!lines.back().empty()) lines.back() += ' ';
    while (column_count(word) > columns) {
      const std::size_t cut = std::max<std::size_t>(1, bytes_within(word, columns));
      lines.back() += word.substr(0, cut);
      lines.emplace_back();
      word.remove_prefix(cut);
    }
    lines.back() += word;
  }
  return lines;
}

std::string hanging(std::string_view first, std::string_view text, std::size_t columns) {
  const std::size_t indent = column_count(first);
  std::string out;
  std::string line(first);
  for (const std::string& words : wrapped(text, columns - std::min(indent, columns - 1))) {
    line += words;
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + '\n';
    line.assign(indent, ' ');
  }
  return out;
}

}  // namespace wattweek::report
