#include "wattweek/decide/notes.hpp"

namespace wattweek::decide {

std::string where_text(const Note& note) {
  if (const auto* id = std::get_if<std::string>(&note.where)) return *id;
  return diag::to_text(std::get<diag::Place>(note.where));
}

}  // namespace wattweek::decide
