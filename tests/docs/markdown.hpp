#pragma once
// The project's documents as a test sees them: fenced blocks, headings with what stands below
// them, and the rows of tables.

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace wattweek::docs {

/// What stands between two lines of ```.
struct Block {
  std::string document;  ///< `docs/files.md`
  int line = 0;          ///< Of the opening fence.
  std::string info;      ///< What stands behind it: `toml`, `toml fragment`, `console`.
  std::string text;
};

/// A heading, without its number signs, and all lines up to the next heading of any depth.
struct Section {
  std::size_t depth = 0;  ///< Number signs.
  std::string heading;
  std::string text;
};

/// README.md, DEVELOPERS.md and all .md below docs, as paths from the root of the source tree.
std::vector<std::string> all_documents();

/// A document's text; fails the test where there is none.
std::string text_of_document(const std::string& document);

std::vector<Block> blocks(const std::string& document);

/// `DOCUMENT:LINE`.
std::string where(const Block& block);

std::vector<Section> sections(const std::string& document);

/// The section with this heading below the heading `chapter`; fails the test where there is
/// none. An empty `chapter` takes the first section with the heading.
Section section(const std::string& document, const std::string& chapter,
                const std::string& heading);

/// One row of a table, cell by cell.
using Row = std::vector<std::string>;

/// The rows of a section's tables, without their headings.
std::vector<Row> table_rows(const Section& section);

/// The `words in backticks` of the first cells of a section's tables.
std::set<std::string> first_cells(const Section& section);

/// All `words in backticks` of a text.
std::set<std::string> in_backticks(std::string_view text);

std::vector<std::string> lines_of(std::string_view text);

}  // namespace wattweek::docs
