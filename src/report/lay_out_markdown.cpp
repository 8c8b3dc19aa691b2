#include "document.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::report {
namespace {

/// Text in which no character means anything to Markdown or HTML.
std::string plain(const std::string& text) {
  std::string out;
  for (const char c : diag::printable(text)) {
    if (std::string_view("\\`*_[]<>#|~&$").find(c) != std::string_view::npos) out += '\\';
    out += c;
  }
  return out;
}

void append_row(std::string& out, const std::vector<std::string>& cells) {
  for (const std::string& cell : cells) out += "| " + plain(cell) + (cell.empty() ? "" : " ");
  out += "|\n";
}

void append(std::string& out, const Table& table) {
  std::vector<std::string> header;
  for (const Column& column : table.columns) header.push_back(column.header);
  append_row(out, header);
  for (const Column& column : table.columns) {
    out += column.align == Align::left ? "| :-- " : "| --: ";
  }
  out += "|\n";
  for (const auto& row : table.rows) append_row(out, row);
  out += '\n';
}

void append(std::string& out, const Paragraph& paragraph) { out += plain(paragraph.text) + "\n\n"; }

void append(std::string& out, const List& list) {
  for (const std::string& item : list.items) out += "- " + plain(item) + '\n';
  out += '\n';
}

void append(std::string& out, const Picture& picture) {
  out += plain(picture.title) + "\n\n```text\n";
  for (const std::string& line : picture.wide) out += line + '\n';
  out += "```\n\n" + plain(picture.legend) + "\n\n";
}

}  // namespace

std::string lay_out_markdown(const Document& document) {
  std::string out = "## " + plain(document.title) + "\n\n";
  for (const Section& section : document.sections) {
    if (!section.heading.empty()) out += "### " + plain(section.heading) + "\n\n";
    for (const Block& block : section.blocks) {
      std::visit([&](const auto& kind) { append(out, kind); }, block);
    }
  }
  out.pop_back();  // The last block's empty line.
  return out;
}

}  // namespace wattweek::report
