#include <fmt/format.h>

#include <algorithm>

#include "document.hpp"
#include "factor_words.hpp"
#include "numbers.hpp"
#include "turn_words.hpp"
#include "wattweek/report/what_if.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

/// `below 0.936 times today's - 0.1633 EUR (night), ... - it is Refitted office tower`.
std::string turn_words(const WhatIfShown& shown, const decide::Factor& factor,
                       const decide::Turn& turn, std::string_view side, FactorNames names) {
  const std::string meaning = meaning_of(shown, factor, turn.at);
  const std::string meant = meaning.empty()              ? ""
                            : names == FactorNames::told ? fmt::format(" - {} -", meaning)
                                                         : fmt::format(", that is {},", meaning);
  return fmt::format("{} {} times today's{} it is {}", side, rounded(turn.at, 3), meant,
                     shown.study.candidates[turn.best].name);
}

}  // namespace

std::string turn_sentence(const WhatIfShown& shown, const decide::Turns& turns, FactorNames names) {
  std::vector<std::string> parts;
  if (turns.below) parts.push_back(turn_words(shown, turns.factor, *turns.below, "below", names));
  if (turns.above) parts.push_back(turn_words(shown, turns.factor, *turns.above, "above", names));
  const std::string name =
      names == FactorNames::told ? fmt::format(" ({})", name_of(shown.study, turns.factor)) : "";
  return fmt::format("{}{}: {}.", factor_words(shown.study, turns.factor), name, listed(parts));
}

std::string turns_text(const WhatIfShown& shown, const decide::AllTurns& turns,
                       const Style& style) {
  const auto& lifetime = shown.assessment.candidates.front().lifetime;
  const std::string over =
      lifetime
          ? fmt::format("over {}, all at present value",
                        counted(static_cast<std::size_t>(lifetime->years), "year"))
          : fmt::format("over {}", counted(static_cast<std::size_t>(shown.study.months), "month"));
  List changing;
  std::vector<std::string> idle;
  for (const decide::Turns& each : turns.turns) {
    if (each.below || each.above) {
      changing.items.push_back(turn_sentence(shown, each, FactorNames::told));
    } else {
      idle.push_back(name_of(shown.study, each.factor));
    }
  }
  Section section{"What would change the answer", {}};
  section.blocks.emplace_back(
      Paragraph{fmt::format("{} costs least {}. One thing changed alone, and the best changes:",
                            shown.study.candidates[turns.best].name, over)});
  if (!changing.items.empty()) section.blocks.emplace_back(changing);
  if (!idle.empty()) {
    section.blocks.emplace_back(
        Paragraph{fmt::format("From 0 to {} times today's, each alone, these change nothing: {}.",
                              rounded(decide::kFarthestFactor, 0), fmt::join(idle, ", "))});
  }
  return lay_out_text({shown.study.title, {section}}, style);
}

}  // namespace wattweek::report
