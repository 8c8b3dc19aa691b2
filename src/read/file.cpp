#include "file.hpp"

#include <algorithm>
#include <utility>

namespace wattweek::read {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::size_t kLongestShown = 60;

std::string_view without_mark(std::string_view text) {
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) {
    text.remove_prefix(kByteOrderMark.size());
  }
  return text;
}

std::vector<std::size_t> starts_of_lines(std::string_view text) {
  std::vector<std::size_t> starts{0};
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\n') starts.push_back(i + 1);
  }
  return starts;
}

bool continues_code_point(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

bool is_ascii(char byte) { return static_cast<unsigned char>(byte) < 0x80; }

std::string_view without_trailing_blanks(std::string_view text) {
  const std::size_t last = text.find_last_not_of(" \t\r");
  return last == std::string_view::npos ? std::string_view() : text.substr(0, last + 1);
}

}  // namespace

File::File(const SourceText& source, FileKind kind)
    : name_(std::make_shared<const std::string>(source.name)),
      kind_(kind),
      text_(without_mark(source.text)),
      is_ascii_(std::all_of(text_.begin(), text_.end(), is_ascii)),
      line_starts_(starts_of_lines(text_)) {}

diag::Place File::place(toml::source_position position) const {
  if (position.line == 0) return start();
  return {name_, static_cast<int>(position.line), static_cast<int>(position.column)};
}

diag::Place File::place_of_byte(std::size_t offset) const {
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  const std::size_t line_start = *(after - 1);
  int column = 1;
  for (std::size_t i = line_start; i < offset; ++i) {
    if (!continues_code_point(text_[i])) ++column;
  }
  return {name_, static_cast<int>(after - line_starts_.begin()), column};
}

std::string_view File::line(std::size_t number) const {
  if (number == 0 || number > line_starts_.size()) return {};
  const std::size_t start = line_starts_[number - 1];
  const std::size_t end = text_.find('\n', start);
  return without_trailing_blanks(text_.substr(start, end == text_.npos ? end : end - start));
}

std::string File::typed(const toml::source_region& region) const {
  const toml::source_position begin = region.begin;
  const toml::source_position end = region.end;
  const bool one_line = begin.line == end.line;
  const std::size_t first = begin.column == 0 ? 0 : begin.column - 1;
  const std::size_t length =
      one_line && end.column > begin.column ? end.column - begin.column : std::string_view::npos;
  const std::string_view whole = line(begin.line);
  const std::string_view part = is_ascii_ ? whole.substr(std::min(first, whole.size()), length)
                                          : code_points(whole, first, length);
  const std::string_view all = without_trailing_blanks(part);
  const std::string_view shown = code_points(all, 0, kLongestShown);
  const bool cut = !one_line || shown.size() < all.size();
  return std::string(shown) + (cut ? "..." : "");
}

void File::report(diag::Place place, std::string message) {
  problems_.push_back({std::move(place), std::move(message)});
}

std::string stem(std::string_view path) {
  const std::size_t folder = path.find_last_of('/');
  if (folder != std::string_view::npos) path.remove_prefix(folder + 1);
  const std::size_t dot = path.find_last_of('.');
  if (dot != std::string_view::npos && dot > 0) path = path.substr(0, dot);
  return std::string(path);
}

std::string_view code_points(std::string_view text, std::size_t first, std::size_t count) {
  std::size_t begin = text.size();
  std::size_t end = text.size();
  std::size_t seen = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (continues_code_point(text[i])) continue;
    if (seen == first) begin = i;
    if (seen >= first && seen - first == count) {
      end = i;
      break;
    }
    ++seen;
  }
  return text.substr(begin, end - begin);
}

}  // namespace wattweek::read
