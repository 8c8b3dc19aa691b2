// The week of a log, and the year of such weeks.

#include <fmt/format.h>

#include <cmath>

#include "fit_parts.hpp"
#include "fit_words.hpp"
#include "numbers.hpp"
#include "wattweek/report/words.hpp"
#include "week_picture.hpp"

namespace wattweek::report {
namespace {

std::string kwh_range(double low, double high) {
  const int decimals = decimals_for({high});
  const std::string least = fixed(low, decimals), most = fixed(high, decimals);
  return least == most ? least : fmt::format("{} to {}", least, most);
}

std::string kwh_words(double value) { return fixed(value, decimals_for({value})); }

}  // namespace

Section fitted_week_section(const FitShown& shown) {
  Section section{"The week", {}};
  Eigen::MatrixXd mean_w(7, 24);
  for (Eigen::Index hour = 0; hour < 168; ++hour) {
    mean_w(hour / 24, hour % 24) =
        shown.fit.week[static_cast<std::size_t>(hour)].value_or(std::nan(""));
  }
  const double most = mean_w.maxCoeff<Eigen::PropagateNumbers>();
  const double least = mean_w.minCoeff<Eigen::PropagateNumbers>();
  if (!(most > least)) {
    section.blocks.push_back(Paragraph{"The same watts in all hours of the week."});
  } else {
    section.blocks.push_back(hours_picture(mean_w, "Mean watts by hour of the week:"));
  }
  return section;
}

Section year_section(const FitShown& shown) {
  Section section{"The year", {}};
  const metering::YearForecast& year = shown.fit.year;
  if (!year.energy_kwh) {
    section.blocks.push_back(
        Paragraph{"No year can be told: some hour of the week was never seen."});
    return section;
  }
  std::string text =
      fmt::format("If the year is like these weeks, it takes {}", kwh(*year.energy_kwh));
  if (year.low && year.high && kwh_range(*year.low, *year.high) == kwh_words(*year.energy_kwh)) {
    text += fmt::format(" (all {} are alike)", counted(year.weeks, "full week"));
  } else if (year.low && year.high) {
    text += fmt::format(" ({}, 95 %, from {})", kwh_range(*year.low, *year.high),
                        counted(year.weeks, "full week"));
  } else {
    text += "; how far that can be trusted is not known from less than two weeks";
  }
  section.blocks.push_back(Paragraph{text + "."});
  if (shown.contract) {
    const decide::MeasuredYear& reckoned = shown.contract->year;
    const std::string& currency = shown.contract->currency;
    std::string cost =
        fmt::format("Under {} that adds {} to the bill of {}", shown.contract->tariff,
                    money(reckoned.cost, currency), static_cast<int>(reckoned.year));
    if (reckoned.costs) {
      cost += fmt::format(" ({} to {})", amount(reckoned.costs->low, currency),
                          amount(reckoned.costs->high, currency));
    }
    section.blocks.push_back(Paragraph{cost + ", in a household that uses nothing else."});
  }
  return section;
}

}  // namespace wattweek::report
