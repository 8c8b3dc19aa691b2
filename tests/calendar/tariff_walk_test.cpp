#include "wattweek/calendar/tariff_walk.hpp"

#include <algorithm>
#include <bitset>

#include "wattweek/calendar/tariff_time.hpp"
#include "wattweek/read/read.hpp"
#include "zones.hpp"

namespace wattweek::calendar {
namespace {

using std::chrono::days;
using tests::date;

model::Tariff tariff_of(const std::string& text) {
  auto got = read::tariff({"t.toml", "t.toml", "currency = \"EUR\"\n" + text});
  for (const auto& problem : got.problems) FAIL_CHECK(diag::to_text(problem));
  REQUIRE(got.value.has_value());
  return std::move(*got.value);
}

// One line for each kind of day: `mtwtfss mtwtfss jfmamjjasond | 0-360 night, 360-1440 day`, days,
// then holidays by weekday, then months, a dot for what is not in the set.
template <std::size_t N>
std::string letters(const std::bitset<N>& set, const char* names) {
  std::string text;
  for (std::size_t i = 0; i < N; ++i) text += set[i] ? names[i] : '.';
  return text;
}

std::vector<std::string> lines_of(const model::Tariff& tariff, const TariffWalk& walked) {
  std::vector<std::string> lines;
  for (const PricedDays& priced : walked.days) {
    std::string line;
    for (const KindOfDay& kind : priced.kinds) {
      line += letters(kind.days, "mtwtfss") + ' ' + letters(kind.holidays_on, "mtwtfss") + ' ' +
              letters(kind.months, "jfmamjjasond") + " | ";
    }
    for (const Stretch& stretch : priced.stretches) {
      line += std::to_string(stretch.begin_min / 60) + '-' + std::to_string(stretch.end_min / 60);
      line += ' ' + (stretch.band == kNoBand ? "none" : tariff.bands[stretch.band].name) + ' ';
    }
    line.pop_back();
    lines.push_back(line);
  }
  return lines;
}

using Lines = std::vector<std::string>;

const std::string kDay = "[[band]]\nname = \"day\"\nprice = 0.3\n";
const std::string kNight = "[[band]]\nname = \"night\"\nprice = 0.2\nhours = \"22:00-06:00\"\n";

TEST_CASE("a single price holds on every day") {
  const model::Tariff tariff = tariff_of(kDay);
  const TariffWalk walked = walk(tariff);
  CHECK(lines_of(tariff, walked) == Lines{"mtwtfss mtwtfss jfmamjjasond | 0-24 day"});
  CHECK(walked.days[0].dates.empty());
  CHECK(walked.carried_over.until_min == 0);
}

TEST_CASE("a band over midnight belongs to the evening on which it starts") {
  const model::Tariff tariff = tariff_of(kNight + "days = \"fri\"\n" + kDay);
  const TariffWalk walked = walk(tariff);
  CHECK(lines_of(tariff, walked) == Lines{"mtwt..s ....... jfmamjjasond | 0-24 day",
                                          "....f.. ....... jfmamjjasond | 0-22 day 22-24 night",
                                          ".....s. ....... jfmamjjasond | 0-6 night 6-24 day"});
  CHECK(walked.carried_over.until_min == 0);
}

TEST_CASE("the first morning of a season still belongs to the evening before") {
  const model::Tariff tariff = tariff_of(kNight + "months = \"nov-feb\"\n" + kDay);
  const TariffWalk walked = walk(tariff);
  CHECK(lines_of(tariff, walked) ==
        Lines{"mtwtfss mtwtfss jf........nd | 0-6 night 6-22 day 22-24 night",
              "mtwtfss mtwtfss ..mamjjaso.. | 0-24 day"});
  CHECK(walked.carried_over.until_min == 360);
  CHECK(walked.carried_over.first_of == model::MonthSet{0b010000000100});
  CHECK_FALSE(walked.carried_over.after_holidays);
  CHECK(walked.carried_over.dates.empty());
}

TEST_CASE("a holiday is priced as the day that it counts as") {
  const model::Tariff tariff = tariff_of(
      "holidays = [2027-01-06, 2027-05-03]\nholidays_as = \"sun\"\n"
      "[[band]]\nname = \"sunday\"\nprice = 0.1\ndays = \"sun\"\n" +
      kDay);
  CHECK(lines_of(tariff, walk(tariff)) == Lines{"mtwtfs. ....... jfmamjjasond | 0-24 day",
                                                "......s mtwtfss jfmamjjasond | 0-24 sunday"});
}

TEST_CASE("a holiday without a day that it counts as is an ordinary day") {
  const model::Tariff tariff = tariff_of(
      "holidays = [2027-01-06]\n[[band]]\nname = \"sunday\"\nprice = 0.1\ndays = \"sun\"\n" + kDay);
  CHECK(lines_of(tariff, walk(tariff)) == Lines{"mtwtfs. ....... jfmamjjasond | 0-24 day",
                                                "......s ....... jfmamjjasond | 0-24 sunday"});
}

TEST_CASE("the morning after a holiday still belongs to the holiday's evening") {
  const model::Tariff tariff = tariff_of("holidays = [2027-05-05]\nholidays_as = \"sun\"\n" +
                                         kNight + "days = \"sun\"\n" + kDay);
  const TariffWalk walked = walk(tariff);
  CHECK(lines_of(tariff, walked) == Lines{"m...... ....... jfmamjjasond | 0-6 night 6-24 day",
                                          ".twtfs. ....... jfmamjjasond | 0-24 day",
                                          "......s mtwtfss jfmamjjasond | 0-22 day 22-24 night"});
  CHECK(walked.carried_over.until_min == 360);
  CHECK(walked.carried_over.after_holidays);
  CHECK(walked.carried_over.first_of.none());
}

TEST_CASE("holidays that a study will name are walked on every weekday, gaps and all") {
  const model::Tariff tariff = tariff_of(
      "holidays_as = \"sun\"\n" + kNight + "days = \"sat\"\n" + kDay + "days = \"mon-sat\"\n" +
      "[[band]]\nname = \"sunday\"\nprice = 0.1\ndays = \"sun\"\nhours = \"06:00-24:00\"\n");
  CHECK(counts_holidays_of_study(tariff));
  CHECK(lines_of(tariff, walk(tariff)) ==
        Lines{"mtwtf.. ....... jfmamjjasond | 0-24 day",
              ".....s. ....... jfmamjjasond | 0-22 day 22-24 night",
              "......s ....... jfmamjjasond | 0-6 night 6-24 sunday",
              "....... mtwtfss jfmamjjasond | 0-6 none 6-24 sunday"});
}

TEST_CASE("dates split the walk, before and after them the same holds") {
  const model::Tariff tariff = tariff_of(
      "[[band]]\nname = \"offer\"\nprice = 0.1\ndays = \"mon-fri\"\n"
      "dates = \"2027-06-03..2027-06-20\"\n" +
      kDay);
  const TariffWalk walked = walk(tariff);
  CHECK(lines_of(tariff, walked) == Lines{"mtwtfss mtwtfss jfmamjjasond | 0-24 day",
                                          "mtwtf.. ....... jfmamjjasond | 0-24 offer",
                                          ".....ss ....... jfmamjjasond | 0-24 day"});
  const std::vector<DateRun> others = {{std::nullopt, date(2027, 6, 2)},
                                       {date(2027, 6, 21), std::nullopt}};
  const std::vector<DateRun> offer = {{date(2027, 6, 3), date(2027, 6, 20)}};
  CHECK(walked.days[0].dates == others);
  CHECK(walked.days[1].dates == offer);
  CHECK(walked.days[2].dates == offer);
}

TEST_CASE("two offers that no weekday and month have in common stay two kinds of day") {
  const model::Tariff tariff = tariff_of(
      "[[band]]\nname = \"one\"\nprice = 0.1\ndates = \"2027-03-03..2027-03-03\"\n"
      "[[band]]\nname = \"two\"\nprice = 0.1\ndates = \"2027-05-04..2027-05-04\"\n" +
      kDay);
  const TariffWalk walked = walk(tariff);
  CHECK(lines_of(tariff, walked) == Lines{"mtwtfss mtwtfss jfmamjjasond | 0-24 day",
                                          "mtwtfss mtwtfss jfmamjjasond | 0-24 one",
                                          "mtwtfss mtwtfss jfmamjjasond | 0-24 two"});
  CHECK(walked.days[0].dates.size() == 3);
  const std::vector<DateRun> second = {{date(2027, 5, 4), date(2027, 5, 4)}};
  CHECK(walked.days[2].dates == second);
}

TEST_CASE("a tariff for some dates only is walked on these") {
  const model::Tariff tariff = tariff_of(kDay + "dates = \"2041-01-01..2042-06-30\"\n");
  const TariffWalk walked = walk(tariff);
  CHECK(lines_of(tariff, walked) == Lines{"mtwtfss mtwtfss jfmamjjasond | 0-24 day"});
  const std::vector<DateRun> whole = {{date(2041, 1, 1), date(2042, 6, 30)}};
  CHECK(walked.days[0].dates == whole);
}

TEST_CASE("of too many spans of dates no walk is made") {
  std::string text = "[[band]]\nname = \"odd days\"\nprice = 0.1\nwhen = [\n";
  for (std::size_t i = 0; i <= kMostDateSpans; ++i) {
    const model::CivilDay first = model::CivilDay{std::chrono::year{2027} / 1 / 1} + days{i};
    text += "{ dates = \"" + to_text(first) + ".." + to_text(first + days{1}) + "\" },\n";
  }
  CHECK(walk(tariff_of(text + "]\n" + kDay)).days.empty());
}

// The band of a minute by the rules as they are written, asked one window after the other.
std::uint32_t dumb_band(const model::Tariff& tariff, model::CivilDay day, int minute) {
  const auto passes = [&tariff](const model::Window& window, model::CivilDay governing) {
    const std::chrono::year_month_day ymd(governing);
    std::chrono::weekday weekday(governing);
    for (const model::CivilDay holiday : tariff.holidays.dates) {
      if (holiday == governing) weekday = tariff.holidays.count_as.value_or(weekday);
    }
    return window.days[model::weekday_bit(weekday)] &&
           window.months[static_cast<unsigned>(ymd.month()) - 1] &&
           (!window.dates || window.dates->contains(governing));
  };
  for (std::uint32_t b = 0; b < tariff.bands.size(); ++b) {
    for (const model::Window& window : tariff.bands[b].when) {
      for (const model::HourSpan& span : window.hours) {
        const bool over = span.end_min < span.start_min;
        const bool tonight = minute >= span.start_min && (over || minute < span.end_min);
        if (tonight && passes(window, day)) return b;
        if (over && minute < span.end_min && passes(window, day - days{1})) return b;
      }
    }
  }
  return kNoBand;
}

bool is_holiday(const model::Tariff& tariff, model::CivilDay day) {
  for (const model::CivilDay holiday : tariff.holidays.dates) {
    if (holiday == day) return *tariff.holidays.count_as != std::chrono::weekday(day);
  }
  return false;
}

bool names(const model::Tariff& tariff, const PricedDays& priced, model::CivilDay day) {
  bool dates_fit = priced.dates.empty();
  for (const DateRun& run : priced.dates) {
    dates_fit |= (!run.first || *run.first <= day) && (!run.last || day <= *run.last);
  }
  if (!dates_fit) return false;
  const unsigned weekday = model::weekday_bit(std::chrono::weekday(day));
  const std::chrono::year_month_day ymd(day);
  for (const KindOfDay& kind : priced.kinds) {
    const auto& set = is_holiday(tariff, day) ? kind.holidays_on : kind.days;
    if (set[weekday] && kind.months[static_cast<unsigned>(ymd.month()) - 1]) return true;
  }
  return false;
}

bool is_carried_over(const model::Tariff& tariff, const CarriedOver& carried, model::CivilDay day) {
  const std::chrono::year_month_day ymd(day);
  const bool first = static_cast<unsigned>(ymd.day()) == 1;
  if (first && carried.first_of[static_cast<unsigned>(ymd.month()) - 1]) return true;
  if (carried.after_holidays && is_holiday(tariff, day - days{1})) return true;
  return std::find(carried.dates.begin(), carried.dates.end(), day) != carried.dates.end();
}

// Each day has exactly one row, which says what the bands say.
void check_every_day(const model::Tariff& tariff, model::CivilDay from, model::CivilDay to) {
  const TariffWalk walked = walk(tariff);
  for (model::CivilDay day = from; day < to; day += days{1}) {
    const PricedDays* row = nullptr;
    for (const PricedDays& priced : walked.days) {
      if (!names(tariff, priced, day)) continue;
      REQUIRE_MESSAGE(row == nullptr, to_text(LocalTime{day}));
      row = &priced;
    }
    REQUIRE_MESSAGE(row != nullptr, to_text(LocalTime{day}));
    const bool odd = is_carried_over(tariff, walked.carried_over, day);
    for (const Stretch& stretch : row->stretches) {
      for (int minute = stretch.begin_min; minute < stretch.end_min; minute += 15) {
        if (odd && minute < walked.carried_over.until_min) continue;
        if (dumb_band(tariff, day, minute) == stretch.band) continue;
        FAIL(to_text(LocalTime{day} + std::chrono::minutes{minute}));
      }
    }
  }
}

TEST_CASE("the walk says of every day and hour what the bands say, leap years and holidays too") {
  const std::string holidays =
      "holidays = [2027-01-01, 2027-02-28, 2027-03-01, 2027-04-04, 2027-05-06, 2027-12-25,"
      " 2027-12-26, 2027-12-31, 2028-02-29, 2028-11-01]\nholidays_as = ";
  for (const char* counted : {"\"sun\"\n", "\"sat\"\n", "\"mon\"\n"}) {
    CAPTURE(counted);
    const model::Tariff seasons = tariff_of(holidays + counted + kNight +
                                            "months = \"nov-feb\"\ndays = \"sat-mon\"\n"
                                            "[[band]]\nname = \"free\"\nprice = 0\n"
                                            "when = [ { days = \"sun\", hours = \"10:00-16:00\" },"
                                            " { months = \"jun\", hours = \"23:30-00:15\" } ]\n" +
                                            kDay);
    check_every_day(seasons, date(2026, 12, 1), date(2029, 2, 1));
    const model::Tariff offers = tariff_of(holidays + counted + kNight +
                                           "dates = \"2027-02-10..2028-02-29\"\n"
                                           "[[band]]\nname = \"offer\"\nprice = 0.1\n"
                                           "days = \"fri-sun\"\nhours = \"20:00-03:00\"\n"
                                           "dates = \"2027-12-20..2028-01-06\"\n" +
                                           kDay);
    check_every_day(offers, date(2026, 12, 1), date(2029, 2, 1));
  }
}

TEST_CASE("a tariff is tried in 28 years, and in those of its dates and holidays") {
  const auto runs_of = [](const std::string& text) {
    std::string runs;
    for (const Months& run : years_to_try(tariff_of(text))) {
      runs += std::to_string(static_cast<int>(run.first.year())) + '+' + std::to_string(run.count);
      runs += ' ';
    }
    return runs;
  };
  CHECK(runs_of(kDay) == "2000+336 ");
  CHECK(runs_of("holidays = [2028-01-01, 2031-05-01]\n" + kDay) == "2000+348 2031+12 ");
  CHECK(runs_of("[[band]]\nname = \"x\"\nprice = 1\ndates = \"2040-05-05..2099-01-01\"\n" + kDay) ==
        "2000+336 2040+336 2099+12 ");
}

}  // namespace
}  // namespace wattweek::calendar
