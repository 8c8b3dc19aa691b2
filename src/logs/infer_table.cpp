// Which character sets columns apart, where the rows begin, and what the columns are called.

#include <algorithm>
#include <array>
#include <map>

#include "headings.hpp"
#include "infer.hpp"
#include "lines.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

constexpr std::size_t kRowsToTry = 1'000;
// Of wide rows fewer are looked at, so that memory stays small.
constexpr std::size_t kFieldsToHold = 4'000'000;
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
  return stamp && has_possible_date(*stamp);
}

bool may_be_value(std::string_view field) {
  return !field.empty() && (looks_like_number(field) || says_no_value(field));
}

// A time and a value, in two fields; a number of many digits may be either.
bool is_row(const Fields& fields) {
  std::size_t times = 0, values = 0, both = 0;
  for (const std::string_view field : fields) {
    const bool time = may_be_time(field), value = may_be_value(field);
    times += time;
    values += value;
    both += time && value;
  }
  return times > 0 && values > 0 && times + values - both > 1;
}

// Rows of the width that most have.
struct Table {
  std::size_t width = 0;
  std::size_t rows = 0;
};

// What the lines are if `delimiter` sets their fields apart.
Table table_with(char delimiter, const std::vector<Line>& lines) {
  Fields fields;
  std::map<std::size_t, std::size_t> rows_by_width;
  for (const Line& line : lines) {
    split(line.text, delimiter, fields);
    if (is_row(fields)) ++rows_by_width[fields.size()];
  }
  Table table;
  for (const auto& [width, rows] : rows_by_width) {
    if (rows > table.rows) table = {width, rows};
  }
  return table;
}

std::optional<char> best_delimiter(const std::vector<Line>& lines) {
  std::optional<char> best;
  std::size_t most = 0;
  for (const char delimiter : kDelimiters) {
    const std::size_t rows = table_with(delimiter, lines).rows;
    // Another than the first must explain clearly more.
    if (rows > most + most / 10) {
      best = delimiter;
      most = rows;
    }
  }
  return best;
}

// Headings in Latin-1, as old programs write them, in UTF-8.
std::string in_utf8(std::string_view text) {
  if (diag::printable(text) == text) return std::string(text);
  std::string result;
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if (code >= 0x80) result += static_cast<char>(0xc0 | (code >> 6));
    result += static_cast<char>(code >= 0x80 ? 0x80 | (code & 0x3f) : code);
  }
  return result;
}

std::vector<std::string> headings(const Fields& fields) {
  std::vector<std::string> names;
  for (const std::string_view field : fields) names.push_back(in_utf8(field));
  return names;
}

// Headings name columns; a sentence before the table, or a row without time, does not.
bool may_be_headings(const Fields& fields, std::size_t width) {
  if (fields.size() < 2 || fields.size() + 1 < width || fields.size() > width + 1) return false;
  return std::none_of(fields.begin(), fields.end(), looks_like_number);
}

bool names_unit(std::string_view field) {
  const auto words = words_of(field);
  return words.size() == 1 && heading_of(field).unit.has_value();
}

// What names columns before the first row: a line, or one and a line of units below it.
std::vector<std::string> names_before(const std::vector<Line>& lines, std::size_t first,
                                      char delimiter, std::size_t width) {
  Fields fields, above;
  if (first == 0) return {};
  split(lines[first - 1].text, delimiter, fields);
  if (!may_be_headings(fields, width)) return {};
  std::vector<std::string> names = headings(fields);
  if (first < 2 || std::none_of(fields.begin(), fields.end(), names_unit)) return names;
  split(lines[first - 2].text, delimiter, above);
  if (above.size() != fields.size() || !may_be_headings(above, width)) return names;
  for (std::size_t c = 0; c < names.size(); ++c) {
    names[c] = in_utf8(above[c]) + (names_unit(fields[c]) ? " [" + names[c] + "]" : "");
  }
  return names;
}

// The names in a comment right above the first row, where they name what is measured.
std::vector<std::string> names_in_comment(std::string_view text, const Line& first, char delimiter,
                                          std::size_t width) {
  const std::string_view before =
      text.substr(0, static_cast<std::size_t>(first.text.data() - text.data()));
  if (before.size() < 2) return {};
  std::string_view line = before.substr(before.rfind('\n', before.size() - 2) + 1);
  line = take_line(line);
  if (line.empty() || line.front() != '#') return {};
  Fields fields;
  split(trimmed(line.substr(line.find_first_not_of('#') == std::string_view::npos
                                ? line.size()
                                : line.find_first_not_of('#'))),
        delimiter, fields);
  const bool names_value = std::any_of(fields.begin(), fields.end(), [](std::string_view field) {
    return heading_of(field).quantity != Quantity::unsaid;
  });
  if (fields.size() != width || !may_be_headings(fields, width) || !names_value) return {};
  return headings(fields);
}

// The columns in which a row may have its time.
std::vector<std::size_t> times_in(const Fields& fields) {
  std::vector<std::size_t> columns;
  for (std::size_t c = 0; c < fields.size(); ++c) {
    if (may_be_time(fields[c])) columns.push_back(c);
  }
  return columns;
}

// Where the rows begin: a preamble may have times, too, but not in the same columns of as many.
// Rows before the first one with a value may have none, or be wider by a comma in a remark.
std::size_t first_row(const std::vector<Line>& lines, char delimiter, std::size_t width) {
  Fields fields;
  std::size_t first = 0;
  for (; first < lines.size(); ++first) {
    split(lines[first].text, delimiter, fields);
    if (is_row(fields) && fields.size() == width) break;
  }
  const std::vector<std::size_t> times = times_in(fields);
  for (std::size_t i = first; i > 0 && first < lines.size(); --i) {
    split(lines[i - 1].text, delimiter, fields);
    if (fields.size() < width || times_in(fields) != times) break;
    first = i - 1;
  }
  return first;
}

Sample rows_of(std::string_view text, const std::vector<Line>& lines, char delimiter,
               std::size_t width) {
  Sample sample;
  const std::size_t first = first_row(lines, delimiter, width);
  if (first == lines.size()) return sample;
  sample.first_line = lines[first].number;
  sample.names = names_before(lines, first, delimiter, width);
  if (sample.names.empty()) sample.names = names_in_comment(text, lines[first], delimiter, width);
  Fields fields;
  std::size_t held = 0;
  for (std::size_t i = first; i < lines.size() && held < kFieldsToHold; ++i) {
    split(lines[i].text, delimiter, fields);
    held += fields.size();
    sample.add(fields, lines[i].number);
  }
  return sample;
}

bool has_clock_alone(std::string_view line) {
  Fields fields;
  for (const char delimiter : kDelimiters) {
    split(line, delimiter, fields);
    std::size_t clocks = 0, dates = 0;
    for (const std::string_view field : fields) {
      const auto stamp = stamp_of(field);
      if (stamp) ++(stamp->form == DateForm::none ? clocks : dates);
    }
    if (dates > 0) return false;
    if (fields.size() > 1 && clocks > 0) return true;
  }
  return false;
}

Refusal no_rows(const std::vector<Line>& lines, std::optional<char> delimiter) {
  if (lines.empty()) return {"there are no rows in this log"};
  if (has_clock_alone(lines.back().text)) {
    return {"there are clock times, but no dates; expected readings with date and time"};
  }
  constexpr std::size_t kShown = 60;
  return {"no row with a date and a number was found; the first line is '" +
          diag::printable(lines.front().text.substr(0, kShown)) +
          "'; expected columns separated by " +
          (delimiter ? "'" + std::string(1, *delimiter) + "' (--delimiter)"
                     : std::string("commas, semicolons, tabs or blanks, or JSON"))};
}

}  // namespace

std::variant<Sample, Refusal> infer_table(std::string_view text, std::optional<char> delimiter,
                                          char& chosen) {
  const std::vector<Line> few = lines_of(text, kRowsToTry);
  const auto best = delimiter ? delimiter : best_delimiter(few);
  if (!best) return no_rows(few, delimiter);
  chosen = *best;
  const std::size_t width = table_with(chosen, few).width;
  Sample sample = rows_of(text, lines_of(text, kInferredRows), chosen, width);
  if (sample.rows() == 0) return no_rows(few, delimiter);
  return sample;
}

}  // namespace wattweek::logs
