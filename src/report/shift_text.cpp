#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "day_words.hpp"
#include "document.hpp"
#include "numbers.hpp"
#include "wattweek/decide/lifetime.hpp"
#include "wattweek/report/shift_and_rest.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

constexpr std::size_t kStartsOfWeek = 168;

const model::Workload& workload_of(const ShiftShown& shown) {
  return shown.study.workloads[shown.shift.workload];
}

/// `22:00`, `22:00 on sat`.
std::string at_words(const decide::StartTime& time) {
  const std::string clock = clock_words(time.minute);
  return time.weekday_bit ? clock + " on " + weekday_word(*time.weekday_bit) : clock;
}

std::string at_words(const ShiftShown& shown, std::size_t start) {
  return at_words(shown.shift.starts[start].time);
}

/// `120 job-hours a year`.
std::string unit_hours(const ShiftShown& shown, double of_study) {
  return fmt::format("{} {}-hours a year", rounded(of_study * 12 / shown.study.months, 1),
                     workload_of(shown).unit);
}

/// A saving that shows, and over the horizon what it comes to.
std::string saving(const ShiftShown& shown, const decide::StartChoice& choice) {
  const std::string& currency = shown.study.tariff.currency;
  std::string text = fmt::format("{} a year less than at {}", money(choice.saves_cost, currency),
                                 at_words(shown, 0));
  if (!choice.saves_present_cost) return text + ".";
  return fmt::format("{}. Over {} that is {} at present value.", text,
                     counted(static_cast<std::size_t>(*shown.study.finance->years), "year"),
                     money(*choice.saves_present_cost, currency));
}

std::string cheapest_words(const ShiftShown& shown, const decide::StartChoice& choice) {
  const std::string& name = workload_of(shown).name;
  if (choice.start == 0) {
    return fmt::format("{} costs least as today, at {}.", name, at_words(shown, 0));
  }
  if (shows_as_zero(choice.saves_cost, shown.study.tariff.currency)) {
    return fmt::format("no start of {} costs noticeably less than today's, {}.", name,
                       at_words(shown, 0));
  }
  return fmt::format("{} costs least when it starts at {}: {}", name, at_words(shown, choice.start),
                     saving(shown, choice));
}

std::string unserved_words(const ShiftShown& shown, std::size_t candidate, std::size_t start) {
  const auto& starts = shown.shift.starts;
  const double then = starts[start].candidates[candidate].unit_hours.unserved;
  const double today = starts[0].candidates[candidate].unit_hours.unserved;
  if (today == 0) return "";
  if (start == 0) return fmt::format(" There {} go unserved.", unit_hours(shown, today));
  return fmt::format(" There {} go unserved, at {} {}.", unit_hours(shown, then),
                     at_words(shown, 0), unit_hours(shown, today));
}

/// The start that is cheap for the wrong reason.
std::string warning(const ShiftShown& shown, std::size_t candidate) {
  const auto& choice = shown.shift.choices[candidate].cheaper_unserved;
  if (!choice || shows_as_zero(choice->saves_cost, shown.study.tariff.currency)) return "";
  const decide::StartFigures& then = shown.shift.starts[choice->start].candidates[candidate];
  return fmt::format(
      " At {} it would cost {} a year less than today, but only because {} go "
      "unserved there.",
      at_words(shown, choice->start), money(choice->saves_cost, shown.study.tariff.currency),
      unit_hours(shown, then.unit_hours.unserved));
}

std::string with_capital(std::string text) {
  if (text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string choice_sentence(const ShiftShown& shown, std::size_t candidate) {
  const auto& cheapest = shown.shift.choices[candidate].cheapest;
  const std::string& name = shown.study.candidates[candidate].name;
  if (!cheapest) return fmt::format("{} does not offer {}.", name, workload_of(shown).name);
  const std::string text = cheapest_words(shown, *cheapest) +
                           unserved_words(shown, candidate, cheapest->start) +
                           warning(shown, candidate);
  if (shown.study.candidates.size() == 1) return with_capital(text);
  return fmt::format("With {}, {}", name, text);
}

bool any_unserved(const ShiftShown& shown, std::size_t candidate) {
  return std::any_of(shown.shift.starts.begin(), shown.shift.starts.end(),
                     [candidate](const decide::Start& start) {
                       return start.candidates[candidate].unit_hours.unserved > 0;
                     });
}

/// Does the study hold more of it at some starts than at others?
bool differs_in_work(const ShiftShown& shown) {
  const auto wanted = [](const decide::Start& start) {
    const energy::UnitHours& hours = start.candidates.front().unit_hours;
    return hours.served + hours.unserved;
  };
  const double today = wanted(shown.shift.starts.front());
  return std::any_of(shown.shift.starts.begin(), shown.shift.starts.end(),
                     [&wanted, today](const decide::Start& start) {
                       return !decide::nearly_equal(wanted(start), today);
                     });
}

std::string cost_text(const ShiftShown& shown, const decide::StartFigures& figures) {
  return amount(figures.cost, shown.study.tariff.currency);
}

std::string of_months(const ShiftShown& shown) {
  return fmt::format("All figures are of {}.",
                     counted(static_cast<std::size_t>(shown.study.months), "month"));
}

/// A row for each start, a column for each candidate, and one for what it leaves unserved.
Section list_of_starts(const ShiftShown& shown) {
  Table table{{{"start", Align::left}}, {}};
  const auto& all = shown.study.candidates;
  for (std::size_t c = 0; c < all.size(); ++c) {
    table.columns.push_back({fmt::format("{} {}", all[c].id, shown.study.tariff.currency)});
    if (any_unserved(shown, c)) table.columns.push_back({all[c].id + " unserved"});
  }
  for (const decide::Start& start : shown.shift.starts) {
    const std::string today = start.hours_later == 0 ? " (today)" : "";
    table.rows.push_back({at_words(start.time) + today});
    for (std::size_t c = 0; c < all.size(); ++c) {
      table.rows.back().push_back(cost_text(shown, start.candidates[c]));
      if (!any_unserved(shown, c)) continue;
      table.rows.back().push_back(rounded(start.candidates[c].unit_hours.unserved, 1));
    }
  }
  return {"Each start", {std::move(table), Paragraph{of_months(shown)}}};
}

/// The 168 starts of a week, a row for each hour of the clock.
Section week_of_starts(const ShiftShown& shown, std::size_t candidate) {
  Table table{{{"start", Align::left}}, {}};
  for (unsigned day = 0; day < 7; ++day) table.columns.push_back({weekday_word(day)});
  const int minute = shown.shift.starts.front().time.minute % 60;
  for (int hour = 0; hour < 24; ++hour) {
    table.rows.push_back({clock_words(hour * 60 + minute)});
    table.rows.back().resize(8);
  }
  for (const decide::Start& start : shown.shift.starts) {
    const decide::StartFigures& figures = start.candidates[candidate];
    const bool unserved = figures.unit_hours.unserved > 0;
    table.rows[static_cast<std::size_t>(start.time.minute / 60)][*start.time.weekday_bit + 1] =
        cost_text(shown, figures) + (unserved ? "*" : "");
  }
  Section section{
      fmt::format("{}, {}", shown.study.candidates[candidate].name, shown.study.tariff.currency),
      {std::move(table)}};
  section.blocks.emplace_back(Paragraph{
      of_months(shown) +
      (any_unserved(shown, candidate) ? " * Some of it goes unserved; json says how much." : "")});
  return section;
}

Section overview(const ShiftShown& shown) {
  const bool has_days = shown.shift.starts.front().time.weekday_bit.has_value();
  const std::string which =
      has_days ? "A start is that of its first hours on their first day; all of its hours and "
                 "days move together."
               : "A start is that of its first hours; all of them move together.";
  Section section{"",
                  {Paragraph{fmt::format("What if {} started at another hour? {} Today it starts "
                                         "at {}.",
                                         workload_of(shown).name, which, at_words(shown, 0))}}};
  List list;
  for (std::size_t c = 0; c < shown.study.candidates.size(); ++c) {
    list.items.push_back(choice_sentence(shown, c));
  }
  section.blocks.emplace_back(std::move(list));
  if (differs_in_work(shown)) {
    section.blocks.emplace_back(
        Paragraph{"The study does not hold as many unit-hours of it at every start; savings are "
                  "for the work of today."});
  }
  return section;
}

}  // namespace

std::string shift_text(const ShiftShown& shown, const Style& style) {
  Document document{shown.study.title + ": what if it is moved", {overview(shown)}};
  const bool is_week = shown.shift.starts.size() == kStartsOfWeek;
  if (!is_week) document.sections.push_back(list_of_starts(shown));
  for (std::size_t c = 0; is_week && c < shown.study.candidates.size(); ++c) {
    if (!shown.shift.choices[c].cheapest) continue;
    document.sections.push_back(week_of_starts(shown, c));
  }
  return lay_out_text(document, style);
}

}  // namespace wattweek::report
