#pragma once
// Where docs/files.md describes each table that the readers know.

#include <string>
#include <vector>

#include "markdown.hpp"
#include "wattweek/read/keys.hpp"

namespace wattweek::docs {

inline const std::string kKeysDocument = "docs/files.md";

struct KindOfFile {
  read::FileKind kind;
  std::string name;     ///< `study`
  std::string chapter;  ///< Its heading in docs/files.md.
};

/// Study, profile and tariff.
const std::vector<KindOfFile>& kinds_of_file();

/// Is it a table of a profile or tariff that stands inside a study? It is described where it is
/// a file.
bool is_inline(read::FileKind kind, const read::KeyTable& table);

/// `[household]`, `[[candidate]]`, `An entry of [increments]`, with backticks.
std::string heading_of(const read::KeyTable& table);

/// The section that describes the table; fails the test where there is none.
Section section_of(const KindOfFile& kind, const read::KeyTable& table);

}  // namespace wattweek::docs
