#include <algorithm>

#include "support.hpp"
#include "wattweek/read/keys.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;
using read::FileKind;

namespace {

read::Read<FileKind> kind_of(const std::string& text) {
  return read::kind_of({"some.toml", "some.toml", text});
}

constexpr FileKind kKinds[] = {FileKind::study, FileKind::profile, FileKind::tariff};

std::string problems_of(FileKind kind, const std::string& text) {
  if (kind == FileKind::study) return shown(read_study(text).problems);
  return shown(kind == FileKind::profile ? read_profile(text).problems
                                         : read_tariff(text).problems);
}

// The headers of a table and of all tables around it.
std::string headers_to(FileKind kind, const std::string& path) {
  if (path.empty()) return "";
  const std::size_t dot = path.rfind('.');
  const std::string above = dot == std::string::npos ? "" : headers_to(kind, path.substr(0, dot));
  const bool is_repeated = read::key_table(kind, path)->form == read::TableForm::repeated;
  return above + (is_repeated ? "[[" + path + "]]\n" : "[" + path + "]\n");
}

struct Nonsense {
  std::string text;
  std::string name;  // of the key, in messages
};

Nonsense nonsense_at(FileKind kind, const read::KeyTable& table, std::string_view key) {
  const std::string line = std::string(key) + " = { nonsense = {} }";
  const std::size_t star = table.path.find(".*");
  if (star != std::string::npos) {
    const std::string above = table.path.substr(0, star);
    return {headers_to(kind, above) + "film = { " + line + " }\n",
            above + ".film." + std::string(key)};
  }
  const std::string prefix = table.path.empty() ? "" : table.path + ".";
  return {headers_to(kind, table.path) + line + "\n", prefix + std::string(key)};
}

}  // namespace

TEST_CASE("a file is the kind that its keys at the top tell") {
  CHECK(value_of(kind_of(kStudy)) == FileKind::study);
  CHECK(value_of(kind_of(kProfile)) == FileKind::profile);
  CHECK(value_of(kind_of(kTariff)) == FileKind::tariff);
  CHECK(value_of(kind_of("start = 2027-01-01")) == FileKind::study);
  CHECK(value_of(kind_of("watts = {}")) == FileKind::profile);
  CHECK(value_of(kind_of("currency = 3")) == FileKind::tariff);
}

TEST_CASE("a file without a telling key is told which keys tell") {
  const std::string accepted =
      "expected a study with one of title, time_zone, start, months, tariff, baseline, household, "
      "carbon, finance, workload, away or candidate, a profile with one of capacity, watts, groups "
      "or increments, or a tariff with one of currency, tax, standing_per_day, "
      "standing_per_month, minimum_per_month, band, block or blocks_per";
  CHECK(shown(kind_of("name = \"x\"\n").problems) ==
        "some.toml:1:1: error: no study, profile or tariff: " + accepted);
  CHECK(shown(kind_of("# nothing\n").problems) ==
        "some.toml:1:1: error: the file is empty: " + accepted);
  CHECK(shown(kind_of("[watts\n").problems) ==
        "some.toml:1:7: error: cannot read this table header: expected ']', found the end of the "
        "line");
}

TEST_CASE("every table of the key lists is a key of the table above it") {
  for (const FileKind kind : kKinds) {
    for (const read::KeyTable& table : read::key_tables(kind)) {
      if (table.path.empty()) continue;
      CAPTURE(table.path);
      const std::size_t dot = table.path.rfind('.');
      const std::string above = dot == std::string::npos ? "" : table.path.substr(0, dot);
      const std::string key = table.path.substr(dot == std::string::npos ? 0 : dot + 1);
      const read::KeyTable* parent = read::key_table(kind, above);
      REQUIRE(parent != nullptr);
      const bool is_listed =
          std::find(parent->keys.begin(), parent->keys.end(), key) != parent->keys.end();
      CHECK((is_listed || (parent->any_key && key == "*")));
    }
  }
}

TEST_CASE("a study knows the tables of a profile in its devices and those of a tariff in its own") {
  for (const read::KeyTable& table : read::key_tables(FileKind::profile)) {
    if (!table.path.empty()) {
      CHECK(read::key_table(FileKind::study, "candidate.device." + table.path) != nullptr);
    }
  }
  for (const read::KeyTable& table : read::key_tables(FileKind::tariff)) {
    const std::string path = table.path.empty() ? "tariff" : "tariff." + table.path;
    REQUIRE(read::key_table(FileKind::study, path) != nullptr);
    CHECK(read::key_table(FileKind::study, path)->keys == table.keys);
  }
}

TEST_CASE("every key of the lists is read: a value that no key can have is refused by its name") {
  for (const FileKind kind : kKinds) {
    for (const read::KeyTable& table : read::key_tables(kind)) {
      for (const std::string_view key : table.keys) {
        const Nonsense nonsense = nonsense_at(kind, table, key);
        CAPTURE(nonsense.text);
        CHECK(problems_of(kind, nonsense.text).find(nonsense.name) != std::string::npos);
      }
    }
  }
}
