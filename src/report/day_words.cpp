#include "day_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bitset>

#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

constexpr std::array<const char*, 7> kWeekdays{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
constexpr std::array<const char*, 12> kMonths{"jan", "feb", "mar", "apr", "may", "jun",
                                              "jul", "aug", "sep", "oct", "nov", "dec"};

constexpr std::size_t kMostRuns = 3;  // More runs of dates in a row of a table are not read.

/// Neighbours in the circle of names joined: three and more as `fri to sun`.
template <std::size_t N>
std::vector<std::string> runs(const std::bitset<N>& set, const std::array<const char*, N>& names) {
  if (set.all()) return {fmt::format("{} to {}", names.front(), names.back())};
  std::vector<std::string> words;
  for (std::size_t begin = 0; begin < N; ++begin) {
    if (!set[begin] || set[(begin + N - 1) % N]) continue;
    std::size_t length = 1;
    while (set[(begin + length) % N]) ++length;
    const std::size_t end = (begin + length - 1) % N;
    if (length > 2) {
      words.push_back(fmt::format("{} to {}", names[begin], names[end]));
    } else {
      words.emplace_back(names[begin]);
      if (length == 2) words.emplace_back(names[end]);
    }
  }
  return words;
}

std::string kind_words(const calendar::KindOfDay& kind) {
  std::vector<std::string> items;
  if (kind.days.any()) items = runs(kind.days, kWeekdays);
  if (kind.holidays_on.all()) items.emplace_back("holidays");
  if (kind.holidays_on.any() && !kind.holidays_on.all()) {
    items.push_back("holidays on " + listed(runs(kind.holidays_on, kWeekdays)));
  }
  const bool always = kind.days.all() && kind.holidays_on.all();
  const std::string days = always ? "every day" : listed(items);
  return kind.months.all() ? days : days + ", " + month_words(kind.months);
}

std::string run_words(const calendar::DateRun& run) {
  if (!run.first)
    return run.last ? "before " + calendar::to_text(*run.last + std::chrono::days{1}) : "";
  if (!run.last) return fmt::format("from {} on", calendar::to_text(*run.first));
  if (*run.first == *run.last) return calendar::to_text(*run.first);
  return fmt::format("{} to {}", calendar::to_text(*run.first), calendar::to_text(*run.last));
}

/// What lasts for ever in both directions is what no span of dates names.
std::string dates_words(const std::vector<calendar::DateRun>& dates) {
  if (!dates.front().first && !dates.back().last) return "other dates";
  std::vector<std::string> words;
  for (std::size_t i = 0; i < std::min(dates.size(), kMostRuns); ++i) {
    words.push_back(run_words(dates[i]));
  }
  if (dates.size() > kMostRuns) words.push_back(fmt::format("{} more", dates.size() - kMostRuns));
  return listed(words);
}

bool is_every_day(const calendar::KindOfDay& kind) {
  return kind.days.all() && kind.holidays_on.all() && kind.months.all();
}

}  // namespace

std::string weekday_word(unsigned weekday_bit) { return kWeekdays[weekday_bit]; }

std::string month_word(unsigned month_bit) { return kMonths[month_bit]; }

std::string month_words(model::MonthSet months) {
  return months.all() ? "every month" : listed(runs(months, kMonths));
}

std::string day_words(const calendar::PricedDays& priced) {
  const bool dates_say_all = priced.kinds.size() == 1 && is_every_day(priced.kinds.front());
  if (!priced.dates.empty() && dates_say_all) return dates_words(priced.dates);
  std::string text;
  for (const calendar::KindOfDay& kind : priced.kinds) {
    text += (text.empty() ? "" : "; ") + kind_words(kind);
  }
  return priced.dates.empty() ? text : fmt::format("{} ({})", text, dates_words(priced.dates));
}

std::string clock_words(int minute) { return fmt::format("{:02}:{:02}", minute / 60, minute % 60); }

}  // namespace wattweek::report
