#include "random_window.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace wattweek::oracle {
namespace {

const std::vector<std::string> kDays{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
const std::vector<std::string> kMonths{"jan", "feb", "mar", "apr", "may", "jun",
                                       "jul", "aug", "sep", "oct", "nov", "dec"};

// Minutes of the clock face at which clocks change somewhere, and their neighbours.
const std::vector<int> kOddEdges{0,   1,   30,  60,   90,   120,  150,  165,
                                 180, 225, 240, 1320, 1380, 1381, 1410, 1439};

int random_edge(Dice& dice) {
  const int kind = dice.between(1, 10);
  if (kind <= 6) return dice.pick(kOddEdges);
  if (kind <= 8) return 15 * dice.between(0, 95);
  return dice.between(0, 1439);
}

std::string clock_text(int minute) { return fmt::format("{:02}:{:02}", minute / 60, minute % 60); }

std::string upper_case(std::string text) {
  for (char& c : text) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return text;
}

// Single names and spans, which may wrap; now and then loosely written.
std::string random_names(Dice& dice, const std::vector<std::string>& names) {
  std::string text;
  const int parts = dice.between(1, 3);
  for (int i = 0; i < parts; ++i) {
    if (i > 0) text += dice.chance(20) ? " , " : ",";
    text += dice.pick(names);
    if (dice.chance(35)) text += (dice.chance(20) ? " - " : "-") + dice.pick(names);
  }
  return dice.chance(15) ? upper_case(text) : text;
}

// Half of them name a month of the study.
std::string random_months(Dice& dice, const Period& period) {
  std::string text = random_names(dice, kMonths);
  if (dice.chance(50)) {
    const auto month = period.first + std::chrono::months(dice.between(0, period.months - 1));
    text += "," + kMonths[static_cast<unsigned>(month.month()) - 1];
  }
  return text;
}

std::string date_text(std::chrono::sys_days day) {
  const std::chrono::year_month_day date(day);
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

// In the period or up to ten days around it.
std::chrono::sys_days random_day(Dice& dice, const Period& period) {
  const std::chrono::sys_days first(period.first / std::chrono::day(1));
  return first + std::chrono::days(dice.between(-10, 31 * period.months + 10));
}

}  // namespace

Span random_span(Dice& dice) {
  const int start = random_edge(dice);
  int end = dice.chance(15) ? 1440 : random_edge(dice);
  if (end == start) end = start + 1;
  const int length = end > start ? end - start : end + 1440 - start;
  const std::string dash = dice.chance(10) ? " - " : "-";
  return {clock_text(start) + dash + clock_text(end), length};
}

std::string random_date_span(Dice& dice, const Period& period) {
  const auto first = random_day(dice, period);
  const auto last = first + std::chrono::days(dice.chance(30) ? 0 : dice.between(1, 40));
  return date_text(first) + ".." + date_text(last);
}

std::string random_holidays(Dice& dice, const Period& period) {
  std::vector<std::string> dates;
  for (int i = dice.between(0, 3); i > 0; --i) dates.push_back(date_text(random_day(dice, period)));
  std::sort(dates.begin(), dates.end());
  dates.erase(std::unique(dates.begin(), dates.end()), dates.end());
  return fmt::format("holidays = [{}]", fmt::join(dates, ", "));
}

Keys random_day_filters(Dice& dice, const Period& period) {
  Keys keys;
  if (dice.chance(45)) {
    keys.push_back(
        fmt::format("days = \"{}\"", dice.chance(10) ? "all" : random_names(dice, kDays)));
  }
  if (dice.chance(20)) keys.push_back(fmt::format("months = \"{}\"", random_months(dice, period)));
  if (dice.chance(20))
    keys.push_back(fmt::format("dates = \"{}\"", random_date_span(dice, period)));
  return keys;
}

Keys random_window(Dice& dice, const Period& period) {
  Keys keys = random_day_filters(dice, period);
  if (dice.chance(20)) return keys;
  std::string spans = random_span(dice).text;
  for (int more = dice.chance(30) ? dice.between(1, 2) : 0; more > 0; --more) {
    spans += (dice.chance(20) ? " , " : ",") + random_span(dice).text;
  }
  keys.push_back(fmt::format("hours = \"{}\"", spans));
  return keys;
}

std::string on_lines(const Keys& keys) {
  std::string text;
  for (const std::string& key : keys) text += key + "\n";
  return text;
}

std::string in_braces(const Keys& keys) { return fmt::format("{{ {} }}", fmt::join(keys, ", ")); }

}  // namespace wattweek::oracle
