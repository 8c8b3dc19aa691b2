#include "csv_parts.hpp"

#include <fmt/format.h>

#include "numbers.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::report {

std::string csv_words(const std::string& text) {
  const std::string shown = diag::printable(text);
  const bool formula =
      !text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos;
  std::string cell = formula ? "\"'" : "\"";
  for (const char c : shown) cell += c == '"' ? std::string("\"\"") : std::string(1, c);
  return cell + '"';
}

std::string csv_figure(const std::optional<double>& value) { return value ? exact(*value) : ""; }

std::string csv_notes(const std::string& id, const std::vector<decide::Note>& notes) {
  std::string all;
  for (const decide::Note& note : notes) {
    const auto* candidate = std::get_if<std::string>(&note.where);
    if (candidate != nullptr && *candidate != id) continue;
    if (!all.empty()) all += " | ";
    const std::string place = candidate == nullptr ? fmt::format(" ({})", where_text(note)) : "";
    all += fmt::format("{}{}: {}", note.code, place, note.text);
  }
  return all;
}

void append_csv_line(std::string& out, const CsvRow& row, std::string CsvCell::*part) {
  for (std::size_t i = 0; i < row.size(); ++i) {
    out += (i > 0 ? "," : "") + row[i].*part;
  }
  out += "\r\n";
}

std::string csv_text(const std::vector<CsvRow>& rows) {
  std::string out;
  if (!rows.empty()) append_csv_line(out, rows.front(), &CsvCell::header);
  for (const CsvRow& row : rows) append_csv_line(out, row, &CsvCell::value);
  return out;
}

}  // namespace wattweek::report
