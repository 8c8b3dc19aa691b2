#pragma once
// The mean week of a log, and the year of such weeks.
//
// Simplifications: the year has 365 days, and its weeks are like those of the log; seasons are not
// known. Weeks err independently of each other, hours within a week may err together.

#include "wattweek/metering/fit.hpp"
#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

inline constexpr double kHoursOfYear = 8760;
/// Fewer covered hours than these tell nothing about how weeks differ.
inline constexpr double kLeastForecastHours = 336;

/// Mean watts by local hour of the week, weighted by time, from `Measured::hours`. An hour that the
/// clocks skip has no time; one that they show twice counts twice.
Week week_of(const Measured& measured);

/// The year if every week were like the covered ones: mean of the 168 hours of the week x 8760 h.
///
/// The interval holds 95 % (Student t): weeks are blocks of 168 local hours one after the other
/// from the first hour on; the last one counts if it is at most two hours short (begun hours,
/// clock changes), and one without time does not. Each is off by the sum over its hours of
/// (joules - seconds x week's mean) / (all seconds of that hour of the week): the linear form of a
/// mean of ratios, with weeks as clusters (W. G. Cochran, Sampling Techniques, 3rd ed. (1977),
/// chapter 6). With n weeks in N weeks' worth of time the variance of the sum of the 168 means is
/// N^2 / (n (N - 1)) x sum of squares, n / (n - 1) x sum where nothing is left over. The meter's
/// limits are those of an even distribution, a / sqrt(3) (JCGM 100:2008, 4.3.7); both are joined,
/// and degrees of freedom reckoned, by the Welch-Satterthwaite formula (ibid., G.4.1).
///
/// Nothing at all where an hour of the week was never seen; no interval where fewer than 336 hours
/// are covered by hour, or where they do not make two weeks. The low end is at least 0.
YearForecast forecast(const Measured& measured, const Week& week, const MeterError& meter);

}  // namespace wattweek::metering
