#include "wattweek/diag/diagnostic.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "wattweek/diag/printable.hpp"

namespace wattweek::diag {

namespace {

std::string_view file_of(const Diagnostic& diagnostic) {
  return diagnostic.place.file ? std::string_view(*diagnostic.place.file) : std::string_view();
}

bool same(const Diagnostic& a, const Diagnostic& b) {
  return a.place.line == b.place.line && a.place.column == b.place.column &&
         a.message == b.message && file_of(a) == file_of(b);
}

}  // namespace

std::string to_text(const Place& place) {
  return fmt::format("{}:{}:{}", place.file ? std::string_view(*place.file) : "", place.line,
                     place.column);
}

std::string to_text(const Diagnostic& diagnostic) {
  return printable(fmt::format("{}: error: {}", to_text(diagnostic.place), diagnostic.message));
}

void sort_by_place(std::vector<Diagnostic>& diagnostics) {
  std::map<std::string, std::size_t, std::less<>> mentioned;
  for (const Diagnostic& diagnostic : diagnostics) {
    mentioned.try_emplace(std::string(file_of(diagnostic)), mentioned.size());
  }
  const auto before = [&mentioned](const Diagnostic& a, const Diagnostic& b) {
    const std::size_t file_a = mentioned.find(file_of(a))->second;
    const std::size_t file_b = mentioned.find(file_of(b))->second;
    if (file_a != file_b) return file_a < file_b;
    if (a.place.line != b.place.line) return a.place.line < b.place.line;
    if (a.place.column != b.place.column) return a.place.column < b.place.column;
    return a.message < b.message;
  };
  std::sort(diagnostics.begin(), diagnostics.end(), before);
  diagnostics.erase(std::unique(diagnostics.begin(), diagnostics.end(), same), diagnostics.end());
}

}  // namespace wattweek::diag
