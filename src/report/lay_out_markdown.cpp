#include "markdown_parts.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::report {
namespace {

void append_row(std::string& out, const std::vector<std::string>& cells) {
  for (const std::string& cell : cells)
    out += "| " + plain_markdown(cell) + (cell.empty() ? "" : " ");
  out += "|\n";
}

}  // namespace

std::string plain_markdown(std::string_view text) {
  std::string out;
  for (const char c : diag::printable(text)) {
    if (std::string_view("\\`*_[]<>#|~&$").find(c) != std::string_view::npos) out += '\\';
    out += c;
  }
  return out;
}

void append_markdown(std::string& out, const Table& table) {
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

void append_markdown(std::string& out, const Paragraph& paragraph) {
  out += plain_markdown(paragraph.text) + "\n\n";
}

void append_markdown(std::string& out, const List& list) {
  for (const std::string& item : list.items) out += "- " + plain_markdown(item) + '\n';
  out += '\n';
}

void append_markdown(std::string& out, const Picture& picture) {
  out += plain_markdown(picture.title) + "\n\n```text\n";
  for (const std::string& line : picture.wide) out += line + '\n';
  out += "```\n\n" + plain_markdown(picture.legend) + "\n\n";
}

std::string lay_out_markdown(const Document& document) {
  std::string out = "## " + plain_markdown(document.title) + "\n\n";
  for (const Section& section : document.sections) {
    if (!section.heading.empty()) out += "### " + plain_markdown(section.heading) + "\n\n";
    for (const Block& block : section.blocks) {
      std::visit([&](const auto& kind) { append_markdown(out, kind); }, block);
    }
  }
  out.pop_back();  // The last block's empty line.
  return out;
}

}  // namespace wattweek::report
