#include "stamps.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>

#include "scanner.hpp"
#include "words.hpp"

namespace wattweek::logs {
namespace {

constexpr std::array<std::string_view, 12> kMonths = {"jan", "feb", "mar", "apr", "may", "jun",
                                                      "jul", "aug", "sep", "oct", "nov", "dec"};
constexpr std::array<std::string_view, 7> kWeekdays = {"mon", "tue", "wed", "thu",
                                                       "fri", "sat", "sun"};

constexpr std::string_view kDateMarks = "-/.";

// The place of a word in a list of beginnings, from 1; 0: none.
template <std::size_t N>
int place_of(std::string_view word, const std::array<std::string_view, N>& beginnings) {
  for (std::size_t i = 0; i < N; ++i) {
    if (word.size() >= 3 && same_word(word.substr(0, 3), beginnings[i])) {
      return static_cast<int>(i) + 1;
    }
  }
  return 0;
}

void skip_weekday(Scanner& text) {
  Scanner trial = text;
  if (place_of(trial.take_word(), kWeekdays) == 0) return;
  trial.skip(",. ");
  text = trial;
}

// 20241027
bool take_compact_date(Scanner& text, Stamp& stamp) {
  stamp.form = DateForm::year_first;
  stamp.numbers[0] = text.take_number(4);
  stamp.numbers[1] = text.take_number(2);
  stamp.numbers[2] = text.take_number(2);
  return true;
}

std::optional<int> take_year(Scanner& text) {
  const std::size_t digits = text.digits_ahead();
  if (digits == 4) return text.take_number(4);
  if (digits == 2) return 2000 + text.take_number(2);
  return std::nullopt;
}

// jan2022, Jan 1, 2023, with the day before or behind the month's name.
bool take_named_date(Scanner& text, Stamp& stamp, std::optional<int> day) {
  const int month = place_of(text.take_word(), kMonths);
  if (month == 0) return false;
  text.skip("-/. ");
  if (!day) {
    day = text.take_short_number();
    text.skip(", ");
  }
  const auto year = day ? take_year(text) : std::nullopt;
  if (!year) return false;
  stamp.form = DateForm::named;
  stamp.numbers[0] = *year;
  stamp.numbers[1] = month;
  stamp.numbers[2] = *day;
  return true;
}

// 2024-10-27, 05/12/2011, 5.12.11
bool take_numbered_date(Scanner& text, Stamp& stamp, int first, std::size_t digits) {
  stamp.numbers[0] = first;
  stamp.dots = text.next() == '.';
  const char mark = text.next();
  if (!text.take_any(kDateMarks)) return false;
  const auto second = text.take_short_number();
  if (!second || !text.take(mark)) return false;
  stamp.numbers[1] = *second;
  const std::size_t last_digits = text.digits_ahead();
  if (digits == 4 ? last_digits > 2 || last_digits == 0 : last_digits != 2 && last_digits != 4) {
    return false;
  }
  stamp.numbers[2] = text.take_number(last_digits);
  stamp.form = digits == 4 ? DateForm::year_first : DateForm::numbers;
  stamp.short_year = digits != 4 && last_digits == 2;
  return true;
}

bool take_date(Scanner& text, Stamp& stamp) {
  skip_weekday(text);
  const std::size_t digits = text.digits_ahead();
  if (digits == 8 || digits == 12 || digits == 14) return take_compact_date(text, stamp);
  if (digits == 0) return take_named_date(text, stamp, std::nullopt);
  if (digits != 1 && digits != 2 && digits != 4) return false;
  const int first = text.take_number(digits);
  Scanner trial = text;
  trial.skip("-/. ");
  if (is_letter(trial.next()) && digits <= 2 && take_named_date(trial, stamp, first)) {
    text = trial;
    return true;
  }
  return take_numbered_date(text, stamp, first, digits);
}

// Hours, minutes and seconds, the latter two with or without colons between.
std::optional<Microseconds> take_hms(Scanner& text) {
  const std::size_t digits = text.digits_ahead();
  const bool compact = digits == 4 || digits == 6;
  if (!compact && digits != 1 && digits != 2) return std::nullopt;
  const int hours = text.take_number(compact ? 2 : digits);
  if (!compact && (!text.take(':') || text.digits_ahead() != 2)) return std::nullopt;
  const int minutes = text.take_number(2);
  int seconds = 0;
  if (compact ? digits == 6 : text.take(':')) {
    if (text.digits_ahead() < 2 || (!compact && text.digits_ahead() != 2)) return std::nullopt;
    seconds = text.take_number(2);
  }
  const bool is_end_of_day = hours == 24 && minutes == 0 && seconds == 0;
  if ((hours > 23 && !is_end_of_day) || minutes > 59 || seconds > 59) return std::nullopt;
  return ((hours * 60 + minutes) * 60 + seconds) * kSecond;
}

bool take_fraction(Scanner& text, Microseconds& clock_us) {
  if (!text.take_any(".,")) return true;
  if (text.digits_ahead() == 0) return false;
  for (Microseconds place = kSecond / 10; text.digits_ahead() > 0; place /= 10) {
    clock_us += place * text.take_number(1);
  }
  return true;
}

// AM and PM, of a clock that shows 1 to 12.
bool take_half_of_day(Scanner& text, Microseconds& clock_us) {
  Scanner trial = text;
  trial.skip_blanks();
  const bool am = trial.take_word("am") || trial.take_text("a.m."),
             pm = !am && (trial.take_word("pm") || trial.take_text("p.m."));
  if (!am && !pm) return true;
  const Microseconds hour = clock_us / (3600 * kSecond);
  if (hour < 1 || hour > 12) return false;
  if (hour == 12) clock_us -= kDay / 2;
  if (pm) clock_us += kDay / 2;
  text = trial;
  return true;
}

struct ZoneName {
  std::string_view name;
  int hours;
};

// Names that mean one offset; many others mean several.
constexpr std::array<ZoneName, 9> kZoneNames = {{{"z", 0},
                                                 {"utc", 0},
                                                 {"gmt", 0},
                                                 {"wet", 0},
                                                 {"west", 1},
                                                 {"cet", 1},
                                                 {"cest", 2},
                                                 {"eet", 2},
                                                 {"eest", 3}}};

bool take_zone(Scanner& text, Stamp& stamp) {
  text.skip(" ");
  if (text.is_over()) return true;
  for (const ZoneName& zone : kZoneNames) {
    if (!is_letter(text.next())) break;
    if (!text.take_word(zone.name)) continue;
    stamp.utc_offset_s = zone.hours * 3600;
    if (text.is_over()) return true;
    if (zone.hours != 0) return false;
    break;
  }
  const bool west = text.next() == '-';
  if (!text.take_any("+-")) return false;
  const std::size_t digits = text.digits_ahead();
  if (digits != 2 && digits != 4) return false;
  const int hours = text.take_number(2);
  if (digits == 2 && text.take(':') && text.digits_ahead() != 2) return false;
  const int minutes = text.digits_ahead() == 2 ? text.take_number(2) : 0;
  if (hours > 15 || minutes > 59) return false;
  stamp.utc_offset_s = (west ? -1 : 1) * (hours * 60 + minutes) * 60;
  return text.is_over();
}

bool take_clock(Scanner& text, Stamp& stamp) {
  const auto clock_us = take_hms(text);
  if (!clock_us) return false;
  stamp.has_clock = true;
  stamp.clock_us = *clock_us;
  return take_fraction(text, stamp.clock_us) && take_half_of_day(text, stamp.clock_us) &&
         take_zone(text, stamp);
}

// Between the begin and the end of an interval in one field.
constexpr std::string_view kBetween = " - ";

std::optional<Stamp> one_stamp(std::string_view field) {
  if (field.size() < 4 || field.size() > 64) return std::nullopt;
  Stamp stamp;
  Scanner text(field);
  if (field.substr(0, 3).find(':') != std::string_view::npos) {
    return take_clock(text, stamp) ? std::optional(stamp) : std::nullopt;
  }
  if (!take_date(text, stamp)) return std::nullopt;
  const bool compact_clock = text.digits_ahead() == 4 || text.digits_ahead() == 6;
  if (!text.is_over() && !compact_clock && !text.take_any("T ,t")) return std::nullopt;
  text.skip(" ");
  stamp.clock_at = field.size() - text.left();
  if (text.is_over() || take_clock(text, stamp)) return stamp;
  return std::nullopt;
}

}  // namespace

std::optional<Stamp> stamp_of(std::string_view field) {
  if (auto stamp = one_stamp(field)) return stamp;
  const std::size_t mark = field.find(kBetween);
  if (mark == std::string_view::npos || !one_stamp(field.substr(mark + kBetween.size()))) {
    return std::nullopt;
  }
  auto begin = one_stamp(field.substr(0, mark));
  if (begin) begin->is_range = true;
  return begin;
}

std::optional<Stamp> clock_of(std::string_view text) {
  Stamp stamp;
  Scanner scanner(text);
  return take_clock(scanner, stamp) ? std::optional(stamp) : std::nullopt;
}

std::optional<Microseconds> local_us(const Stamp& stamp, DateOrder order) {
  const auto& n = stamp.numbers;
  int y = n[0], m = n[1], d = n[2];
  if (stamp.form == DateForm::numbers && !(order == DateOrder::ymd && stamp.short_year)) {
    y = n[2];
    m = order == DateOrder::mdy ? n[0] : n[1];
    d = order == DateOrder::mdy ? n[1] : n[0];
    if (order == DateOrder::ymd) return std::nullopt;
  }
  if (stamp.short_year) y += 2000;
  const std::chrono::year_month_day date{std::chrono::year(y),
                                         std::chrono::month(static_cast<unsigned>(m)),
                                         std::chrono::day(static_cast<unsigned>(d))};
  if (!date.ok()) return std::nullopt;
  const Microseconds at =
      std::chrono::local_days(date).time_since_epoch().count() * kDay + stamp.clock_us;
  if (at < kEarliest || at >= kLatest) return std::nullopt;
  return at;
}

bool has_possible_date(const Stamp& stamp) {
  return stamp.form != DateForm::none &&
         (local_us(stamp, DateOrder::dmy) || local_us(stamp, DateOrder::mdy) ||
          local_us(stamp, DateOrder::ymd));
}

}  // namespace wattweek::logs
