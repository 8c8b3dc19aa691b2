#include "syntax_error.hpp"

#include <optional>

#include "slips.hpp"
#include "value.hpp"

namespace wattweek::read {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); }
bool starts_with(std::string_view text, std::string_view start) {
  return text.substr(0, start.size()) == start;
}
bool holds(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

// The value, or what there is of it, around a place in a line, and the key before it.
struct Spot {
  std::string_view key;    // empty where no `=` stands before the place
  std::string_view token;  // what stands for a value
  bool has_equals = false;
};

// A comma with digits at both sides is taken for a decimal comma.
bool ends_token(std::string_view line, std::size_t i) {
  const char c = line[i];
  if (c == ']' || c == '}' || c == '#') return true;
  return c == ',' &&
         !(i > 0 && i + 1 < line.size() && is_digit(line[i - 1]) && is_digit(line[i + 1]));
}

Spot spot_at(std::string_view line, std::size_t column) {
  const std::string_view before = code_points(line, 0, column == 0 ? 0 : column - 1);
  const std::size_t equals = before.rfind('=');
  if (equals == std::string_view::npos) return {};
  const std::size_t opened = before.find_last_of("=[{,");
  std::size_t end = opened + 1;
  while (end < line.size() && !ends_token(line, end)) ++end;
  std::string_view key = trimmed(line.substr(0, equals));
  const std::size_t cut = key.find_last_of("{,[ ");
  if (cut != std::string_view::npos) key.remove_prefix(cut + 1);
  return {key, trimmed(line.substr(opened + 1, end - opened - 1)), true};
}

// H:MM or HH:MM at the start.
bool looks_like_clock(std::string_view token) {
  const std::size_t colon = token.find(':');
  if (colon == 0 || colon > 2 || colon + 1 >= token.size()) return false;
  for (std::size_t i = 0; i < colon; ++i) {
    if (!is_digit(token[i])) return false;
  }
  return is_digit(token[colon + 1]);
}

// 2027-..., 01.02.2027, 1/2/2027: digits, and twice the same mark.
bool looks_like_date(std::string_view token) {
  const std::size_t mark = token.find_first_not_of("0123456789");
  if (mark == std::string_view::npos || mark == 0 || mark > 4) return false;
  const char c = token[mark];
  const std::size_t second = token.find(c, mark + 1);
  return (c == '-' || c == '.' || c == '/') && second != std::string_view::npos &&
         second > mark + 1;
}

bool has_typographic_quote(std::string_view token) {
  for (const std::string_view quote : {"“", "”", "„", "‘", "’", "«", "»"}) {
    if (holds(token, quote)) return true;
  }
  return false;
}

std::string write_quoted(const Spot& spot) {
  return "write " + shortened(spot.key) + " = " + in_quotes(spot.token);
}

std::string quote_advice(std::string_view token) {
  const char quote = token.front();
  if (quote != '"' && quote != '\'') return "";
  if (token.find(quote, 1) == std::string_view::npos) return "the text has no closing quote";
  return "";
}

std::string figure_advice(std::string_view token) {
  const std::string advice = number_advice(token, Unit::none).value_or("");
  if (advice == "write " + std::string(token)) return "";  // nothing new
  return advice.empty() ? "" : "not a number as TOML writes it; " + advice;
}

// What is wrong with a value, as far as its look tells.
std::string value_advice(const Spot& spot) {
  const std::string_view token = spot.token;
  if (token.front() == '=') return "one = is enough";
  if (has_typographic_quote(token))
    return "the quotes are typographic ones; write plain \" instead";
  if (looks_like_clock(token)) return "a time needs quotes; " + write_quoted(spot);
  if (looks_like_date(token) && holds(token, ".."))
    return "dates need quotes; " + write_quoted(spot);
  if (looks_like_date(token)) return "no date of the calendar; expected one such as 2027-01-31";
  if (std::string advice = figure_advice(token); !advice.empty()) return advice;
  if (is_letter(token.front()) || token.front() == '/' || starts_with(token, "./") ||
      starts_with(token, "../")) {
    return "text needs quotes; " + write_quoted(spot);
  }
  return quote_advice(token);
}

std::string value_problem(const Spot& spot) {
  const std::string key = shortened(spot.key);
  if (spot.token.empty()) return key + ": the value is missing";
  const std::string advice = value_advice(spot);
  const std::string equals = spot.token.front() == '=' ? " =" : " = ";
  return advice.empty() ? "" : key + equals + shortened(spot.token) + ": " + advice;
}

// The name in `cannot redefine existing table 'candidate.device'`.
std::string redefined_name(std::string_view description) {
  const std::size_t first = description.find('\'');
  const std::size_t last = description.rfind('\'');
  return first < last ? std::string(description.substr(first + 1, last - first - 1)) : "";
}

std::string redefinition_problem(std::string_view description, bool is_header) {
  if (holds(description, "as dotted key-value pair")) {
    return "a key before the dot has a value already: expected either that value or keys below it";
  }
  const std::string name = shortened(redefined_name(description));
  if (!is_header) return "the key " + name + " is given twice: expected it once in a table";
  const bool is_repeated = holds(description, "as array-of-tables");
  if (is_repeated && holds(description, "existing table")) {
    return "[[" + name + "]]: the table [" + name + "] is there already; expected [[" + name +
           "]] every time";
  }
  const std::string header = is_repeated ? "[[" + name + "]]" : "[" + name + "]";
  if (!is_repeated && holds(description, "existing array")) {
    return header + ": there are tables [[" + name + "]] already; expected [[" + name +
           "]] with double brackets";
  }
  if (holds(description, "existing table")) {
    return header + ": this table is there already; expected it once, or [[" + name +
           "]] every time where there may be several";
  }
  return header + ": there is a key of this name already; expected either the key or the table";
}

std::string inline_table_advice(std::string_view description) {
  if (!holds(description, "inline table")) return "";
  if (holds(description, "dangling comma")) return "no comma is allowed before the closing }";
  if (holds(description, "saw '\\n'")) {
    return "a table in braces stands on one line; for more lines give it a [header] of its own";
  }
  return "";
}

// What stands behind a value or a header that is whole.
std::string line_end_advice(std::string_view description) {
  if (holds(description, "saw ';'")) return "a line ends without ;";
  if (holds(description, "expected a comment or whitespace")) {
    return "only a comment after # may follow on this line";
  }
  return "";
}

// A line that is neither KEY = VALUE nor a header.
std::string line_advice(std::string_view line) {
  const std::string_view text = trimmed(line);
  if (starts_with(text, "//") || starts_with(text, ";") || starts_with(text, "/*")) {
    return "a comment starts with #";
  }
  const std::size_t equals = text.find('=');
  const std::size_t colon = text.find(':');
  if (colon < equals) return "write KEY = VALUE, with = in place of :";
  if (equals == 0) return "the key is missing: expected KEY = VALUE";
  if (equals != std::string_view::npos) {
    return "a key has only the letters a-z and A-Z, digits, - and _, or stands in quotes";
  }
  return "expected KEY = VALUE, [TABLE] or [[TABLE]], or a comment after #";
}

// "Error while parsing array: expected comma, saw '2'" -> "cannot read this array: ..."
std::string in_plain_words(std::string_view description) {
  constexpr std::string_view kPrefix = "Error while parsing ";
  if (starts_with(description, kPrefix)) description.remove_prefix(kPrefix.size());
  std::string text;
  for (const char c : description) text += c == '\n' ? ' ' : c;
  if (const std::size_t saw = text.rfind(", saw "); saw != std::string::npos) {
    text.replace(saw, 6, ", found ");
    if (holds(text, "found '\\n'")) text.replace(text.find("'\\n'"), 4, "the end of the line");
  }
  return "cannot read this " + text;
}

}  // namespace

std::string syntax_problem(const File& file, toml::source_position at,
                           std::string_view description) {
  const std::string_view line = file.line(at.line);
  const bool is_header = starts_with(trimmed(line), "[");
  if (holds(description, "cannot redefine")) return redefinition_problem(description, is_header);
  if (std::string advice = inline_table_advice(description); !advice.empty()) return advice;
  if (holds(description, "maximum nested")) return "brackets are nested too deeply";
  if (holds(description, "blank bare keys")) return "a header needs a name";
  const Spot spot = spot_at(line, at.column);
  const bool in_array = holds(description, "parsing array");
  std::string problem;
  if (spot.has_equals) {
    problem = value_problem(spot);
  } else if (!in_array && !is_header) {
    problem = line_advice(line);
  }
  if (problem.empty()) problem = line_end_advice(description);
  if (problem.empty() && in_array) return "an array lacks a comma or its closing ]";
  return problem.empty() ? in_plain_words(description) : problem;
}

}  // namespace wattweek::read
