#pragma once
// What is to be said, before it is laid out: headings, tables and sentences. Text and Markdown
// show the same document. Names in it are as the user wrote them; the layouts make them safe.

#include <string>
#include <variant>
#include <vector>

#include "wattweek/report/report.hpp"

namespace wattweek::report {

/// Columns of figures stand to the right, those of words to the left.
enum class Align { left, right };

struct Column {
  std::string header;
  Align align = Align::right;
};

struct Table {
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
};

struct Paragraph {
  std::string text;
};

struct List {
  std::vector<std::string> items;
};

using Block = std::variant<Table, Paragraph, List>;

struct Section {
  std::string heading;  ///< May be empty.
  std::vector<Block> blocks;
};

struct Document {
  std::string title;
  std::vector<Section> sections;
};

/// Everything that is said about a study.
Document document(const model::Study& study, const decide::Assessment& assessment, Scope scope);

/// Plain text, lines at most `columns` wide where words allow it.
std::string lay_out_text(const Document& document, int columns);

std::string lay_out_markdown(const Document& document);

}  // namespace wattweek::report
