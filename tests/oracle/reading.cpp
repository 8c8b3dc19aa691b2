#include "reading.hpp"

#include <stdexcept>

namespace wattweek::oracle {
namespace {

std::logic_error wrong(const std::vector<diag::Diagnostic>& problems, const StudyText& text) {
  std::string message;
  for (const diag::Diagnostic& problem : problems) message += diag::to_text(problem) + "\n";
  return std::logic_error(message + text.all());
}

}  // namespace

read::Read<read::StudyInput> read_text(const StudyText& text) {
  read::Surroundings surroundings;
  surroundings.load = [&text](
                          const std::string& path, const std::string&,
                          read::ShippedKind) -> std::variant<read::SourceText, read::Unreadable> {
    const auto found = text.files.find(path);
    if (found == text.files.end()) return read::Unreadable{"no such file"};
    return read::SourceText{path, path, found->second};
  };
  surroundings.zone = calendar::zone_rules;
  return read::study({"study.toml", "study.toml", text.study}, surroundings);
}

read::StudyInput read_valid(const StudyText& text) {
  const read::Read<read::StudyInput> got = read_text(text);
  if (!got.value) throw wrong(got.problems, text);
  return *got.value;
}

decide::Assessment assess_valid(const StudyText& text) {
  const read::StudyInput input = read_valid(text);
  const auto assessed = decide::assess(input.study, input.zone);
  if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) {
    throw wrong(*problems, text);
  }
  return std::get<decide::Assessment>(assessed);
}

}  // namespace wattweek::oracle
