#include "grammar.hpp"

#include <array>
#include <utility>

#include "slips.hpp"
#include "value.hpp"

namespace wattweek::read {

namespace {

using Words = std::vector<std::string_view>;

const Words kDays{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
const Words kMonths{"jan", "feb", "mar", "apr", "may", "jun",
                    "jul", "aug", "sep", "oct", "nov", "dec"};

template <class T>
Parsed<T> wrong(std::string problem) {
  return {std::nullopt, std::move(problem)};
}

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string lower_case(std::string_view text) {
  std::string lowered(text);
  for (char& c : lowered) c = lower(c);
  return lowered;
}

std::vector<std::string_view> split(std::string_view text, char mark) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t end = text.find(mark);
    parts.push_back(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

// What is wrong with the text as a whole, before its items are looked at.
std::string whole_problem(std::string_view text) {
  if (trimmed(text).empty()) return "the text is empty";
  for (const std::string_view dash : {"–", "—", "−"}) {
    if (text.find(dash) != std::string_view::npos) return "the dash is a long one; write a plain -";
  }
  return "";
}

// A cycle of names: the days of the week, the months of the year.
struct Cycle {
  const Words& words;
  std::string_view what;  // "day"
};

Parsed<std::size_t> parse_name(std::string_view text, const Cycle& cycle) {
  const std::string name = lower_case(text);
  for (std::size_t i = 0; i < cycle.words.size(); ++i) {
    if (cycle.words[i] == name) return {i, ""};
  }
  if (name.empty()) return wrong<std::size_t>("a " + std::string(cycle.what) + " is missing");
  std::string problem = in_quotes(text) + " is not a " + std::string(cycle.what);
  for (const std::string_view word : cycle.words) {
    if (name.substr(0, word.size()) == word) {
      return wrong<std::size_t>(problem + ", did you mean " + in_quotes(word) + "?");
    }
  }
  const std::string_view near = diag::nearest(name, cycle.words);
  if (!near.empty()) problem += ", did you mean " + in_quotes(near) + "?";
  return wrong<std::size_t>(std::move(problem));
}

// NAME or NAME-NAME; a span wraps, and from a name to itself is that one alone.
template <std::size_t N>
std::string add_span(std::bitset<N>& set, std::string_view item, const Cycle& cycle) {
  const std::vector<std::string_view> ends = split(item, '-');
  if (ends.size() > 2) return in_quotes(item) + " has more than one dash";
  const auto first = parse_name(ends.front(), cycle);
  if (!first.value) return first.problem;
  const auto last = parse_name(ends.back(), cycle);
  if (!last.value) return last.problem;
  for (std::size_t i = *first.value;; i = (i + 1) % N) {
    set.set(i);
    if (i == *last.value) return "";
  }
}

template <std::size_t N>
Parsed<std::bitset<N>> parse_cycle(std::string_view text, const Cycle& cycle) {
  using Set = std::bitset<N>;
  if (std::string problem = whole_problem(text); !problem.empty()) return wrong<Set>(problem);
  if (lower_case(trimmed(text)) == "all") return {Set().set(), ""};
  Set set;
  for (const std::string_view item : split(text, ',')) {
    if (item.empty()) return wrong<Set>("there is a comma too many");
    if (lower_case(item) == "all") return wrong<Set>("\"all\" stands alone");
    if (std::string problem = add_span(set, item, cycle); !problem.empty()) {
      return wrong<Set>(problem);
    }
  }
  return {set, ""};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Exactly as many digits as the text has letters.
std::optional<int> digits(std::string_view text) {
  int number = 0;
  for (const char c : text) {
    if (!is_digit(c)) return std::nullopt;
    number = 10 * number + (c - '0');
  }
  return number;
}

// HH:MM, in minutes since midnight, up to 24:00.
Parsed<int> parse_clock(std::string_view text) {
  const bool shaped = text.size() == 5 && text[2] == ':';
  const auto hour = shaped ? digits(text.substr(0, 2)) : std::nullopt;
  const auto minute = shaped ? digits(text.substr(3, 2)) : std::nullopt;
  if (!hour || !minute) return wrong<int>(in_quotes(text) + " is not a time HH:MM");
  if (*minute > 59) return wrong<int>(in_quotes(text) + " has more than 59 minutes");
  if (*hour * 60 + *minute > 1440) return wrong<int>(in_quotes(text) + " is beyond 24:00");
  return {*hour * 60 + *minute, ""};
}

// HH:MM-HH:MM; an end of 00:00 is the end of the day.
Parsed<model::HourSpan> parse_hour_span(std::string_view item) {
  using Span = model::HourSpan;
  if (item.empty()) return wrong<Span>("there is a comma too many");
  const std::vector<std::string_view> ends = split(item, '-');
  if (ends.size() != 2) return wrong<Span>(in_quotes(item) + " is not a span HH:MM-HH:MM");
  const auto start = parse_clock(ends[0]);
  if (!start.value) return wrong<Span>(start.problem);
  const auto end = parse_clock(ends[1]);
  if (!end.value) return wrong<Span>(end.problem);
  if (*start.value == *end.value) {
    return wrong<Span>(in_quotes(item) + " starts and ends at once; the whole day is 00:00-24:00");
  }
  if (*start.value == 1440) return wrong<Span>("24:00 can only be an end; a start is 00:00");
  return {Span{*start.value, *end.value == 0 ? 1440 : *end.value}, ""};
}

Parsed<model::CivilDay> parse_date(std::string_view text) {
  const bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-';
  const auto year = shaped ? digits(text.substr(0, 4)) : std::nullopt;
  const auto month = shaped ? digits(text.substr(5, 2)) : std::nullopt;
  const auto day = shaped ? digits(text.substr(8, 2)) : std::nullopt;
  if (!year || !month || !day) {
    return wrong<model::CivilDay>(in_quotes(text) + " is not a date YYYY-MM-DD");
  }
  const std::chrono::year_month_day date = std::chrono::year(*year) / *month / *day;
  if (!date.ok()) return wrong<model::CivilDay>("there is no date " + std::string(text));
  return {model::CivilDay(date), ""};
}

}  // namespace

Parsed<model::WeekdaySet> parse_days(std::string_view text) {
  return parse_cycle<7>(text, {kDays, "day"});
}

Parsed<model::MonthSet> parse_months(std::string_view text) {
  return parse_cycle<12>(text, {kMonths, "month"});
}

Parsed<std::vector<model::HourSpan>> parse_hours(std::string_view text) {
  using Spans = std::vector<model::HourSpan>;
  if (std::string problem = whole_problem(text); !problem.empty()) return wrong<Spans>(problem);
  Spans spans;
  for (const std::string_view item : split(text, ',')) {
    const auto span = parse_hour_span(item);
    if (!span.value) return wrong<Spans>(span.problem);
    spans.push_back(*span.value);
  }
  return {spans, ""};
}

Parsed<model::DateSpan> parse_dates(std::string_view text) {
  using Span = model::DateSpan;
  if (trimmed(text).empty()) return wrong<Span>("the text is empty");
  const std::size_t dots = text.find("..");
  if (dots == std::string_view::npos) return wrong<Span>("the two dates need .. between them");
  const auto first = parse_date(trimmed(text.substr(0, dots)));
  if (!first.value) return wrong<Span>(first.problem);
  const auto last = parse_date(trimmed(text.substr(dots + 2)));
  if (!last.value) return wrong<Span>(last.problem);
  if (*last.value < *first.value) return wrong<Span>("the dates end before they start");
  return {Span{*first.value, *last.value}, ""};
}

Parsed<std::chrono::weekday> parse_weekday(std::string_view text) {
  const auto day = parse_name(trimmed(text), {kDays, "day"});
  if (!day.value) return wrong<std::chrono::weekday>(day.problem);
  return {std::chrono::weekday(static_cast<unsigned>(*day.value) + 1), ""};
}

}  // namespace wattweek::read
