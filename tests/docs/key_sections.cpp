#include "key_sections.hpp"

namespace wattweek::docs {

using read::FileKind;
using read::KeyTable;

const std::vector<KindOfFile>& kinds_of_file() {
  static const std::vector<KindOfFile> kinds{{FileKind::study, "study", "The study file"},
                                             {FileKind::profile, "profile", "The profile file"},
                                             {FileKind::tariff, "tariff", "The tariff file"}};
  return kinds;
}

bool is_inline(FileKind kind, const KeyTable& table) {
  if (kind != FileKind::study) return false;
  if (table.path.substr(0, 6) == "tariff") return true;
  for (const KeyTable& of_profile : read::key_tables(FileKind::profile)) {
    if (!of_profile.path.empty() && table.path == "candidate.device." + of_profile.path) {
      return true;
    }
  }
  return false;
}

std::string heading_of(const KeyTable& table) {
  if (table.path.empty()) return "At the top";
  const std::size_t star = table.path.find(".*");
  if (star != std::string::npos) return "An entry of `[" + table.path.substr(0, star) + "]`";
  return table.form == read::TableForm::repeated ? "`[[" + table.path + "]]`"
                                                 : "`[" + table.path + "]`";
}

Section section_of(const KindOfFile& kind, const KeyTable& table) {
  return section(kKeysDocument, kind.chapter, heading_of(table));
}

}  // namespace wattweek::docs
