#include <fmt/format.h>

#include "csv_parts.hpp"
#include "day_words.hpp"
#include "numbers.hpp"
#include "wattweek/report/shift_and_rest.hpp"

namespace wattweek::report {

std::string shift_csv(const ShiftShown& shown) {
  std::string text = "hours_later,day,time,currency";
  for (const model::Candidate& candidate : shown.study.candidates) {
    text += fmt::format(",energy_kwh {0},cost {0},unit_hours {0},unserved_unit_hours {0}",
                        candidate.id);
  }
  text += "\r\n";
  for (const decide::Start& start : shown.shift.starts) {
    text += fmt::format("{},{},{},{}", start.hours_later,
                        start.time.weekday_bit ? weekday_word(*start.time.weekday_bit) : "",
                        clock_words(start.time.minute), csv_words(shown.study.tariff.currency));
    for (const decide::StartFigures& figures : start.candidates) {
      text += fmt::format(",{},{},{},{}", exact(figures.energy_kwh), exact(figures.cost),
                          exact(figures.unit_hours.served), exact(figures.unit_hours.unserved));
    }
    text += "\r\n";
  }
  return text;
}

}  // namespace wattweek::report
