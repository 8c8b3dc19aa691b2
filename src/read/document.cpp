#include "document.hpp"

#include "syntax_error.hpp"
#include "text_check.hpp"

namespace wattweek::read {

std::optional<toml::table> parse(File& file) {
  if (const auto fault = text_fault(file.text())) {
    file.report(file.place_of_byte(fault->offset), fault->problem);
    return std::nullopt;
  }
  try {
    return toml::parse(file.text());
  } catch (const toml::parse_error& error) {
    const toml::source_position at = error.source().begin;
    file.report(file.place(at), syntax_problem(file, at, error.description()));
  }
  return std::nullopt;
}

}  // namespace wattweek::read
