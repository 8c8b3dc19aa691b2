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

/// Lines of characters that stand as they are, at two widths, between their title and what the
/// characters mean.
struct Picture {
  std::string title;
  std::string legend;
  std::vector<std::string> wide;
  std::vector<std::string> narrow;
};

using Block = std::variant<Table, Paragraph, List, Picture>;

struct Section {
  std::string heading;  ///< May be empty.
  std::vector<Block> blocks;
};

struct Document {
  std::string title;  ///< May be empty in plain text.
  std::vector<Section> sections;
};

/// Everything that is said about a study.
Document document(const model::Study& study, const decide::Assessment& assessment,
                  const std::vector<decide::Week>& weeks, Scope scope);

/// The bills of one month, line by line.
Document month_bills(const model::Study& study, const decide::Assessment& assessment,
                     std::size_t month);

/// Plain text, no line wider than the style's columns.
std::string lay_out_text(const Document& document, const Style& style);

std::string lay_out_markdown(const Document& document);

}  // namespace wattweek::report
