// Whatever the bytes, a study is read or its problems are told, never both and never a crash.
// Every path leads to a small good file; every zone but one exists and has no clock changes.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <variant>

#include "wattweek/read/read.hpp"

namespace {

using namespace wattweek;

std::variant<read::SourceText, read::Unreadable> load(const std::string& path, const std::string&,
                                                      read::ShippedKind kind) {
  if (path == "nowhere") return read::Unreadable{"there is no such file"};
  const std::string text = kind == read::ShippedKind::profile
                               ? "[watts]\nidle = 10\n[increments]\nfilm = 3\n"
                               : "currency = \"EUR\"\n[[band]]\nname = \"all\"\nprice = 0.3\n";
  return read::SourceText{path, path, text};
}

std::variant<calendar::ZoneRules, calendar::NoZone> zone(const std::string& name,
                                                         std::chrono::year_month, int) {
  if (name == "Nowhere") return calendar::NoZone{"no such time zone"};
  return calendar::ZoneRules{};
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(data, data + size);
  const auto got = read::study({"study.toml", "study.toml", text}, {load, zone});
  if (got.value.has_value() != got.problems.empty()) std::abort();
  for (const diag::Diagnostic& problem : got.problems) (void)diag::to_text(problem);
  return 0;
}
