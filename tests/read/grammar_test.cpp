// The little languages of windows, read through a use of a study.
#include "support.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;
using namespace std::chrono_literals;

namespace {

model::Window window(const std::string& filters) {
  const std::string text = edited(kStudy, R"(hours = "20:00-22:00")", filters);
  return value_of(read_study(text)).study.workloads[0].uses[0].window;
}

// Monday first: "1000011".
std::string days_of(const std::string& text) {
  std::string shown;
  const model::WeekdaySet days = window("days = \"" + text + "\"").days;
  for (std::size_t i = 0; i < days.size(); ++i) shown += days.test(i) ? '1' : '0';
  return shown;
}

std::string months_of(const std::string& text) {
  std::string shown;
  const model::MonthSet months = window("months = \"" + text + "\"").months;
  for (std::size_t i = 0; i < months.size(); ++i) shown += months.test(i) ? '1' : '0';
  return shown;
}

std::vector<model::HourSpan> hours_of(const std::string& text) {
  return window("hours = \"" + text + "\"").hours;
}

}  // namespace

TEST_CASE("days are names and spans, which may wrap, in any case and with blanks") {
  const std::map<std::string, std::string> cases{
      {"mon", "1000000"},           {"mon-mon", "1000000"}, {"sat,sun", "0000011"},
      {"sat-mon", "1000011"},       {"mon-sun", "1111111"}, {"tue-mon", "1111111"},
      {"all", "1111111"},           {" ALL ", "1111111"},   {"WED , thu-SAT", "0011110"},
      {"fri - sun,TUE", "0100111"}, {"mon,mon", "1000000"}, {"sun-sun,sat", "0000011"},
  };
  for (const auto& good : cases) {
    const auto& text = good.first;
    const auto& bits = good.second;
    CAPTURE(text);
    CHECK(days_of(text) == bits);
  }
}

TEST_CASE("months are names and spans, which may wrap") {
  const std::map<std::string, std::string> cases{
      {"jan", "100000000000"},     {"nov-feb", "110000000011"}, {"apr, Oct-Dec", "000100000111"},
      {"may-may", "000010000000"}, {"all", "111111111111"},     {"jul-jun", "111111111111"},
  };
  for (const auto& good : cases) {
    const auto& text = good.first;
    const auto& bits = good.second;
    CAPTURE(text);
    CHECK(months_of(text) == bits);
  }
}

TEST_CASE("hours are spans of the clock face, and midnight as an end is 24:00") {
  using Spans = std::vector<model::HourSpan>;
  const std::map<std::string, Spans> cases{
      {"00:00-24:00", {{0, 1440}}},
      {"20:00-22:00", {{1200, 1320}}},
      {"22:00-06:00", {{1320, 360}}},
      {"22:00-00:00", {{1320, 1440}}},
      {"22:00-24:00", {{1320, 1440}}},
      {" 06:00 - 09:00 , 17:00 - 24:00 ", {{360, 540}, {1020, 1440}}},
      {"01:00-02:00,01:30-03:00", {{60, 120}, {90, 180}}},
      {"23:59-23:58", {{1439, 1438}}},
  };
  for (const auto& good : cases) {
    const auto& text = good.first;
    const auto& spans = good.second;
    CAPTURE(text);
    CHECK(hours_of(text) == spans);
  }
}

TEST_CASE("dates hold from the first to the last day, both included") {
  const auto day = [](std::chrono::year_month_day date) { return model::CivilDay(date); };
  const auto dates = window("dates = \"2027-12-24..2028-01-06\"").dates;
  CHECK(dates == model::DateSpan{day(2027y / 12 / 24), day(2028y / 1 / 6)});
  CHECK(window("dates = \" 2028-02-29 .. 2028-02-29 \"").dates ==
        model::DateSpan{day(2028y / 2 / 29), day(2028y / 2 / 29)});
}

TEST_CASE("a window without filters is always, and stands where its table does") {
  const model::Window always = window("");
  CHECK(always.days == model::kEveryDay);
  CHECK(always.months == model::kEveryMonth);
  CHECK(always.hours == std::vector<model::HourSpan>{{0, 1440}});
  CHECK_FALSE(always.dates.has_value());
  CHECK(diag::to_text(always.place) == "study.toml:7:1");
}
