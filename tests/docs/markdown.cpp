#include "markdown.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace wattweek::docs {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kFence = "```";

bool is_fence(std::string_view line) { return line.substr(0, kFence.size()) == kFence; }

// The cells of `| a | b |`, without the blanks around them.
std::vector<std::string> cells_of(std::string_view line) {
  std::vector<std::string> cells;
  line.remove_prefix(1);
  for (std::size_t end = line.find('|'); end != line.npos; end = line.find('|')) {
    const std::string_view cell = line.substr(0, end);
    const std::size_t first = std::min(cell.find_first_not_of(' '), cell.size());
    cells.emplace_back(cell.substr(first, cell.find_last_not_of(' ') + 1 - first));
    line.remove_prefix(end + 1);
  }
  return cells;
}

}  // namespace

std::vector<std::string> all_documents() {
  std::vector<std::string> documents{"README.md", "DEVELOPERS.md"};
  for (const auto& entry : fs::recursive_directory_iterator(WATTWEEK_SOURCE_DIR "/docs")) {
    if (entry.path().extension() == ".md") {
      documents.push_back(fs::relative(entry.path(), WATTWEEK_SOURCE_DIR).generic_string());
    }
  }
  std::sort(documents.begin(), documents.end());
  return documents;
}

std::string text_of_document(const std::string& document) {
  std::ifstream in(std::string(WATTWEEK_SOURCE_DIR "/") + document, std::ios::binary);
  REQUIRE_MESSAGE(in.good(), document);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return lines;
}

std::vector<Block> blocks(const std::string& document) {
  std::vector<Block> found;
  bool inside = false;
  int number = 0;
  for (const std::string& line : lines_of(text_of_document(document))) {
    ++number;
    if (is_fence(line)) {
      if (!inside) found.push_back({document, number, line.substr(kFence.size()), ""});
      inside = !inside;
    } else if (inside) {
      found.back().text += line + "\n";
    }
  }
  REQUIRE_MESSAGE(!inside, document << ": a block is not closed");
  return found;
}

std::string where(const Block& block) { return block.document + ":" + std::to_string(block.line); }

std::vector<Section> sections(const std::string& document) {
  std::vector<Section> found;
  bool inside = false;
  for (const std::string& line : lines_of(text_of_document(document))) {
    if (is_fence(line)) inside = !inside;
    const std::size_t depth = line.find_first_not_of('#');
    const bool is_heading =
        !inside && depth != std::string::npos && depth > 0 && line[depth] == ' ';
    if (is_heading) {
      found.push_back({depth, line.substr(depth + 1), ""});
    } else if (!found.empty()) {
      found.back().text += line + "\n";
    }
  }
  return found;
}

Section section(const std::string& document, const std::string& chapter,
                const std::string& heading) {
  bool in_chapter = chapter.empty();
  std::size_t depth = 0;
  for (const Section& each : sections(document)) {
    if (in_chapter && each.heading == heading) return each;
    if (in_chapter && each.depth <= depth) break;
    if (each.heading == chapter) {
      in_chapter = true;
      depth = each.depth;
    }
  }
  FAIL(document << " has no section '" << heading << "' in the chapter '" << chapter << "'");
  return {};
}

std::set<std::string> in_backticks(std::string_view text) {
  std::set<std::string> words;
  while (true) {
    const std::size_t begin = text.find('`');
    const std::size_t end = begin == text.npos ? text.npos : text.find('`', begin + 1);
    if (end == text.npos) return words;
    words.emplace(text.substr(begin + 1, end - begin - 1));
    text.remove_prefix(end + 1);
  }
}

std::vector<Row> table_rows(const Section& section) {
  std::vector<Row> found;
  int row_of_table = 0;
  for (const std::string& line : lines_of(section.text)) {
    row_of_table = line.substr(0, 1) == "|" ? row_of_table + 1 : 0;
    if (row_of_table > 2) found.push_back(cells_of(line));
  }
  return found;
}

std::set<std::string> first_cells(const Section& section) {
  std::set<std::string> cells;
  for (const Row& row : table_rows(section)) cells.merge(in_backticks(row.front()));
  return cells;
}

}  // namespace wattweek::docs
