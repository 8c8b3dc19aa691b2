#include "toml_examples.hpp"

#include <array>
#include <fstream>
#include <iterator>
#include <string_view>
#include <utility>

namespace wattweek::docs {

namespace {

using read::FileKind;

struct KindWord {
  FileKind kind;
  std::string_view word;
};
constexpr std::array<KindWord, 3> kKinds{
    {{FileKind::study, "study"}, {FileKind::profile, "profile"}, {FileKind::tariff, "tariff"}}};

// What a file of the kind cannot do without, each with the text that shows that it is there, and
// the text that asks for it where it is not always needed.
struct Need {
  std::string_view shown_by;
  std::string_view text;
  std::string_view asked_for_by = "";
};

// At the top of the file, before all headers.
const std::vector<Need>& top_needs(FileKind kind) {
  static const std::vector<Need> study{{"\ntime_zone =", "time_zone = \"Europe/Dublin\"\n"},
                                       {"\nstart =", "start = 2027-01-01\n"}};
  static const std::vector<Need> tariff{{"\ncurrency =", "currency = \"EUR\"\n"}};
  static const std::vector<Need> profile;
  if (kind == FileKind::study) return study;
  return kind == FileKind::tariff ? tariff : profile;
}

// Behind the fragment.
const std::vector<Need>& table_needs(FileKind kind) {
  static const std::vector<Need> study{
      {"tariff", "[tariff]\ncurrency = \"EUR\"\nband = [{ name = \"all\", price = 0.3 }]\n"},
      {"\n[[workload]]",
       "[[workload]]\nid = \"films\"\n[[workload.use]]\nhours = \"20:00-22:00\"\n", "films"},
      {"\n[[candidate]]",
       "[[candidate]]\nid = \"box\"\n[[candidate.device]]\n"
       "watts = { sleep = 1, idle = 9 }\n"
       "increments = { films = 3.1, backup = 5.5 }\n"}};
  static const std::vector<Need> tariff{{"\n[[band]]", "[[band]]\nname = \"all\"\nprice = 0.3\n"}};
  static const std::vector<Need> profile{{"\n[watts]", "[watts]\nidle = 9\nbusy = 30\n"}};
  if (kind == FileKind::study) return study;
  return kind == FileKind::tariff ? tariff : profile;
}

std::string missing(const std::vector<Need>& needs, const std::string& text) {
  std::string added;
  for (const Need& need : needs) {
    const bool is_there = text.find(need.shown_by) != std::string::npos;
    const bool is_asked_for = text.find(need.asked_for_by) != std::string::npos;
    if (!is_there && is_asked_for) added += need.text;
  }
  return added;
}

std::variant<read::SourceText, read::Unreadable> shipped(const std::string& name,
                                                         read::ShippedKind kind) {
  const std::string folder = kind == read::ShippedKind::profile ? "/profiles/" : "/tariffs/";
  const std::string path = WATTWEEK_SOURCE_DIR + folder + name + ".toml";
  std::ifstream in(path, std::ios::binary);
  if (!in.good()) return read::Unreadable{"no such shipped file"};
  return read::SourceText{path, path, {std::istreambuf_iterator<char>(in), {}}};
}

}  // namespace

Example example_of(Block block) {
  Example example{std::move(block), std::nullopt, ""};
  const std::string first = example.block.text.substr(0, example.block.text.find('\n'));
  for (const KindWord& kind : kKinds) {
    const std::string start = "# " + std::string(kind.word);
    if (first == start) example.kind = kind.kind;
    if (first.substr(0, start.size() + 2) == start + ": ") {
      example.kind = kind.kind;
      example.name = first.substr(start.size() + 2);
    }
  }
  return example;
}

std::vector<Example> toml_examples(const std::string& document) {
  std::vector<Example> examples;
  for (Block& block : blocks(document)) {
    if (block.info.substr(0, 4) == "toml") examples.push_back(example_of(std::move(block)));
  }
  return examples;
}

std::map<std::string, std::string> named_files(const std::string& document) {
  std::map<std::string, std::string> files;
  for (const Example& example : toml_examples(document)) {
    if (!example.name.empty()) files[example.name] = example.block.text;
  }
  return files;
}

std::string whole_text(const Example& example) {
  const std::string& text = example.block.text;
  if (!example.is_fragment() || !example.kind) return text;
  return missing(top_needs(*example.kind), text) + text + missing(table_needs(*example.kind), text);
}

read::Surroundings surroundings_of(const std::string& document) {
  using Loaded = std::variant<read::SourceText, read::Unreadable>;
  const auto load = [files = named_files(document)](const std::string& path, const std::string&,
                                                    read::ShippedKind kind) -> Loaded {
    constexpr std::string_view kShipped = "shipped:";
    if (path.substr(0, kShipped.size()) == kShipped) {
      return shipped(path.substr(kShipped.size()), kind);
    }
    const auto found = files.find(path);
    if (found == files.end()) return read::Unreadable{"no example of this document is called so"};
    return read::SourceText{path, path, found->second};
  };
  return {load, calendar::zone_rules};
}

}  // namespace wattweek::docs
