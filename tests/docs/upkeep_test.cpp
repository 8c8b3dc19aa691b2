// What else in the documents must follow the source: links, decisions, the map of rooms, the codes
// of notes.

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "../layering/ladder.hpp"
#include "markdown.hpp"

namespace wattweek::docs {
namespace {

namespace fs = std::filesystem;
const fs::path kRoot = WATTWEEK_SOURCE_DIR;

// All but the blocks, in which brackets mean something else.
std::string prose_of(const std::string& document) {
  std::string prose;
  for (const Section& each : sections(document)) prose += each.text;
  for (const Block& block : blocks(document)) {
    const std::size_t at = block.text.empty() ? prose.npos : prose.find(block.text);
    if (at != prose.npos) prose.erase(at, block.text.size());
  }
  return prose;
}

// The targets of [text](target), anchors taken off.
std::vector<std::string> links(const std::string& text) {
  std::vector<std::string> targets;
  for (std::size_t at = text.find("]("); at != std::string::npos; at = text.find("](", at + 1)) {
    const std::string target = text.substr(at + 2, text.find(')', at) - at - 2);
    targets.push_back(target.substr(0, target.find('#')));
  }
  return targets;
}

TEST_CASE("documents: every link to a file of the project leads somewhere") {
  for (const std::string& document : all_documents()) {
    const fs::path folder = (kRoot / document).parent_path();
    for (const std::string& target : links(prose_of(document))) {
      if (target.empty() || target.find("://") != std::string::npos) continue;
      CHECK_MESSAGE(fs::exists(folder / target), document << " links to " << target);
    }
  }
}

TEST_CASE("documents: the program in README is the one of the library's example") {
  const std::vector<Block> all = blocks("README.md");
  const auto shown =
      std::find_if(all.begin(), all.end(), [](const Block& block) { return block.info == "cpp"; });
  REQUIRE(shown != all.end());
  CHECK(shown->text == text_of_document("docs/examples/library/assess.cpp"));
}

bool links_to(const std::string& document, const std::string& target) {
  const std::vector<std::string> all = links(prose_of(document));
  return std::find(all.begin(), all.end(), target) != all.end();
}

TEST_CASE("documents: README leads to every page, DEVELOPERS.md to every decision") {
  int decisions = 0;
  for (const std::string& document : all_documents()) {
    if (document.substr(0, 5) != "docs/") continue;
    const bool is_decision = document.find("/decisions/") != std::string::npos;
    CHECK_MESSAGE(links_to(is_decision ? "DEVELOPERS.md" : "README.md", document), document);
    decisions += is_decision ? 1 : 0;
  }
  CHECK(decisions > 3);
}

TEST_CASE("decisions: each says what, why, what was rejected and what would change our mind") {
  for (const std::string& document : all_documents()) {
    if (document.find("/decisions/") == std::string::npos) continue;
    for (const char* heading : {"What", "Why", "What was rejected", "What would change our mind"}) {
      CHECK_MESSAGE(section(document, "", heading).text.size() > 1, document << ": " << heading);
    }
  }
}

// The row of a room in DEVELOPERS.md: level, `room`, question, header to start with.
Row row_of_room(std::string_view room) {
  for (const Row& row : table_rows(section("DEVELOPERS.md", "", "The map of rooms"))) {
    if (row.size() == 4 && row[1] == "`" + std::string(room) + "`") return row;
  }
  return {};
}

TEST_CASE("DEVELOPERS.md: the map of rooms has each room on its level, and its first header") {
  for (const layering::Room& room : layering::kLadder) {
    CAPTURE(room.name);
    const Row cells = row_of_room(room.name);
    REQUIRE(cells.size() == 4);
    CHECK(cells[0] == std::to_string(room.level));
    for (const std::string& header : in_backticks(cells[3])) {
      CHECK_MESSAGE(fs::exists(kRoot / header), header);
    }
    CHECK(in_backticks(cells[3]).size() == 1);
  }
}

// The code is the first thing in a note: `add("CODE"`, or `{"CODE"`.
void collect_codes(const std::string& source, const std::string& opening,
                   std::set<std::string>& codes) {
  for (std::size_t at = source.find(opening); at != std::string::npos;
       at = source.find(opening, at + 1)) {
    const std::size_t begin = at + opening.size();
    codes.insert(source.substr(begin, source.find('"', begin) - begin));
  }
}

std::set<std::string> codes_in_source() {
  std::set<std::string> codes;
  for (const auto& entry : fs::directory_iterator(kRoot / "src/decide")) {
    const std::string name = entry.path().filename().string();
    if (name.substr(0, 5) != "notes" || entry.path().extension() != ".cpp") continue;
    const std::string source = text_of_document("src/decide/" + name);
    collect_codes(source, "add(\"", codes);
    collect_codes(source, "{\"", codes);
  }
  return codes;
}

std::string joined(const std::set<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += word + " ";
  return text;
}

TEST_CASE("docs/method.md: lists every code of a note, and no other") {
  REQUIRE(codes_in_source().size() > 8);
  CHECK(joined(first_cells(section("docs/method.md", "", "Notes"))) == joined(codes_in_source()));
}

}  // namespace
}  // namespace wattweek::docs
