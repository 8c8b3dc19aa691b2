#pragma once
// The demo study.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "wattweek/read/read.hpp"

namespace wattweek::bench {

inline read::SourceText text_of(const std::filesystem::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return {path.string(), path.string(), text.str()};
}

/// Under its own contract, or under another one.
inline read::StudyInput read_ostrawick(const std::filesystem::path& contract) {
  const read::Surroundings beside{
      [&contract](const std::string& path, const std::string& from, read::ShippedKind) {
        if (path == "ostrawick-tariff.toml") return text_of(contract);
        return text_of(std::filesystem::path(from).parent_path() / path);
      },
      calendar::zone_rules};
  auto got = read::study(text_of(WATTWEEK_SOURCE_DIR "/docs/examples/ostrawick.toml"), beside);
  for (const auto& problem : got.problems) std::cerr << diag::to_text(problem) << '\n';
  if (!got.value) std::exit(2);
  return std::move(*got.value);
}

inline const read::StudyInput& ostrawick() {
  static const read::StudyInput read_once =
      read_ostrawick(WATTWEEK_SOURCE_DIR "/docs/examples/ostrawick-tariff.toml");
  return read_once;
}

/// Blocks, a minimum bill, a standing charge and tax.
inline const read::StudyInput& under_full_contract() {
  static const read::StudyInput read_once =
      read_ostrawick(WATTWEEK_SOURCE_DIR "/tests/bench/full-contract.toml");
  return read_once;
}

}  // namespace wattweek::bench
