#pragma once
// How far a result can be trusted: every range of the files drawn at random, many times, and the
// whole study reckoned for each draw.
//
// Each range is uniform and independent of all others, and one variable wherever its file is used.
// Simplification: what the files give as a single number is taken as known.

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/decide/progress.hpp"
#include "wattweek/decide/range_place.hpp"
#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

inline constexpr std::size_t kFewestDraws = 100;
inline constexpr std::size_t kMostDraws = 10'000'000;

struct DrawOptions {
  std::size_t draws = 10'000;  ///< From kFewestDraws to kMostDraws.
  std::uint64_t seed = 1;
  unsigned threads = 1;  ///< Changes how long it takes, and nothing else.
};

/// What the draws of one figure came to. Percentiles interpolate linearly at (N-1)p; `sd` divides
/// by N-1.
struct Spread {
  double mean = 0;
  double sd = 0;
  double p2_5 = 0;
  double p50 = 0;
  double p97_5 = 0;
};

struct CandidateDoubt {
  Spread energy_kwh;  ///< Of the whole study, as `cost`.
  Spread cost;
  std::optional<Spread> present_cost;  ///< Nothing without a horizon.
  std::optional<double> cheapest;      ///< Fraction of draws in which it is best; see `ranking`.
  /// Standard deviation of the criterion if everything were a straight line around the central
  /// result (JCGM 100:2008, 5.1.2); where it differs from the draws', these are right.
  double first_order_sd = 0;
};

/// A range and its share in the doubt.
struct Driver {
  std::string key;  ///< See `SettledStudy::keys`.
  double share = 0;
  RangePlace place{};
};

struct Uncertainty {
  std::size_t draws = 0;
  std::uint64_t seed = 1;
  std::size_t ranges = 0;  ///< How many were drawn.
  std::vector<CandidateDoubt> candidates;
  /// The two that are best in the central result; one candidate alone twice; none without a
  /// ranking.
  std::optional<std::pair<std::size_t, std::size_t>> best_two;
  /// Ranges by their share in the doubt about the difference of the criterion between the best two
  /// (of one candidate: about its criterion), the largest first: squared coefficient of a linear
  /// regression on all ranges times the range's variance, over the sum of these. Empty where there
  /// is no doubt. Ranges that change no figure of any candidate are left out.
  std::vector<Driver> drivers;
  double explained = 0;  ///< R squared of that regression; what is left is interplay and bends.
};

/// How many ranges of a study are open.
std::size_t open_ranges(const model::Study& study);

/// How many draws a study is worth that nobody asked for: as many as take no noticeable time, up to
/// 1024; 0 where there are no ranges or even a few draws would be felt. By counts alone, never by a
/// clock.
std::size_t unasked_draws(const model::Study& study, const calendar::ZoneRules& zone);

/// Draws. The same for the same seed, whatever the threads. Diagnostics where a draw has more joint
/// outcomes than can be merged.
/// \pre `assess` has accepted the study.
std::variant<Uncertainty, std::vector<diag::Diagnostic>> draw(const model::Study& study,
                                                              const calendar::ZoneRules& zone,
                                                              const DrawOptions& options,
                                                              const Progress& progress = {});

}  // namespace wattweek::decide
