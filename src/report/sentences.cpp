#include "sentences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "factor_words.hpp"
#include "numbers.hpp"
#include "spoken.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

/// The two that are compared, and the figures of one against the other.
struct Pair {
  const decide::ComparisonRow& row;
  const std::string& name;
  const model::Tariff& tariff;
  const std::string& currency;
  const std::optional<decide::Lifetime>& lifetime;
  const std::optional<decide::Lifetime>& baseline_lifetime;
  Amounts amounts;

  std::string money(double value) const {
    return amounts == Amounts::exact ? report::money(value, currency)
                                     : spoken_money(value, currency);
  }
  std::string kwh(double value) const {
    return amounts == Amounts::exact ? fixed(value, decimals_for({value})) : spoken(value);
  }
};

std::string years(int count) { return counted(static_cast<std::size_t>(count), "year"); }

/// A length of time as people say it: in months below two years.
std::string duration(double years) {
  if (years >= 2) return counted(rounded(years, 1), "year");
  const std::string months = rounded(12 * years, 0);
  return months == "0" ? "less than a month" : counted(months, "month");
}

std::string more_or_less(double saved) { return saved > 0 ? "less" : "more"; }

/// "costs 12.30 EUR less a year", "costs the same".
std::string running_cost(const Pair& pair) {
  const double saved = pair.row.saves_cost;
  if (shows_as_zero(saved, pair.currency)) return "costs the same to run";
  return fmt::format("costs {} {} a year to run", pair.money(std::fabs(saved)),
                     more_or_less(saved));
}

std::string running(const Pair& pair) {
  const double kwh = pair.row.saves_kwh;
  const std::string shown = pair.kwh(std::fabs(kwh));
  const bool same = shown.find_first_not_of("0.") == std::string::npos;
  const std::string energy =
      same ? "uses as much energy" : fmt::format("uses {} kWh {} a year", shown, more_or_less(kwh));
  return fmt::format("{} {} and {}.", pair.name, energy, running_cost(pair));
}

std::string purchase(const Pair& pair) {
  const double extra = pair.row.extra_purchase;
  if (shows_as_zero(extra, pair.currency)) return "Both cost the same to buy.";
  return fmt::format("It costs {} {} to buy.", pair.money(std::fabs(extra)), more_or_less(-extra));
}

/// When the purchase has paid for itself. Only said beside the verdict.
std::string payback(const Pair& pair) {
  const decide::ComparisonRow& row = pair.row;
  if (row.overtaken_years) {
    return fmt::format("It stays ahead for {}, then its running cost has eaten up what it saved.",
                       duration(*row.overtaken_years));
  }
  if (!row.payback_years) return "What it costs more to buy is never earned back.";
  if (*row.payback_years == 0) return "";
  const std::string discounted = row.discounted_payback_years
                                     ? "in " + duration(*row.discounted_payback_years)
                                     : "not within " + years(pair.lifetime->years);
  return fmt::format(
      "The extra purchase is earned back in {}; with discounting, price rises and later costs {}.",
      duration(*row.payback_years), discounted);
}

/// What it may cost to buy, where somebody asked for a payback in so many years.
std::string target(const Pair& pair, const decide::PaybackTargets& targets) {
  for (const decide::PaybackTarget& each : targets.rows) {
    if (each.candidate != pair.row.candidate) continue;
    const std::string within = years(targets.within_years);
    const auto at_most = [&pair](double purchase) {
      return purchase < 0 ? std::string("not even nothing") : pair.money(purchase);
    };
    const std::string discounted =
        each.discounted_purchase ? fmt::format("; with discounting, price rises and later costs {}",
                                               at_most(*each.discounted_purchase))
                                 : "";
    return fmt::format("To pay back within {} it may cost at most {} to buy{}.", within,
                       at_most(each.purchase), discounted);
  }
  return "";
}

/// Which is the cheaper over the horizon, all payments taken at their present value.
std::string verdict(const Pair& pair) {
  const double saved = *pair.row.saves_present_cost;
  const std::string both = fmt::format(
      "Over {}, all at present value, it costs {} against {}:", years(pair.lifetime->years),
      pair.money(pair.lifetime->present_cost), pair.money(pair.baseline_lifetime->present_cost));
  if (shows_as_zero(saved, pair.currency)) return both + " the same.";
  return fmt::format("{} {} {}.", both, pair.money(std::fabs(saved)), more_or_less(saved));
}

/// From which price on the verdict holds. The factor is the level nearest to today's, so nothing
/// turns in between.
std::string break_even(const Pair& pair) {
  const double saved = *pair.row.saves_present_cost;
  if (shows_as_zero(saved, pair.currency)) return "";
  if (!pair.row.break_even_price_factor) return "No level of electricity prices changes that.";
  const double factor = *pair.row.break_even_price_factor;
  const std::string prices = prices_at(pair.tariff, factor);
  const std::string at =
      fmt::format("{} times today's{}{}", rounded(factor, 3), prices.empty() ? "" : ": ", prices);
  if (saved > 0) {
    return fmt::format("It stays ahead until every price per kWh has {} to {}.",
                       factor < 1 ? "fallen" : "risen", at);
  }
  return fmt::format("It would draw level if every price per kWh {} to {}.",
                     factor < 1 ? "fell" : "rose", at);
}

/// The time over which candidates are ranked: the horizon, without one the study's.
std::string ranked_over(const model::Study& study, const std::optional<decide::Lifetime>& best) {
  if (best) return years(best->years) + ", all at present value";
  return counted(static_cast<std::size_t>(study.months), "month");
}

bool any_rest(const model::Study& study) {
  for (const model::Candidate& candidate : study.candidates) {
    for (const model::Device& device : candidate.devices) {
      if (!device.rests.empty()) return true;
    }
  }
  return false;
}

}  // namespace

std::vector<std::string> comparison_sentences(const model::Study& study,
                                              const decide::Assessment& all,
                                              const decide::ComparisonRow& row, Amounts amounts) {
  const Pair pair{row,
                  study.candidates[row.candidate].name,
                  study.tariff,
                  study.tariff.currency,
                  all.candidates[row.candidate].lifetime,
                  all.candidates[all.baseline].lifetime,
                  amounts};
  std::vector<std::string> sentences = {running(pair), purchase(pair)};
  if (pair.lifetime) {
    sentences.insert(sentences.end(), {payback(pair), verdict(pair), break_even(pair)});
  } else if (!shows_as_zero(row.extra_purchase, pair.currency)) {
    sentences.emplace_back(
        amounts == Amounts::exact
            ? "Whether that pays depends on the years it is kept: give finance.years in the study "
              "or "
              "--years N."
            : "Whether that pays depends on the years it is kept, and these are not given.");
  }
  if (all.targets) sentences.push_back(target(pair, *all.targets));
  sentences.erase(std::remove(sentences.begin(), sentences.end(), ""), sentences.end());
  return sentences;
}

std::string ranking_sentence(const model::Study& study, const decide::Assessment& all) {
  const auto ranked = decide::ranking(study, all);
  if (!ranked || ranked->size() < 2) return "";
  const std::string& currency = study.tariff.currency;
  const decide::Ranked& best = ranked->front();
  std::vector<std::string> others;
  for (auto other = ranked->begin() + 1; other != ranked->end(); ++other) {
    const double more = other->criterion - best.criterion;
    others.push_back(
        fmt::format("{} ({})", study.candidates[other->candidate].name,
                    shows_as_zero(more, currency) ? "the same" : money(more, currency) + " more"));
  }
  return fmt::format("Lowest cost over {}: {} ({}). Then {}.{}",
                     ranked_over(study, all.candidates[best.candidate].lifetime),
                     study.candidates[best.candidate].name, money(best.criterion, currency),
                     listed(others),
                     all_serve_the_same(all) ? "" : " They do not serve the same: see the notes.");
}

bool all_serve_the_same(const decide::Assessment& all) {
  return std::none_of(all.notes.begin(), all.notes.end(), [](const decide::Note& note) {
    return note.code == "skipped" || note.code == "unserved" || note.code == "overload";
  });
}

std::string note_sentence(const decide::Note& note) {
  return fmt::format("{}: {} ({}).", where_text(note), note.text, note.code);
}

std::vector<std::string> limits(const model::Study& study) {
  std::string outside =
      "Own solar power, prices that change by the hour, demand charges, and what the heat does to"
      " heating and cooling are not in these figures.";
  if (study.carbon_kg_per_kwh) outside += " CO2 is reckoned with the grid's average.";
  std::vector<std::string> all = {outside, std::string(highest_watts_caution())};
  if (any_rest(study)) all.emplace_back(switching_caution());
  return all;
}

}  // namespace wattweek::report
