#pragma once
// The TOML in the documents. A block's first line says what it is: `# study`, `# profile` or
// `# tariff`, with a file name behind a colon where other examples name it: `# tariff: flat.toml`.
// ```toml is a whole file, ```toml fragment a part of one, ```toml wrong a file with mistakes.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "markdown.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::docs {

struct Example {
  Block block;
  std::optional<read::FileKind> kind;  ///< Nothing where the first line does not say.
  std::string name;                    ///< The file name, empty where there is none.

  bool is_whole() const { return block.info == "toml"; }
  bool is_fragment() const { return block.info == "toml fragment"; }
  bool is_wrong() const { return block.info == "toml wrong"; }
};

/// A block of TOML, its kind and name read from its first line.
Example example_of(Block block);

/// All TOML blocks of a document, in order.
std::vector<Example> toml_examples(const std::string& document);

/// The document's examples that have a file name, text by name.
std::map<std::string, std::string> named_files(const std::string& document);

/// The example as a whole file: what a fragment leaves out is added around it.
std::string whole_text(const Example& example);

/// Finds named examples of the document, and shipped files.
read::Surroundings surroundings_of(const std::string& document);

}  // namespace wattweek::docs
