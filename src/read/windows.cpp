#include "windows.hpp"

#include <algorithm>
#include <utility>

#include "grammar.hpp"

namespace wattweek::read {

namespace {

constexpr std::string_view kDaysAccepted = "days such as \"mon-fri,sun\", or \"all\"";
constexpr std::string_view kHoursAccepted =
    "hours such as \"22:00-06:00\" or \"06:00-09:00,17:00-24:00\"";
constexpr std::string_view kMonthsAccepted =
    "months such as \"oct-mar\" or \"jan,jul\", or \"all\"";
constexpr std::string_view kWeekdayAccepted =
    "a day of the week: \"mon\", \"tue\", \"wed\", \"thu\", \"fri\", \"sat\" or \"sun\"";
constexpr std::string_view kHolidaysAccepted =
    "an array of dates without quotes, such as [2027-01-01, 2027-12-25]";

// Why the value is not a text, where that can be guessed.
std::string not_text_hint(const Value& value) {
  const toml::node& node = value.node();
  if (node.is_time()) return "put the hours in quotes, without seconds";
  if (node.is_date()) {
    return "write \"" + value.typed() + ".." + value.typed() + "\" for one day";
  }
  if (node.is_array()) return "write one text, with commas in it";
  if (node.is_integer() && value.name().size() >= 6 &&
      value.name().substr(value.name().size() - 6) == "months") {
    return "months is a filter here; the length of the study is months at the top of the file";
  }
  return "";
}

// A text in one of the little languages.
template <class T>
std::optional<T> read_parsed(const Value& value, Parsed<T> (*parse)(std::string_view),
                             std::string_view accepted) {
  const toml::value<std::string>* text = value.node().as_string();
  if (text == nullptr) {
    value.refuse(accepted, not_text_hint(value));
    return std::nullopt;
  }
  Parsed<T> parsed = parse(text->get());
  if (!parsed.value) {
    const std::string_view joint = parsed.problem.back() == '?' ? " Expected " : "; expected ";
    value.complain(parsed.problem + std::string(joint) + std::string(accepted));
  }
  return std::move(parsed.value);
}

}  // namespace

bool has_window_keys(const Table& table) {
  return table.has("days") || table.has("hours") || table.has("months") || table.has("dates");
}

model::MonthSet read_month_filter(const Table& table) {
  const auto value = table.find("months");
  if (!value) return model::kEveryMonth;
  return read_parsed(*value, parse_months, kMonthsAccepted).value_or(model::kEveryMonth);
}

std::optional<model::DateSpan> read_date_span(const Value& value) {
  return read_parsed(value, parse_dates, kDatesAccepted);
}

model::Window read_window(const Table& table) {
  model::Window window;
  window.place = table.place();
  if (const auto days = table.find("days")) {
    window.days = read_parsed(*days, parse_days, kDaysAccepted).value_or(model::kEveryDay);
  }
  if (const auto hours = table.find("hours")) {
    if (auto spans = read_parsed(*hours, parse_hours, kHoursAccepted)) {
      window.hours = std::move(*spans);
    }
  }
  window.months = read_month_filter(table);
  if (const auto dates = table.find("dates")) window.dates = read_date_span(*dates);
  return window;
}

HolidayList read_holidays(const Table& table) {
  HolidayList list;
  if (const auto as = table.find("holidays_as")) {
    list.holidays.count_as = read_parsed(*as, parse_weekday, kWeekdayAccepted);
  }
  const auto value = table.find("holidays");
  if (!value) return list;
  list.is_given = true;
  if (!value->node().is_array()) value->refuse(kHolidaysAccepted);
  std::vector<std::pair<model::CivilDay, diag::Place>> days;
  for (const Value& element : value->elements()) {
    const auto date = read_date(element, kHolidaysAccepted);
    if (date) days.emplace_back(model::CivilDay(*date), element.place());
  }
  const auto earlier = [](const auto& a, const auto& b) { return a.first < b.first; };
  std::stable_sort(days.begin(), days.end(), earlier);
  for (auto& [day, place] : days) {
    if (!list.holidays.dates.empty() && list.holidays.dates.back() == day) continue;
    list.holidays.dates.push_back(day);
    list.holidays.places.push_back(std::move(place));
  }
  return list;
}

}  // namespace wattweek::read
