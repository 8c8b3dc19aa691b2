#include "wattweek/decide/uncertainty.hpp"

#include <algorithm>
#include <cmath>
#include <mutex>

#include "parallel.hpp"
#include "points.hpp"
#include "refusals.hpp"
#include "regression.hpp"
#include "spread.hpp"
#include "wattweek/decide/lifetime.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/decide/scenario.hpp"
#include "wattweek/decide/settled_study.hpp"

namespace wattweek::decide {

namespace {

// The draws are cut into so many pieces, whatever the threads, so that sums are always added in the
// same order.
constexpr std::size_t kPieces = 64;

// Draws at which a range is moved to both its ends, to see whether it changes anything.
constexpr std::size_t kProbes = 4;

// Of a range, for its slope in the middle.
constexpr double kStep = 1.0 / 256;

// A doubt within this fraction of the amounts is what rounding leaves where ranges cancel.
constexpr double kRounding = 1e-12;

/// All draws of one figure of each candidate.
struct Sample {
  std::vector<double> energy_kwh;
  std::vector<double> cost;
  std::vector<double> present_cost;
};

class Drawer {
 public:
  Drawer(const model::Study& study, const calendar::ZoneRules& zone, const DrawOptions& options)
      : study_(study),
        options_(options),
        plan_(plan_scenarios(study, zone)),
        criterion_(criterion_of(study)),
        samples_(study.candidates.size()) {
    for (Sample& sample : samples_) {
      for (auto* values : {&sample.energy_kwh, &sample.cost, &sample.present_cost}) {
        values->resize(options.draws);
      }
    }
  }

  std::variant<Uncertainty, std::vector<diag::Diagnostic>> run(const Progress& progress) {
    if (!reckon_central()) return problems_;
    std::vector<RegressionSums> sums(kPieces);
    std::vector<std::vector<std::size_t>> best(kPieces);
    const auto say = [&progress](std::size_t done) {
      if (progress) progress("draws", static_cast<double>(done) / kPieces);
    };
    for_pieces(
        kPieces, options_.threads,
        [&](std::size_t piece, unsigned) { draw_piece(piece, sums[piece], best[piece]); }, say);
    if (!problems_.empty()) return problems_;
    find_spreads(best);
    for (std::size_t piece = 1; piece < kPieces; ++piece) sums[0].add(sums[piece]);
    find_drivers(sums[0]);
    return std::move(result_);
  }

 private:
  double criterion(const Totals& totals) const {
    return criterion_ == Criterion::present_cost ? totals.present_cost : totals.cost;
  }

  /// What the drivers drive.
  double driven(const std::vector<Totals>& totals) const {
    const auto [first, second] = *result_.best_two;
    if (first == second) return criterion(totals[first]);
    return criterion(totals[first]) - criterion(totals[second]);
  }

  bool reckon(ScenarioReckoner& reckoner, const SettledStudy& settled,
              std::vector<Totals>& totals) {
    const auto refused = reckoner.reckon(settled.study(), totals);
    if (!refused) return true;
    const std::lock_guard lock(guards_problems_);
    if (problems_.empty()) {
      problems_.push_back(too_many_outcomes(study_, refused->candidate, plan_.folded,
                                            plan_.candidates[refused->candidate],
                                            refused->outcomes));
    }
    return false;
  }

  bool reckon_central() {
    SettledStudy settled(study_);
    ScenarioReckoner reckoner(plan_);
    if (!reckon(reckoner, settled, central_)) return false;
    result_.draws = options_.draws;
    result_.seed = options_.seed;
    result_.ranges = settled.keys().size();
    result_.candidates.resize(central_.size());
    if (criterion_ != Criterion::none) {
      std::vector<double> criteria;
      for (const Totals& totals : central_) criteria.push_back(criterion(totals));
      result_.best_two = best_two_of(criteria);
    }
    return find_slopes(settled, reckoner) && find_idle_ranges(settled, reckoner);
  }

  // Straight lines around the middle: JCGM 100:2008, 5.1.2, with the variance of a rectangular
  // distribution (4.3.7), a twelfth of the squared width.
  bool find_slopes(SettledStudy& settled, ScenarioReckoner& reckoner) {
    std::vector<double> variance(central_.size(), 0.0);
    std::vector<Totals> above;
    std::vector<Totals> below;
    for (std::size_t r = 0; r < settled.keys().size(); ++r) {
      settled.settle(r, 0.5 + kStep);
      if (!reckon(reckoner, settled, above)) return false;
      settled.settle(r, 0.5 - kStep);
      if (!reckon(reckoner, settled, below)) return false;
      settled.settle(r, 0.5);
      for (std::size_t c = 0; c < variance.size(); ++c) {
        const double slope = (criterion(above[c]) - criterion(below[c])) / (2 * kStep);
        variance[c] += slope * slope / 12;
      }
    }
    for (std::size_t c = 0; c < variance.size(); ++c) {
      result_.candidates[c].first_order_sd = std::sqrt(variance[c]);
    }
    return true;
  }

  // But for rounding: what the household uses is taken from both bills, and leaves its last digits.
  static bool same(const std::vector<Totals>& a, const std::vector<Totals>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), [](const Totals& x, const Totals& y) {
      return nearly_equal(x.energy_kwh, y.energy_kwh) && nearly_equal(x.cost, y.cost) &&
             nearly_equal(x.present_cost, y.present_cost);
    });
  }

  // Ranges that change nothing, wherever the others stand.
  bool find_idle_ranges(SettledStudy& settled, ScenarioReckoner& reckoner) {
    const std::size_t ranges = settled.keys().size();
    touches_.assign(ranges, false);
    Points points(ranges, options_.seed, 0);
    std::vector<double> point;
    std::vector<Totals> at_low;
    std::vector<Totals> at_high;
    for (std::size_t probe = 0; probe < kProbes; ++probe) {
      points.next(point);
      for (std::size_t r = 0; r < ranges; ++r) settled.settle(r, point[r]);
      for (std::size_t r = 0; r < ranges; ++r) {
        if (touches_[r]) continue;
        settled.settle(r, 0);
        if (!reckon(reckoner, settled, at_low)) return false;
        settled.settle(r, 1);
        if (!reckon(reckoner, settled, at_high)) return false;
        settled.settle(r, point[r]);
        touches_[r] = !same(at_low, at_high);
      }
    }
    return true;
  }

  void draw_piece(std::size_t piece, RegressionSums& sums, std::vector<std::size_t>& best) {
    const std::size_t begin = options_.draws * piece / kPieces;
    const std::size_t end = options_.draws * (piece + 1) / kPieces;
    SettledStudy settled(study_);
    ScenarioReckoner reckoner(plan_);
    const std::size_t ranges = settled.keys().size();
    Points points(ranges, options_.seed, begin);
    sums = RegressionSums(ranges);
    best.assign(samples_.size(), 0);
    std::vector<double> point;
    std::vector<double> criteria(samples_.size());
    std::vector<Totals> totals;
    for (std::size_t n = begin; n < end; ++n) {
      points.next(point);
      for (std::size_t r = 0; r < ranges; ++r) settled.settle(r, point[r]);
      if (!reckon(reckoner, settled, totals)) return;
      for (std::size_t c = 0; c < totals.size(); ++c) {
        samples_[c].energy_kwh[n] = totals[c].energy_kwh;
        samples_[c].cost[n] = totals[c].cost;
        samples_[c].present_cost[n] = totals[c].present_cost;
        criteria[c] = criterion(totals[c]);
      }
      if (!result_.best_two) continue;
      ++best[best_of(criteria)];
      sums.add(point, driven(totals) - driven(central_));
    }
  }

  void find_spreads(const std::vector<std::vector<std::size_t>>& best) {
    const bool has_horizon = criterion_ == Criterion::present_cost;
    const std::size_t figures = has_horizon ? 3 : 2;
    for_pieces(figures * samples_.size(), options_.threads, [&](std::size_t piece, unsigned) {
      Sample& sample = samples_[piece / figures];
      CandidateDoubt& doubt = result_.candidates[piece / figures];
      if (piece % figures == 0) doubt.energy_kwh = spread_of(std::move(sample.energy_kwh));
      if (piece % figures == 1) doubt.cost = spread_of(std::move(sample.cost));
      if (piece % figures == 2) doubt.present_cost = spread_of(std::move(sample.present_cost));
    });
    if (!result_.best_two) return;
    for (std::size_t c = 0; c < samples_.size(); ++c) {
      std::size_t times = 0;
      for (const auto& of_piece : best) times += of_piece[c];
      result_.candidates[c].cheapest =
          static_cast<double>(times) / static_cast<double>(options_.draws);
    }
  }

  /// Of the best two in the central result, without its sign.
  double largest_criterion() const {
    const auto [first, second] = *result_.best_two;
    return std::max(std::fabs(criterion(central_[first])), std::fabs(criterion(central_[second])));
  }

  void find_drivers(const RegressionSums& sums) {
    if (!result_.best_two) return;
    const RegressionSums::Fit fit = sums.fit();
    if (fit.deviation <= kRounding * largest_criterion()) return;
    result_.explained = fit.r_squared;
    const SettledStudy settled(study_);
    const std::vector<std::string>& keys = settled.keys();
    double all = 0;
    for (std::size_t r = 0; r < keys.size(); ++r) {
      const double b = fit.coefficients(static_cast<Eigen::Index>(r));
      if (!touches_[r]) continue;
      result_.drivers.push_back({keys[r], b * b, settled.places()[r]});
      all += b * b;
    }
    if (all <= 0) return result_.drivers.clear();
    for (Driver& driver : result_.drivers) driver.share /= all;
    std::stable_sort(result_.drivers.begin(), result_.drivers.end(),
                     [](const Driver& a, const Driver& b) { return a.share > b.share; });
  }

  const model::Study& study_;
  const DrawOptions options_;
  const ScenarioPlan plan_;
  const Criterion criterion_;
  std::vector<Totals> central_;
  std::vector<Sample> samples_;
  std::vector<bool> touches_;
  Uncertainty result_;
  std::mutex guards_problems_;
  std::vector<diag::Diagnostic> problems_;
};

}  // namespace

std::size_t unasked_draws(const model::Study& study, const calendar::ZoneRules& zone) {
  constexpr std::size_t kUsual = 1024;
  constexpr std::size_t kLeast = 256;
  // A situation costs about what eight joint outcomes do; so many of them take some 0.1 s.
  constexpr std::uint64_t kOutcomesPerSituation = 8;
  constexpr std::uint64_t kUnfelt = 600 * kUsual;
  const SettledStudy settled(study);
  if (settled.keys().empty()) return 0;
  const ScenarioPlan plan = plan_scenarios(study, zone);
  ScenarioReckoner reckoner(plan);
  std::vector<Totals> totals;
  if (reckoner.reckon(settled.study(), totals)) return 0;
  std::uint64_t work = reckoner.outcomes_formed() / kOutcomesPerSituation;
  for (const energy::CandidatePlan& candidate : plan.candidates) {
    for (const energy::DevicePlan& device : candidate.devices) work += device.situations.size();
  }
  for (std::size_t draws = kUsual; draws >= kLeast; draws /= 2) {
    if (work * (draws + settled.keys().size() * (2 + 2 * kProbes)) <= kUnfelt) return draws;
  }
  return 0;
}

std::size_t open_ranges(const model::Study& study) { return SettledStudy(study).keys().size(); }

std::variant<Uncertainty, std::vector<diag::Diagnostic>> draw(const model::Study& study,
                                                              const calendar::ZoneRules& zone,
                                                              const DrawOptions& options,
                                                              const Progress& progress) {
  return Drawer(study, zone, options).run(progress);
}

}  // namespace wattweek::decide
