#pragma once
// The heights at which a device's watts stay, and what each of them is: off, asleep, idle, active.
//
// Simplifications: a level is a matter of watts alone. What a device does at two moments of equal
// watts is not told apart, nor are two levels nearer than about 1.2 of the meter's resolution.

#include <optional>
#include <vector>

#include "wattweek/metering/fit.hpp"
#include "wattweek/metering/measured.hpp"

namespace wattweek::metering {

/// A lowest level up to these watts is "off". A device that is off may draw 0.5 W (Commission
/// Regulation (EU) 2023/826; from May 2027 on 0.3 W), and cheap meters are off by as much again
/// (common practice, no source).
inline constexpr double kMostOff_w = 1;

/// Levels of the log, lowest first; together they hold all of its time, and their ranges touch.
/// Empty for a log without time. Of off and sleep there is at most one each, then one idle, then
/// active.
///
/// Where: the density of time by watts (B. W. Silverman, Density Estimation for Statistics and
/// Data Analysis (1986), kernel method) with a Gaussian kernel 0.05 W + 1 % of the watts wide, and
/// at least 0.6 of the meter's resolution, so that no two neighbouring steps of a meter show as
/// two. Of its peaks those count that are prominent: merged over the highest pass between them as
/// long as it is more than half as high as the lower peak (F. Chazal, L. J. Guibas, S. Y. Oudot and
/// P. Skraba, Journal of the ACM 60 (2013), article 41; here as a ratio), as long as a peak has
/// less than 0.5 % of the time or less than ten minutes, and as long as there are more than eight.
/// Levels part at the lowest density between them.
///
/// Which (common practice, no source):
/// - off: the lowest, if its mean is 1 W or less;
/// - sleep: the next, if its mean is 10 W or less and less than a quarter of the one above it, and
///   half of the time there, as well as half of the time above it, is spent in stretches of ten
///   minutes or more;
/// - idle: the lowest of the others that has at least 5 % of their time; what lies between it and
///   sleep counts to it;
/// - active: all above.
std::vector<Level> levels_of(const Measured& measured);

/// Lower end of the lowest level that is neither off nor asleep: an edge of a watt class of
/// parcels, where one lies between. Nothing where there is no such level.
std::optional<double> awake_from_w(const std::vector<Level>& levels);

/// Does the parcel lie in the level, by its mean watts?
bool lies_in(const Parcel& parcel, const Level& level);

/// Standard deviation of the error that rounding to `resolution_w` leaves in the mean of a level;
/// 0 where `carries_rest`. A device that sits between two steps of its meter and never crosses one
/// is off by anything up to half a step, evenly (JCGM 100:2008, F.2.2.1: step / sqrt(12)). Where
/// two neighbouring steps hold 99 % of the time, the rarer one with part p, the mean is off by
/// (1/2 - p) steps at most; taken as even up to that. Otherwise noise of standard deviation s helps
/// the mean: its error is that of the harmonics of rounding (B. Widrow and I. Kollar, Quantization
/// Noise (2008), chapter 4; from memory), variance sum over k of step^2 / (2 pi^2 k^2)
/// exp(-4 pi^2 k^2 s^2 / step^2) over even positions, with s^2 = the variance of readings less
/// step^2 / 12 (W. F. Sheppard, Proceedings of the London Mathematical Society 29 (1898), 353-380).
double rounding_error_w(const Measured& measured, const Level& level);
/// The same of the time in which no workload was in use, where there is any: what uses add is no
/// noise that would help the mean.
double rounding_error_of_unused_w(const Measured& measured, const Level& level);

/// Idle watts of a log without an activity file: the mean of the idle level, in which what lies far
/// from its middle counts for less, so that work too short or too slight for a level of its own
/// does not lift it. Weights: the biweight of A. E. Beaton and J. W. Tukey, Technometrics 16
/// (1974), 147-185, that reaches 4.685 times the spread: the root mean square of what lies below
/// the middle, at least 1.5 times the resolution (nothing but noise lies below idle; common
/// practice, no source). Standard error: `long_run` over an hour or more, times n / (n - 1), of
/// what each cell's parcels pull at the middle, over the sum of slopes (P. J. Huber, Robust
/// Statistics (1981), section 6.4); and `rounding_error_w`. Nothing where no level is idle.
std::optional<Estimate> idle_of(const std::vector<Level>& levels, const Measured& measured);

}  // namespace wattweek::metering
