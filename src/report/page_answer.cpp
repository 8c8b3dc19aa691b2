#include "page_answer.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "page_figures.hpp"
#include "sentences.hpp"
#include "spoken.hpp"
#include "sums.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

/// ` (54 to 60)`; empty where nobody drew, or nothing is open.
std::string in_brackets(double central, const decide::Spread* spread) {
  if (spread == nullptr) return "";
  const std::string ranged = with_range(central, *spread);
  const std::size_t bracket = ranged.find(" (");
  return bracket == std::string::npos ? "" : ranged.substr(bracket);
}

/// `57 EUR (54 to 60) a year`.
std::string cost_words(const Shown& s, std::size_t c) {
  const double cost = units::in_currency(s.all.candidates[c].cost.cost);
  const decide::CandidateDoubt* doubt = doubt_of(s, c);
  return fmt::format("{}{} {}", spoken_money(cost, s.currency()),
                     in_brackets(cost, doubt == nullptr ? nullptr : &doubt->cost),
                     over_the_study(s));
}

std::vector<std::string> of_one(const Shown& s) {
  const decide::CandidateResult& result = s.all.candidates.front();
  const double base_w = 1000 * cause_kwh(result, 0) / s.all.hours;
  return {fmt::format("{} adds {} to the electricity bill.", s.study.candidates.front().name,
                      cost_words(s, 0)),
          fmt::format("It draws {} kWh {}, {} W on average; {} W of these are there with nobody "
                      "using it.",
                      spoken(units::in_kilowatt_hours(result.energy)), over_the_study(s),
                      spoken(units::in_watts(result.mean)), spoken(base_w))};
}

/// Where purchases differ and nobody said for how long things are kept, there is no best.
std::vector<std::string> without_ranking(const Shown& s) {
  std::vector<double> costs;
  for (const decide::CandidateResult& result : s.all.candidates) {
    costs.push_back(units::in_currency(result.cost.cost));
  }
  const std::size_t lowest = decide::best_of(costs);
  return {fmt::format("{} costs least to run: {}.", s.study.candidates[lowest].name,
                      cost_words(s, lowest)),
          "Which one is best cannot be said yet: to buy they differ, and for how many years they "
          "are kept is not said (finance.years in the study)."};
}

std::string best_sentence(const Shown& s, const std::vector<decide::Ranked>& ranked) {
  const decide::Ranked& best = ranked[0];
  const decide::Ranked& second = ranked[1];
  const std::string& name = s.study.candidates[best.candidate].name;
  const double more = second.criterion - best.criterion;
  const std::string ahead = shows_as_zero(more, s.currency())
                                ? "as much as " + s.study.candidates[second.candidate].name
                                : fmt::format("{} less than {}", spoken_money(more, s.currency()),
                                              s.study.candidates[second.candidate].name);
  const auto& lifetime = s.all.candidates[best.candidate].lifetime;
  if (!lifetime) {
    return fmt::format("{} costs least: {} on the electricity bill, {}.", name,
                       cost_words(s, best.candidate), ahead);
  }
  const decide::CandidateDoubt* doubt = doubt_of(s, best.candidate);
  return fmt::format(
      "{} costs least over {}: {}{} for buying and running it, {}.", name,
      counted(static_cast<std::size_t>(lifetime->years), "year"),
      spoken_money(best.criterion, s.currency()),
      in_brackets(best.criterion, doubt == nullptr ? nullptr : &*doubt->present_cost), ahead);
}

/// How often it is the cheapest where figures are ranges.
std::string how_sure(const Shown& s, std::size_t best) {
  if (!s.all.uncertainty) return "";
  const double share = s.all.uncertainty->candidates[best].cheapest.value_or(1);
  if (share == 1) return "in all trials with the uncertain figures it stays the cheapest";
  return fmt::format("in {} of the trials with the uncertain figures it is the cheapest",
                     percent_of(share));
}

/// Against what is there today.
std::string against_baseline(const Shown& s, std::size_t best) {
  const auto row = std::find_if(s.all.rows.begin(), s.all.rows.end(),
                                [best](const auto& each) { return each.candidate == best; });
  if (row == s.all.rows.end()) return "";
  const std::string& baseline = s.study.candidates[s.all.baseline].name;
  if (shows_as_zero(row->saves_cost, s.currency())) {
    return fmt::format("it costs as much to run as {}", baseline);
  }
  const bool saves = row->saves_cost > 0;
  return fmt::format("to run, it takes {} a year {} than {}",
                     spoken_money(std::abs(row->saves_cost), s.currency()), saves ? "less" : "more",
                     baseline);
}

std::string second_sentence(const Shown& s, std::size_t best) {
  std::vector<std::string> parts = {against_baseline(s, best), how_sure(s, best)};
  parts.erase(std::remove(parts.begin(), parts.end(), ""), parts.end());
  if (parts.empty()) return "";
  return capitalised(fmt::format("{}.", fmt::join(parts, ", and ")));
}

}  // namespace

std::vector<std::string> answer(const Shown& s) {
  const auto ranked = decide::ranking(s.study, s.all);
  std::vector<std::string> sentences;
  if (s.study.candidates.size() == 1) {
    sentences = of_one(s);
  } else if (!ranked) {
    sentences = without_ranking(s);
  } else {
    sentences = {best_sentence(s, *ranked), second_sentence(s, ranked->front().candidate)};
  }
  if (!all_serve_the_same(s.all)) {
    sentences.emplace_back("But not all of the work is done alike: see the notes.");
  }
  sentences.erase(std::remove(sentences.begin(), sentences.end(), ""), sentences.end());
  return sentences;
}

}  // namespace wattweek::report
