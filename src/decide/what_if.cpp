#include "wattweek/decide/what_if.hpp"

#include <algorithm>
#include <mutex>

#include "crossings.hpp"
#include "factored_reckoner.hpp"
#include "parallel.hpp"
#include "refusals.hpp"

namespace wattweek::decide {

namespace {

// What is kept for all rows, at most: 32 MiB.
constexpr std::size_t kMostKept = std::size_t{1} << 22U;

// Rows, and entries of the table, that a thread takes at a time.
constexpr std::size_t kRowsAtATime = 1024;
constexpr std::size_t kEntriesAtATime = 16;

/// Everything of one candidate that does not depend on prices and purchases, for all values of the
/// factors that act on energy and household: one entry for each combination.
struct Table {
  std::vector<std::size_t> stride;  ///< By sweep; 0 where the sweep does not matter.
  std::size_t entries = 1;
  std::vector<double> energy_kwh;
  std::vector<double> added;  ///< Charge with less charge without, over all months.
  std::vector<double> with;   ///< Only under a minimum bill: [entry * months + month].
};

}  // namespace

class WhatIf::Inside {
 public:
  Inside(const model::Study& study, const calendar::ZoneRules& zone, std::vector<Sweep> sweeps,
         unsigned threads)
      : base_(study, zone), sweeps_(std::move(sweeps)), threads_(std::max(threads, 1U)) {
    for (const Sweep& sweep : sweeps_) rows_ *= sweep.points;
    reckoners_.resize(threads_);
    tables_.resize(study.candidates.size());
    for (std::size_t c = 0; c < tables_.size(); ++c) lay_out_table(c);
    std::size_t kept = 0;
    for (const Table& table : tables_) kept += table.entries * (2 + months_kept());
    is_kept_ = kept <= kMostKept;
  }

  std::size_t rows() const { return rows_; }
  const std::vector<Sweep>& sweeps() const { return sweeps_; }

  std::vector<diag::Diagnostic> prepare(const Progress& progress) {
    if (base_.refused) refuse(*base_.refused);
    if (!is_kept_ || !problems_.empty()) return problems_;
    if (months_kept() > 0) reckon_without();
    for (std::size_t c = 0; c < tables_.size(); ++c) {
      tables_[c].energy_kwh.resize(tables_[c].entries);
      tables_[c].added.resize(tables_[c].entries);
      tables_[c].with.resize(tables_[c].entries * months_kept());
      const std::size_t pieces = (tables_[c].entries + kEntriesAtATime - 1) / kEntriesAtATime;
      const auto say = [&](std::size_t done) {
        if (!progress) return;
        progress(
            base_.study.candidates[c].name,
            (static_cast<double>(c) + static_cast<double>(done) / static_cast<double>(pieces)) /
                static_cast<double>(tables_.size()));
      };
      const auto fill = [&](std::size_t piece, unsigned worker) { fill_table(c, piece, worker); };
      for_pieces(pieces, threads_, fill, say);
    }
    return problems_;
  }

  std::vector<diag::Diagnostic> reckon(std::size_t first, std::size_t count, Rows& rows) {
    const std::size_t candidates = tables_.size();
    rows.first = first;
    rows.totals.resize(count * candidates);
    rows.best.resize(count);
    const auto work = [&](std::size_t piece, unsigned worker) {
      const std::size_t begin = piece * kRowsAtATime;
      const std::size_t end = std::min(count, begin + kRowsAtATime);
      RowWork row(*this, worker);
      for (std::size_t r = begin; r < end; ++r) {
        if (!row.reckon(first + r, &rows.totals[r * candidates], rows.best[r])) return;
      }
    };
    for_pieces((count + kRowsAtATime - 1) / kRowsAtATime, threads_, work);
    return problems_;
  }

  std::variant<std::vector<Crossing>, std::vector<diag::Diagnostic>> crossings(std::size_t steps) {
    const Sweep& sweep = sweeps_.front();
    std::vector<double> looked_at;
    const Sweep even{sweep.factor, sweep.low, sweep.high, steps + 1};
    for (std::size_t i = 0; i < even.points; ++i) looked_at.push_back(even.at(i));
    const std::size_t own = std::min(sweep.points, steps);
    for (std::size_t i = 0; i < own; ++i) {
      looked_at.push_back(Sweep{sweep.factor, sweep.low, sweep.high, own}.at(i));
    }
    std::sort(looked_at.begin(), looked_at.end());
    looked_at.erase(std::unique(looked_at.begin(), looked_at.end()), looked_at.end());
    FactorValues values(base_.study);
    std::vector<Totals> totals;
    std::vector<double> criteria(tables_.size());
    const auto criteria_at = [&](double value) -> const std::vector<double>& {
      if (!problems_.empty()) return criteria;  // What is refused once is not looked at further.
      values.of(sweep.factor) = value;
      if (const auto refused = reckoner(0).reckon(values, totals)) refuse(*refused);
      for (std::size_t c = 0; c < criteria.size(); ++c) {
        criteria[c] = base_.criterion_of(totals[c]);
      }
      return criteria;
    };
    std::vector<Crossing> found = find_crossings(criteria_at, looked_at);
    if (!problems_.empty()) return problems_;
    return found;
  }

  std::size_t best_at(const std::vector<double>& values) {
    FactorValues at(base_.study);
    for (std::size_t s = 0; s < sweeps_.size(); ++s) at.of(sweeps_[s].factor) = values[s];
    std::vector<Totals> totals;
    if (const auto refused = reckoner(0).reckon(at, totals)) refuse(*refused);
    std::vector<double> criteria;
    for (const Totals& each : totals) criteria.push_back(base_.criterion_of(each));
    return best_of(criteria);
  }

 private:
  /// One thread's way through its rows.
  class RowWork {
   public:
    RowWork(Inside& inside, unsigned worker)
        : inside_(inside),
          worker_(worker),
          values_(inside.base_.study),
          criteria_(inside.tables_.size()) {}

    bool reckon(std::size_t row, Totals* totals, std::uint32_t& best) {
      inside_.set_values(row, values_);
      if (inside_.is_kept_) {
        inside_.look_up(row, values_, totals);
      } else {
        if (const auto refused = inside_.reckoner(worker_).reckon(values_, reckoned_)) {
          inside_.refuse(*refused);
          return false;
        }
        std::copy(reckoned_.begin(), reckoned_.end(), totals);
      }
      for (std::size_t c = 0; c < criteria_.size(); ++c) {
        criteria_[c] = inside_.base_.criterion_of(totals[c]);
      }
      best = static_cast<std::uint32_t>(best_of(criteria_));
      return true;
    }

   private:
    Inside& inside_;
    unsigned worker_;
    FactorValues values_;
    std::vector<double> criteria_;
    std::vector<Totals> reckoned_;
  };

  FactoredReckoner& reckoner(unsigned worker) {
    if (!reckoners_[worker]) reckoners_[worker] = std::make_unique<FactoredReckoner>(base_);
    return *reckoners_[worker];
  }

  void refuse(const ScenarioRefused& refused) {
    const std::lock_guard lock(guards_problems_);
    if (!problems_.empty()) return;
    problems_.push_back(too_many_outcomes(base_.study, refused.candidate, base_.plan.folded,
                                          base_.plan.candidates[refused.candidate],
                                          refused.outcomes));
  }

  std::size_t months_kept() const {
    return base_.law.minimum_per_month ? base_.plan.periods.size() : 0;
  }

  bool matters(const Factor& factor, std::size_t candidate) const {
    if (factor.kind == Factor::Kind::idle_of) return factor.index == candidate;
    return acts_on_energy(factor) || factor.kind == Factor::Kind::household;
  }

  void lay_out_table(std::size_t c) {
    Table& table = tables_[c];
    table.stride.assign(sweeps_.size(), 0);
    for (std::size_t s = sweeps_.size(); s-- > 0;) {
      if (!matters(sweeps_[s].factor, c)) continue;
      table.stride[s] = table.entries;
      table.entries = std::min(table.entries * sweeps_[s].points, kMostKept + 1);
    }
  }

  /// Of the household alone, for each of its points: [point * months + month].
  void reckon_without() {
    const auto household = std::find_if(sweeps_.begin(), sweeps_.end(), [](const Sweep& sweep) {
      return sweep.factor.kind == Factor::Kind::household;
    });
    household_sweep_ = static_cast<std::size_t>(household - sweeps_.begin());
    const std::size_t points = household == sweeps_.end() ? 1 : household->points;
    FactorValues values(base_.study);
    for (std::size_t i = 0; i < points; ++i) {
      if (household != sweeps_.end()) values.household = household->at(i);
      if (const auto refused = reckoner(0).reckon_charges(values, 0)) refuse(*refused);
      for (const billing::Charges& month : reckoner(0).charges()) {
        without_.push_back(month.without);
        if (i == 0) standing_.push_back(month.standing);
      }
    }
  }

  void fill_table(std::size_t c, std::size_t piece, unsigned worker) {
    Table& table = tables_[c];
    FactorValues values(base_.study);
    const std::size_t begin = piece * kEntriesAtATime;
    for (std::size_t e = begin; e < std::min(table.entries, begin + kEntriesAtATime); ++e) {
      for (std::size_t s = 0; s < sweeps_.size(); ++s) {
        if (table.stride[s] == 0) continue;
        values.of(sweeps_[s].factor) = sweeps_[s].at(e / table.stride[s] % sweeps_[s].points);
      }
      FactoredReckoner& reckoner = this->reckoner(worker);
      if (const auto refused = reckoner.reckon_charges(values, c)) return refuse(*refused);
      keep(table, e, reckoner, c);
    }
  }

  void keep(Table& table, std::size_t entry, const FactoredReckoner& reckoner,
            std::size_t c) const {
    const std::vector<double>& with = reckoner.charges_with(c);
    table.energy_kwh[entry] = reckoner.energy_kwh(c);
    double added = 0;
    for (std::size_t m = 0; m < with.size(); ++m) added += with[m] - reckoner.charges()[m].without;
    table.added[entry] = added;
    if (months_kept() == 0) return;
    std::copy(with.begin(), with.end(),
              table.with.begin() + static_cast<std::ptrdiff_t>(entry * with.size()));
  }

  void set_values(std::size_t row, FactorValues& values) const {
    for (std::size_t s = sweeps_.size(); s-- > 0; row /= sweeps_[s].points) {
      values.of(sweeps_[s].factor) = sweeps_[s].at(row % sweeps_[s].points);
    }
  }

  void look_up(std::size_t row, const FactorValues& values, Totals* totals) const {
    for (std::size_t c = 0; c < tables_.size(); ++c) {
      const Table& table = tables_[c];
      std::size_t entry = 0;
      std::size_t rest = row;
      std::size_t household_point = 0;
      for (std::size_t s = sweeps_.size(); s-- > 0; rest /= sweeps_[s].points) {
        const std::size_t point = rest % sweeps_[s].points;
        entry += point * table.stride[s];
        if (s == household_sweep_) household_point = point;
      }
      totals[c].energy_kwh = table.energy_kwh[entry];
      totals[c].cost = months_kept() == 0
                           ? values.price * table.added[entry] * (1 + base_.law.tax)
                           : cost_under_minimum(table, entry, household_point, values.price);
      totals[c].present_cost = base_.present_cost(values, c, totals[c].cost);
    }
  }

  double cost_under_minimum(const Table& table, std::size_t entry, std::size_t household_point,
                            double price) const {
    const std::size_t months = months_kept();
    const double minimum = units::in_currency(*base_.law.minimum_per_month);
    double sum = 0;
    for (std::size_t m = 0; m < months; ++m) {
      const double after = standing_[m] + price * table.with[entry * months + m];
      const double before = standing_[m] + price * without_[household_point * months + m];
      sum += std::max(minimum, after) - std::max(minimum, before);
    }
    return sum * (1 + base_.law.tax);
  }

  FactoredBase base_;
  std::vector<Sweep> sweeps_;
  unsigned threads_;
  std::size_t rows_ = 1;
  std::vector<Table> tables_;
  bool is_kept_ = false;
  std::size_t household_sweep_ = static_cast<std::size_t>(-1);
  std::vector<double> standing_;
  std::vector<double> without_;
  std::vector<std::unique_ptr<FactoredReckoner>> reckoners_;  // By worker.
  std::mutex guards_problems_;
  std::vector<diag::Diagnostic> problems_;
};

WhatIf::WhatIf(const model::Study& study, const calendar::ZoneRules& zone,
               std::vector<Sweep> sweeps, unsigned threads)
    : inside_(std::make_unique<Inside>(study, zone, std::move(sweeps), threads)) {}
WhatIf::~WhatIf() = default;

std::size_t WhatIf::rows() const { return inside_->rows(); }
const std::vector<Sweep>& WhatIf::sweeps() const { return inside_->sweeps(); }

std::vector<diag::Diagnostic> WhatIf::prepare(const Progress& progress) {
  return inside_->prepare(progress);
}

std::vector<diag::Diagnostic> WhatIf::reckon(std::size_t first, std::size_t count, Rows& rows) {
  return inside_->reckon(first, count, rows);
}

std::variant<std::vector<Crossing>, std::vector<diag::Diagnostic>> WhatIf::crossings(
    std::size_t steps) {
  return inside_->crossings(steps);
}

std::size_t WhatIf::best_at(const std::vector<double>& values) { return inside_->best_at(values); }

}  // namespace wattweek::decide
