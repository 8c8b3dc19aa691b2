#include <fmt/format.h>

#include <cmath>

#include "day_words.hpp"
#include "document.hpp"
#include "numbers.hpp"
#include "wattweek/decide/lifetime.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/shift_and_rest.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

const model::Candidate& candidate_of(const RestShown& shown) {
  return shown.study.candidates[shown.plan.candidate];
}

bool sleeps(const RestShown& shown) { return shown.plan.state == model::RestState::sleep; }

/// `asleep (2 W)`.
std::string state_words(const RestShown& shown, const model::Device& device) {
  const model::Profile& profile = *device.profile;
  return sleeps(shown) ? fmt::format("asleep ({})", watts_text(*profile.sleep))
                       : fmt::format("off ({})", watts_text(profile.off));
}

/// `Tower is asleep (2 W) and Switch is asleep (0 W)`.
std::string who_rests(const RestShown& shown) {
  std::vector<std::string> items;
  for (const std::size_t d : shown.plan.devices) {
    const model::Device& device = candidate_of(shown).devices[d];
    const std::string copies = device.count == 1 ? "" : fmt::format("{} x ", device.count);
    items.push_back(fmt::format("{}{} is {}", copies, device.name, state_words(shown, device)));
  }
  return listed(items);
}

std::string question(const RestShown& shown) {
  return fmt::format("What if, with {}, {} every day from {} to {}?", candidate_of(shown).name,
                     who_rests(shown), clock_words(shown.plan.hours.start_min),
                     clock_words(shown.plan.hours.end_min));
}

/// Why it is this state that was reckoned, where nobody said which.
std::string why_this_state(const RestShown& shown) {
  if (shown.is_state_given) return "";
  if (sleeps(shown)) return "Asleep, since all of these can sleep; with :off they would be off.";
  for (const std::size_t d : shown.plan.devices) {
    const model::Device& device = candidate_of(shown).devices[d];
    if (!device.profile->sleep)
      return fmt::format("Off, since {} has no sleep watts.", device.name);
  }
  return "";
}

Table figures_table(const RestShown& shown) {
  const auto& [without, with] = std::pair{shown.result.without, shown.result.with};
  const std::string& currency = shown.study.tariff.currency;
  const int decimals = decimals_for({without.energy_kwh, with.energy_kwh});
  const auto row = [&](const std::string& name, double kwh, double cost) {
    return std::vector<std::string>{name, fixed(kwh, decimals), amount(cost, currency)};
  };
  return {{{"in " + counted(static_cast<std::size_t>(shown.study.months), "month"), Align::left},
           {"kWh"},
           {currency}},
          {row("as it is", without.energy_kwh, without.cost),
           row("with the rest", with.energy_kwh, with.cost)}};
}

std::string savings(const RestShown& shown) {
  const decide::RestResult& result = shown.result;
  const std::string& currency = shown.study.tariff.currency;
  if (decide::nearly_equal(result.with.resting_device_hours, result.without.resting_device_hours)) {
    return "At that time all of it rests already: nothing changes.";
  }
  const std::string kwh = fixed(std::fabs(result.saves_kwh), decimals_for({result.saves_kwh}));
  std::string text = fmt::format(
      "That is {} kWh a year {}, and {} a year {}.", kwh, result.saves_kwh < 0 ? "more" : "less",
      money(std::fabs(result.saves_cost), currency), result.saves_cost < 0 ? "more" : "less");
  if (!result.saves_present_cost) return text;
  return fmt::format("{} Over {} it comes to {} at present value.", text,
                     counted(static_cast<std::size_t>(*shown.study.finance->years), "year"),
                     money(std::fabs(*result.saves_present_cost), currency));
}

std::vector<std::string> unserved(const RestShown& shown) {
  std::vector<std::string> sentences;
  const double to_a_year = 12.0 / shown.study.months;
  for (std::size_t w = 0; w < shown.study.workloads.size(); ++w) {
    const energy::UnitHours& today = shown.result.without.unit_hours[w];
    const energy::UnitHours& then = shown.result.with.unit_hours[w];
    if (then.unserved <= today.unserved || decide::nearly_equal(then.unserved, today.unserved)) {
      continue;
    }
    const model::Workload& workload = shown.study.workloads[w];
    std::string text = fmt::format(
        "{} of {} {}-hours a year of {} go unserved", rounded(then.unserved * to_a_year, 1),
        rounded((then.served + then.unserved) * to_a_year, 1), workload.unit, workload.name);
    if (today.unserved > 0) {
      text += fmt::format(", today {}", rounded(today.unserved * to_a_year, 1));
    }
    sentences.push_back(text + ".");
  }
  return sentences;
}

List findings(const RestShown& shown) {
  List list{{savings(shown)}};
  const std::vector<std::string> lost = unserved(shown);
  list.items.insert(list.items.end(), lost.begin(), lost.end());
  list.items.emplace_back(
      lost.empty() ? "All that is served today is served with the rest too."
                   : "What goes unserved is a part of what is saved: it is not like for like.");
  return list;
}

}  // namespace

std::string rest_text(const RestShown& shown, const Style& style) {
  Section section{"", {Paragraph{question(shown)}}};
  const std::string why = why_this_state(shown);
  if (!why.empty()) section.blocks.emplace_back(Paragraph{why});
  section.blocks.emplace_back(figures_table(shown));
  section.blocks.emplace_back(findings(shown));
  section.blocks.emplace_back(Paragraph{std::string(switching_caution())});
  return lay_out_text({shown.study.title + ": what if it rests", {std::move(section)}}, style);
}

}  // namespace wattweek::report
