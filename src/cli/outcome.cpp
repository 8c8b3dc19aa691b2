#include "cli/outcome.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "wattweek/diag/printable.hpp"

namespace wattweek::cli {
namespace {

constexpr std::size_t kMostErrors = 50;
constexpr std::size_t kMostWords = 20;

}  // namespace

std::string error_line(std::string_view message) {
  return fmt::format("wattweek: error: {}\n", diag::printable(message));
}

Outcome refused(std::string_view message) { return {kWrongInput, "", error_line(message)}; }

Outcome refused(std::vector<diag::Diagnostic> problems) {
  diag::sort_by_place(problems);
  Outcome outcome{kWrongInput, ""};
  const std::size_t shown = std::min(problems.size(), kMostErrors);
  for (std::size_t i = 0; i < shown; ++i) outcome.err += to_text(problems[i]) + '\n';
  if (const std::size_t more = problems.size() - shown; more > 0) {
    outcome.err += error_line(fmt::format("and {} more error{}", more, more == 1 ? "" : "s"));
  }
  return outcome;
}

std::string suggestion(std::string_view found, const std::vector<std::string_view>& accepted) {
  std::string text;
  if (const std::string_view near = diag::nearest(found, accepted); !near.empty()) {
    text = fmt::format("; did you mean '{}'? Accepted are ", near);
  } else {
    text = "; accepted are ";
  }
  const std::size_t shown = std::min(accepted.size(), kMostWords);
  for (std::size_t i = 0; i < shown; ++i) text += (i > 0 ? ", " : "") + std::string(accepted[i]);
  if (shown < accepted.size()) text += fmt::format(" and {} more", accepted.size() - shown);
  return text;
}

}  // namespace wattweek::cli
