#include "cli/study_options.hpp"

#include <fmt/format.h>

#include "cli/study_file.hpp"

namespace wattweek::cli {
namespace {

std::optional<Misuse> set_years(model::Study& study, const Arguments& arguments) {
  const std::optional<std::string> text = arguments.value("years");
  if (!text) return std::nullopt;
  const auto years = whole_number("years", *text, 1, 30);
  if (const auto* misuse = std::get_if<Misuse>(&years)) return *misuse;
  if (study.months != 12) {
    return Misuse{fmt::format("--years: needs a study of 12 months, found months = {} in {}",
                              study.months, *study.months_place.file)};
  }
  if (!study.finance) study.finance.emplace();
  study.finance->years = std::get<int>(years);
  return std::nullopt;
}

std::optional<Misuse> set_baseline(model::Study& study, const Arguments& arguments) {
  const std::optional<std::string> id = arguments.value("baseline");
  if (!id) return std::nullopt;
  std::vector<std::string_view> known;
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    known.push_back(study.candidates[c].id);
    if (study.candidates[c].id != *id) continue;
    study.baseline = c;
    return std::nullopt;
  }
  return Misuse{fmt::format("--baseline: no candidate '{}'{}", *id, suggestion(*id, known))};
}

std::variant<std::vector<read::StudyInput>, Outcome> read_all(const Arguments& arguments,
                                                              Sources* sources) {
  const std::string& path = arguments.operands.front();
  const std::vector<std::string> tariffs = arguments.list("tariff");
  if (!tariffs.empty()) return read_study_under(path, tariffs, sources);
  auto alone = read_study(path, sources);
  if (auto* outcome = std::get_if<Outcome>(&alone)) return std::move(*outcome);
  return std::vector<read::StudyInput>{std::get<read::StudyInput>(std::move(alone))};
}

}  // namespace

std::variant<std::vector<read::StudyInput>, Outcome> studies_of(const Arguments& arguments,
                                                                Sources* sources) {
  auto loaded = read_all(arguments, sources);
  if (std::holds_alternative<Outcome>(loaded)) return loaded;
  for (read::StudyInput& input : std::get<std::vector<read::StudyInput>>(loaded)) {
    if (const auto misuse = set_years(input.study, arguments)) return refused(misuse->message);
    if (const auto misuse = set_baseline(input.study, arguments)) return refused(misuse->message);
  }
  return loaded;
}

std::variant<std::optional<std::size_t>, Misuse> month_of(const model::Study& study,
                                                          const Arguments& arguments) {
  const std::optional<std::string> text = arguments.value("month");
  if (!text) return std::nullopt;
  std::string first;
  std::string last;
  for (int m = 0; m < study.months; ++m) {
    last = calendar::to_text(study.start + std::chrono::months(m));
    if (m == 0) first = last;
    if (last == *text) return std::optional<std::size_t>(m);
  }
  return Misuse{fmt::format("--month: found '{}', accepted is a month of the study, {} to {}",
                            *text, first, last)};
}

}  // namespace wattweek::cli
