#include "message_literals.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <filesystem>

#include "markdown.hpp"

namespace wattweek::docs {

namespace {

namespace fs = std::filesystem;

// Whoever makes a message needs one of these. The readers of files and of logs pass theirs on as
// plain text.
constexpr std::array<std::string_view, 8> kMakers{"Diagnostic", "Misuse",      "Unreadable",
                                                  "NotWritten", "NoZone",      "Note",
                                                  "refused(",   "write_error("};

// What stands in a call of these is compared with, not said.
constexpr std::array<std::string_view, 4> kSearches{"holds", "starts_with", "find", "rfind"};

bool is_name_letter(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; }

// A walk through a source, from one literal to the next.
class Walk {
 public:
  Walk(const std::string& file, std::string_view source) : file_(file), source_(source) {}

  std::vector<Literal> run() {
    while (i_ < source_.size()) step();
    return std::move(found_);
  }

 private:
  bool is_at(std::string_view text) const { return source_.substr(i_, text.size()) == text; }

  void skip_behind(std::string_view text) {
    i_ = std::min(source_.find(text, i_), source_.size() - text.size()) + text.size();
  }

  void step() {
    if (is_at("//") || is_at("#include")) return skip_behind("\n");
    if (is_at("R\"")) return take_raw();
    if (is_at("\"")) return take_plain();
    const bool is_separator = i_ > 0 && is_name_letter(source_[i_ - 1]);
    if (is_at("'") && !is_separator) return skip_character();
    ++i_;
  }

  void skip_character() {
    i_ += source_[i_ + 1] == '\\' ? std::size_t{3} : std::size_t{2};
    skip_behind("'");
  }

  // R"NAME( ... )NAME"
  void take_raw() {
    const std::size_t begin = i_;
    const std::size_t open = source_.find('(', i_);
    const std::string close = ")" + std::string(source_.substr(i_ + 2, open - i_ - 2)) + "\"";
    skip_behind(close);
    add(begin, std::string(source_.substr(open + 1, i_ - close.size() - open - 1)));
  }

  void take_plain() {
    const std::size_t begin = i_++;
    std::string text;
    for (; source_[i_] != '"'; ++i_) {
      const bool is_escape = source_[i_] == '\\';
      if (is_escape) ++i_;
      text += is_escape && source_[i_] == 'n' ? '\n' : source_[i_];
    }
    ++i_;
    add(begin, text);
  }

  void add(std::size_t begin, const std::string& text) {
    const std::string_view between = source_.substr(end_, begin - end_);
    const bool continues = end_ > 0 && between.find_first_not_of(" \n") == between.npos;
    end_ = i_;
    if (continues && is_kept_) found_.back().text += text;
    if (continues) return;
    is_kept_ = !is_searched_for(begin);
    if (!is_kept_) return;
    const auto line = std::count(source_.begin(), source_.begin() + static_cast<long>(begin), '\n');
    found_.push_back({file_, static_cast<int>(line) + 1, text});
  }

  // Is the innermost open call before the literal one that searches?
  bool is_searched_for(std::size_t begin) const {
    const std::size_t open = source_.find_last_of("(){};", begin);
    if (open == source_.npos || source_[open] != '(') return false;
    std::size_t first = open;
    while (first > 0 && is_name_letter(source_[first - 1])) --first;
    const std::string_view name = source_.substr(first, open - first);
    return std::find(kSearches.begin(), kSearches.end(), name) != kSearches.end();
  }

  std::string file_;
  std::string_view source_;
  std::size_t i_ = 0;
  std::size_t end_ = 0;  // of the last literal
  bool is_kept_ = false;
  std::vector<Literal> found_;
};

// `report` shows what it is given.
bool makes_messages(const std::string& file, const std::string& source) {
  const auto is_in = [&source](std::string_view word) { return source.find(word) != source.npos; };
  if (file.substr(0, 9) == "src/read/" || file.substr(0, 9) == "src/logs/") return true;
  if (file.substr(0, 11) == "src/report/") return false;
  return std::any_of(kMakers.begin(), kMakers.end(), is_in);
}

bool has_two_words(const std::string& text) {
  const auto is_letter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
  const auto first = std::find_if(text.begin(), text.end(), is_letter);
  const auto gap = std::find(first, text.end(), ' ');
  return std::find_if(text.begin(), text.end(), is_letter) != text.end() &&
         std::find_if(gap, text.end(), [](char c) { return c != ' ' && c != '\n'; }) != text.end();
}

// The end of a `{...}` of the formatting library that begins at `open`; npos where it is none.
std::size_t end_of_placeholder(std::string_view text, std::size_t open) {
  const std::size_t end = text.find_first_of("{} ", open + 1);
  return end != text.npos && text[end] == '}' ? end + 1 : text.npos;
}

// What stands between the placeholders.
std::vector<std::string_view> pieces(std::string_view literal) {
  std::vector<std::string_view> parts;
  std::size_t begin = 0;
  for (std::size_t at = literal.find('{'); at != literal.npos; at = literal.find('{', at + 1)) {
    const std::size_t end = end_of_placeholder(literal, at);
    if (end == literal.npos) continue;
    parts.push_back(literal.substr(begin, at - begin));
    begin = end;
  }
  parts.push_back(literal.substr(begin));
  return parts;
}

}  // namespace

std::vector<Literal> literals(const std::string& file, std::string_view source) {
  return Walk(file, source).run();
}

std::vector<Literal> message_literals() {
  std::vector<Literal> all;
  const fs::path root = WATTWEEK_SOURCE_DIR;
  for (const auto& entry : fs::recursive_directory_iterator(root / "src")) {
    const std::string extension = entry.path().extension().string();
    if (extension != ".cpp" && extension != ".hpp") continue;
    const std::string file = fs::relative(entry.path(), root).generic_string();
    const std::string source = text_of_document(file);
    if (!makes_messages(file, source)) continue;
    for (Literal& each : literals(file, source)) {
      if (has_two_words(each.text)) all.push_back(std::move(each));
    }
  }
  return all;
}

bool says(std::string_view message, std::string_view literal) {
  if (!literal.empty() && literal.back() == '\n') literal.remove_suffix(1);
  std::size_t at = 0;
  for (const std::string_view piece : pieces(literal)) {
    at = message.find(piece, at);
    if (at == message.npos) return false;
    at += piece.size();
  }
  return true;
}

}  // namespace wattweek::docs
