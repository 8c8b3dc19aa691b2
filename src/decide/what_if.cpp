#include "wattweek/decide/what_if.hpp"

#include <algorithm>
#include <mutex>

#include "crossings.hpp"
#include "factored_reckoner.hpp"
#include "kept_grid.hpp"
#include "parallel.hpp"
#include "refusals.hpp"

namespace wattweek::decide {

namespace {

// Rows, and entries of the table, that a thread takes at a time.
constexpr std::size_t kRowsAtATime = 1024;
constexpr std::size_t kEntriesAtATime = 16;

}  // namespace

class WhatIf::Inside {
 public:
  Inside(std::shared_ptr<const FactoredBase> base, std::vector<Sweep> sweeps, unsigned threads)
      : shared_base_(std::move(base)),
        base_(*shared_base_),
        sweeps_(std::move(sweeps)),
        threads_(std::max(threads, 1U)),
        kept_(base_, sweeps_),
        is_kept_(kept_.fits()) {
    for (const Sweep& sweep : sweeps_) rows_ *= sweep.points;
    reckoners_.resize(threads_);
  }

  const std::shared_ptr<const FactoredBase>& base() const { return shared_base_; }
  std::size_t rows() const { return rows_; }
  const std::vector<Sweep>& sweeps() const { return sweeps_; }

  std::vector<diag::Diagnostic> prepare(const Progress& progress) {
    if (base_.refused) refuse(*base_.refused);
    if (!is_kept_ || !problems_.empty()) return problems_;
    kept_.make_room();
    for (std::size_t c = 0; c < candidates(); ++c) fill(c, progress);
    return problems_;
  }

  std::vector<diag::Diagnostic> reckon(std::size_t first, std::size_t count, Rows& rows) {
    rows.first = first;
    rows.totals.resize(count * candidates());
    rows.best.resize(count);
    const auto work = [&](std::size_t piece, unsigned worker) {
      const std::size_t begin = piece * kRowsAtATime;
      const std::size_t end = std::min(count, begin + kRowsAtATime);
      Totals* totals = &rows.totals[begin * candidates()];
      if (is_kept_) {
        kept_.look_up(first + begin, end - begin, totals, &rows.best[begin]);
      } else {
        reckon_anew(first + begin, end - begin, worker, totals, &rows.best[begin]);
      }
    };
    for_pieces((count + kRowsAtATime - 1) / kRowsAtATime, threads_, work);
    return problems_;
  }

  std::variant<std::vector<Crossing>, std::vector<diag::Diagnostic>> crossings(
      std::size_t steps, std::optional<std::size_t> of) {
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
    std::vector<double> criteria(candidates());
    const auto criteria_at = [&](double value) -> const std::vector<double>& {
      if (!problems_.empty()) return criteria;  // What is refused once is not looked at further.
      values.of(sweep.factor) = value;
      if (const auto refused = reckoner(0).reckon(values, totals)) refuse(*refused);
      for (std::size_t c = 0; c < criteria.size(); ++c) {
        criteria[c] = base_.criterion_of(totals[c]);
      }
      return criteria;
    };
    std::vector<Crossing> found = find_crossings(criteria_at, looked_at, of);
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
  std::size_t candidates() const { return base_.study.candidates.size(); }

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

  void fill(std::size_t c, const Progress& progress) {
    const std::size_t entries = kept_.entries(c);
    const std::size_t pieces = (entries + kEntriesAtATime - 1) / kEntriesAtATime;
    const auto say = [&](std::size_t done) {
      if (!progress) return;
      progress(base_.study.candidates[c].name,
               (static_cast<double>(c) + static_cast<double>(done) / static_cast<double>(pieces)) /
                   static_cast<double>(candidates()));
    };
    const auto work = [&](std::size_t piece, unsigned worker) {
      const std::size_t begin = piece * kEntriesAtATime;
      const std::size_t end = std::min(entries, begin + kEntriesAtATime);
      if (const auto refused = kept_.fill(c, begin, end, reckoner(worker))) refuse(*refused);
    };
    for_pieces(pieces, threads_, work, say);
  }

  void reckon_anew(std::size_t first, std::size_t count, unsigned worker, Totals* totals,
                   std::uint32_t* best) {
    FactorValues values(base_.study);
    std::vector<Totals> reckoned;
    std::vector<double> criteria(candidates());
    for (std::size_t r = 0; r < count; ++r) {
      set_values(first + r, values);
      if (const auto refused = reckoner(worker).reckon(values, reckoned)) return refuse(*refused);
      for (std::size_t c = 0; c < criteria.size(); ++c, ++totals) {
        *totals = reckoned[c];
        criteria[c] = base_.criterion_of(*totals);
      }
      best[r] = static_cast<std::uint32_t>(best_of(criteria));
    }
  }

  void set_values(std::size_t row, FactorValues& values) const {
    for (std::size_t s = sweeps_.size(); s-- > 0; row /= sweeps_[s].points) {
      values.of(sweeps_[s].factor) = sweeps_[s].at(row % sweeps_[s].points);
    }
  }

  std::shared_ptr<const FactoredBase> shared_base_;
  const FactoredBase& base_;
  std::vector<Sweep> sweeps_;
  unsigned threads_;
  std::size_t rows_ = 1;
  KeptGrid kept_;
  bool is_kept_;
  std::vector<std::unique_ptr<FactoredReckoner>> reckoners_;  // By worker.
  std::mutex guards_problems_;
  std::vector<diag::Diagnostic> problems_;
};

WhatIf::WhatIf(const model::Study& study, const calendar::ZoneRules& zone,
               std::vector<Sweep> sweeps, unsigned threads)
    : inside_(std::make_unique<Inside>(std::make_shared<const FactoredBase>(study, zone),
                                       std::move(sweeps), threads)) {}
WhatIf::WhatIf(const WhatIf& other, std::vector<Sweep> sweeps, unsigned threads)
    : inside_(std::make_unique<Inside>(other.inside_->base(), std::move(sweeps), threads)) {}
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
    std::size_t steps, std::optional<std::size_t> of) {
  return inside_->crossings(steps, of);
}

std::size_t WhatIf::best_at(const std::vector<double>& values) { return inside_->best_at(values); }

}  // namespace wattweek::decide
