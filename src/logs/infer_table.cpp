// Which character sets columns apart, where the rows begin, and what the columns are called.

#include <algorithm>
#include <array>
#include <map>

#include "infer.hpp"
#include "lines.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

constexpr std::size_t kRowsToTry = 1'000;
// The blank comes last: it stands within time stamps, too.
constexpr std::array<char, 5> kDelimiters = {'\t', ';', ',', '|', ' '};

struct Line {
  std::string_view text;
  std::uint64_t number;
};

std::vector<Line> lines_of(std::string_view text, std::size_t most) {
  std::vector<Line> lines;
  for (std::uint64_t number = 1; !text.empty() && lines.size() < most; ++number) {
    const std::string_view line = take_line(text);
    if (!is_silent(line)) lines.push_back({line, number});
  }
  return lines;
}

// Whether a field may be the time of a row, or the date in it.
bool may_be_time(std::string_view field) {
  if (epoch_us(field, '.') || epoch_us(field, ',')) return true;
  const auto stamp = stamp_of(field);
  return stamp && stamp->form != DateForm::none;
}

bool has_time(const Fields& fields) {
  return std::any_of(fields.begin(), fields.end(), may_be_time);
}

bool has_value(const Fields& fields) {
  return std::any_of(fields.begin(), fields.end(), [](std::string_view field) {
    return !may_be_time(field) &&
           (looks_like_number(field) || (!field.empty() && says_no_value(field)));
  });
}

// How many of the lines are rows if `delimiter` sets their fields apart.
std::size_t rows_with(char delimiter, const std::vector<Line>& lines) {
  Fields fields;
  std::map<std::size_t, std::size_t> rows_by_width;
  for (const Line& line : lines) {
    split(line.text, delimiter, fields);
    if (fields.size() > 1 && has_time(fields) && has_value(fields)) ++rows_by_width[fields.size()];
  }
  std::size_t most = 0;
  for (const auto& [width, rows] : rows_by_width) most = std::max(most, rows);
  return most;
}

std::optional<char> best_delimiter(const std::vector<Line>& lines) {
  std::optional<char> best;
  std::size_t most = 0;
  for (const char delimiter : kDelimiters) {
    const std::size_t rows = rows_with(delimiter, lines);
    // Another than the first must explain clearly more.
    if (rows > most + most / 10) {
      best = delimiter;
      most = rows;
    }
  }
  return best;
}

std::vector<std::string> headings(const Fields& fields) {
  std::vector<std::string> names;
  for (const std::string_view field : fields) names.emplace_back(field);
  return names;
}

// Headings name columns; a sentence before the table, or a row without time, does not.
bool may_be_headings(const Fields& fields, std::size_t width) {
  if (fields.size() + 1 < width || fields.size() > width + 1) return false;
  return std::none_of(fields.begin(), fields.end(), looks_like_number);
}

Sample rows_of(const std::vector<Line>& lines, char delimiter) {
  Sample sample;
  Fields fields, before;
  for (const Line& line : lines) {
    split(line.text, delimiter, fields);
    if (sample.rows() == 0 && !(fields.size() > 1 && has_time(fields))) {
      before = fields;
      continue;
    }
    if (sample.rows() == 0) {
      sample.first_line = line.number;
      if (may_be_headings(before, fields.size())) sample.names = headings(before);
    }
    sample.add(fields, line.number);
  }
  return sample;
}

Refusal no_rows(const std::vector<Line>& lines) {
  if (lines.empty()) return {"there are no rows in this log"};
  constexpr std::size_t kShown = 60;
  return {"no row with a date and a number was found; the first line is '" +
          diag::printable(lines.front().text.substr(0, kShown)) +
          "'; expected columns set apart by commas, semicolons, tabs or blanks, or JSON"};
}

}  // namespace

std::variant<Sample, Refusal> infer_table(std::string_view text, std::optional<char> delimiter,
                                          char& chosen) {
  const std::vector<Line> few = lines_of(text, kRowsToTry);
  const auto best = delimiter ? delimiter : best_delimiter(few);
  if (!best) return no_rows(few);
  chosen = *best;
  Sample sample = rows_of(lines_of(text, kInferredRows), chosen);
  if (sample.rows() == 0) return no_rows(few);
  return sample;
}

}  // namespace wattweek::logs
