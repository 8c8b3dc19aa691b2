#include "wattweek/report/words.hpp"

#include <fmt/format.h>

#include "numbers.hpp"

namespace wattweek::report {

using units::in_watts;

std::string counted(std::size_t number, std::string_view word) {
  return counted(fmt::format("{}", number), word);
}

std::string counted(const std::string& number, std::string_view word) {
  return fmt::format("{} {}{}", number, word, number == "1" ? "" : "s");
}

std::string listed(const std::vector<std::string>& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += items[i];
  }
  return text;
}

std::string watts_text(units::Power power) { return exact(in_watts(power)) + " W"; }

std::string watts_text(const model::PowerRange& range) {
  if (range.is_exact()) return watts_text(range.low);
  return fmt::format("{} to {}", exact(in_watts(range.low)), watts_text(range.high));
}

}  // namespace wattweek::report
