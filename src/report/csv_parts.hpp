#pragma once
// What all CSV of the program has in common (RFC 4180).

#include <optional>
#include <string>
#include <vector>

#include "wattweek/decide/notes.hpp"

namespace wattweek::report {

struct CsvCell {
  std::string header;
  std::string value;  ///< As it stands in the file: see `csv_words`, `csv_figure`.
};
using CsvRow = std::vector<CsvCell>;

/// Words of the user in quotes: what a spreadsheet would take for a formula gets an apostrophe in
/// front.
std::string csv_words(const std::string& text);

/// Full precision; empty where there is none.
std::string csv_figure(const std::optional<double>& value);

/// The notes about this candidate and those about the study: a row may be read alone.
std::string csv_notes(const std::string& id, const std::vector<decide::Note>& notes);

/// One part of every cell, as a line.
void append_csv_line(std::string& out, const CsvRow& row, std::string CsvCell::*part);

/// All rows below the headers of the first.
std::string csv_text(const std::vector<CsvRow>& rows);

}  // namespace wattweek::report
