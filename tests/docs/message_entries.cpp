#include "message_entries.hpp"

#include <algorithm>
#include <cctype>

#include "../cli/program.hpp"
#include "toml_examples.hpp"

namespace wattweek::docs {

namespace {

const std::vector<std::string> kPages{"docs/messages.md", "docs/command-messages.md",
                                      "docs/log-messages.md"};
const std::string kLogPage = "docs/log-messages.md";
const std::string kFindings = "Findings";
constexpr std::string_view kExtension = ".toml";

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

// The message in a line that is nothing but one in backticks, perhaps behind `- `; else empty.
std::string message_in(std::string_view line) {
  if (line.substr(0, 2) == "- ") line.remove_prefix(2);
  const std::size_t ticks = line.find_first_not_of('`');
  if (ticks == 0 || ticks == line.npos || line.back() != '`') return "";
  line = line.substr(ticks, line.find_last_not_of('`') + 1 - ticks);
  const bool is_padded = ticks > 1 && line.front() == ' ' && line.back() == ' ';
  const std::string message(is_padded ? line.substr(1, line.size() - 2) : line);
  return holds(message, ": error: ") || holds(message, ": note: ") ? message : "";
}

std::vector<std::string> messages_in(const std::vector<std::string>& lines, std::size_t begin,
                                     std::size_t end) {
  std::vector<std::string> messages;
  for (std::size_t i = begin; i < end; ++i) {
    if (const std::string message = message_in(lines[i]); !message.empty()) {
      messages.push_back(message);
    }
  }
  return messages;
}

bool is_example(const Block& block) { return block.info == "diff" || block.info == "diff whole"; }

void add_entries(const std::string& page, std::vector<Entry>& entries) {
  const std::vector<std::string> lines = lines_of(text_of_document(page));
  std::size_t behind = 0;  // the last block
  for (const Block& block : blocks(page)) {
    const auto fence = static_cast<std::size_t>(block.line) - 1;
    const auto messages = messages_in(lines, behind, fence);
    CHECK_MESSAGE(messages.empty() != is_example(block), where(block));
    if (is_example(block)) entries.push_back({messages, block});
    behind = fence + lines_of(block.text).size() + 2;
  }
  CHECK_MESSAGE(messages_in(lines, behind, lines.size()).empty(), page);
}

// The lines of one side, without their marks.
std::vector<std::string> lines_of_side(const Block& block, Side side) {
  const char other = side == Side::wrong ? '+' : '-';
  std::vector<std::string> lines;
  for (const std::string& line : lines_of(block.text)) {
    if (line.empty() || line.front() != other) lines.push_back(line.substr(line.empty() ? 0 : 2));
  }
  return lines;
}

// The blocks whose first line is `# log: NAME`, a comment to whoever reads logs.
void write_logs(const cli::TemporaryFolder& folder) {
  const std::string begin = "# log: ";
  for (const Block& block : blocks(kLogPage)) {
    if (block.info != "csv") continue;
    const std::string first = block.text.substr(0, block.text.find('\n'));
    REQUIRE_MESSAGE(first.substr(0, begin.size()) == begin, where(block));
    folder.write(first.substr(begin.size()), block.text);
  }
}

// What is found about a log is told beside what `fit` answers, and is no complaint.
std::string without_findings(const std::string& err) {
  std::string kept;
  for (const std::string& line : lines_of(err)) {
    const bool is_finding =
        holds(line, "wattweek: ") && !holds(line, ": error: ") && !holds(line, ": note: ");
    if (!is_finding) kept += line + "\n";
  }
  return kept;
}

cli::Run run_among_files(const std::string& command) {
  const cli::TemporaryFolder folder;
  for (const std::string& page : kPages) {
    for (const auto& [name, text] : named_files(page)) folder.write(name, text);
  }
  write_logs(folder);
  return cli::shell(folder.path(), command);
}

Said said_of_commands(const std::vector<std::string>& lines) {
  Said all;
  bool is_first = true;
  for (const std::string& line : lines) {
    REQUIRE_MESSAGE(line.substr(0, 2) == "$ ", line);
    const cli::Run run = run_among_files(line.substr(2));
    all.exit_code = is_first || run.exit_code == all.exit_code ? run.exit_code : -1;
    all.out += run.out;
    all.err += without_findings(run.err);
    is_first = false;
  }
  return all;
}

int line_count(std::string_view text) {
  return static_cast<int>(std::count(text.begin(), text.end(), '\n'));
}

Said said_of_file(const Entry& entry, const std::vector<std::string>& lines) {
  const std::string& message = entry.messages.front();
  const std::string kind = message.substr(0, message.find(kExtension));
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  const bool is_whole = entry.example.info == "diff whole";
  const std::string first = is_whole ? "" : "# " + kind + "\n";
  Block block{entry.example.document, entry.example.line, is_whole ? "toml" : "toml fragment",
              first + text};
  const std::string whole = whole_text(example_of(std::move(block)));
  const std::size_t begin = whole.find(first + text) + first.size();
  const cli::TemporaryFolder folder;
  const std::string file = kind + std::string(kExtension);
  for (const auto& [name, named] : named_files(kPages.front())) folder.write(name, named);
  folder.write(file, whole);
  const cli::Run run = cli::shell(folder.path(), "wattweek check " + file);
  return {run.exit_code, run.out, moved_up(run.err, file, line_count(whole.substr(0, begin)))};
}

}  // namespace

std::vector<Entry> message_entries() {
  std::vector<Entry> entries;
  for (const std::string& page : kPages) add_entries(page, entries);
  return entries;
}

std::vector<std::string> messages_without_example() {
  std::vector<std::string> messages;
  for (const std::string& page : kPages) {
    for (const Section& each : sections(page)) {
      if (each.heading == kFindings) continue;
      for (const Row& row : table_rows(each)) messages.push_back(message_in(row.front()));
    }
  }
  return messages;
}

std::vector<std::string> findings() {
  const std::set<std::string> all = first_cells(section(kLogPage, "", kFindings));
  return {all.begin(), all.end()};
}

Said said_of(const Entry& entry, Side side) {
  const std::vector<std::string> lines = lines_of_side(entry.example, side);
  const bool is_commands = holds(entry.example.text, "- $ ");
  return is_commands ? said_of_commands(lines) : said_of_file(entry, lines);
}

std::string moved_up(const std::string& text, const std::string& file, int lines) {
  const std::string name = file + ":";
  std::string moved;
  std::size_t copied = 0;
  for (std::size_t at = text.find(name); at != text.npos; at = text.find(name, at + 1)) {
    const std::size_t begin = at + name.size();
    std::size_t end = begin;
    while (end < text.size() && std::isdigit(static_cast<unsigned char>(text[end])) != 0) ++end;
    if (end == begin) continue;
    moved += text.substr(copied, begin - copied);
    moved += std::to_string(std::stoi(text.substr(begin, end - begin)) - lines);
    copied = end;
  }
  return moved + text.substr(copied);
}

}  // namespace wattweek::docs
