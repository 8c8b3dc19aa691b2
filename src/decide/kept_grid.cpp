#include "kept_grid.hpp"

#include <algorithm>

namespace wattweek::decide {

namespace {

// Figures that are kept, at most: 32 MiB.
constexpr std::size_t kMostKept = std::size_t{1} << 22U;

bool matters(const Factor& factor, std::size_t candidate) {
  if (factor.kind == Factor::Kind::idle_of) return factor.index == candidate;
  return acts_on_energy(factor) || factor.kind == Factor::Kind::household;
}

PriceLines finder_for(const FactoredBase& base, const std::vector<Sweep>& sweeps) {
  const auto price = std::find_if(sweeps.begin(), sweeps.end(), [](const Sweep& sweep) {
    return sweep.factor.kind == Factor::Kind::price;
  });
  const bool varies = price != sweeps.end();
  return {base.law, base.plan.periods.size(), varies ? price->low : 1, varies ? price->high : 1};
}

}  // namespace

KeptGrid::KeptGrid(const FactoredBase& base, const std::vector<Sweep>& sweeps)
    : base_(base), sweeps_(sweeps), finder_(finder_for(base, sweeps)) {
  for (std::size_t c = 0; c < base.study.candidates.size(); ++c) tables_.push_back(lay_out(c));
}

KeptGrid::Table KeptGrid::lay_out(std::size_t candidate) const {
  Table table;
  table.stride.assign(sweeps_.size(), 0);
  for (std::size_t s = sweeps_.size(); s-- > 0;) {
    if (!matters(sweeps_[s].factor, candidate)) continue;
    table.stride[s] = table.entries;
    table.entries = std::min(table.entries * sweeps_[s].points, kMostKept + 1);
  }
  return table;
}

bool KeptGrid::fits() const {
  const std::size_t figures = 1 + finder_.most() * sizeof(PriceLine) / sizeof(double);
  std::size_t kept = 0;
  for (const Table& table : tables_) kept += table.entries * figures;
  return kept <= kMostKept;
}

void KeptGrid::make_room() {
  for (Table& table : tables_) {
    table.energy_kwh.resize(table.entries);
    table.lines.resize(table.entries * finder_.most());
  }
}

std::optional<ScenarioRefused> KeptGrid::fill(std::size_t candidate, std::size_t begin,
                                              std::size_t end, FactoredReckoner& reckoner) {
  Table& table = tables_[candidate];
  PriceLines finder = finder_;
  FactorValues values(base_.study);
  for (std::size_t e = begin; e < end; ++e) {
    for (std::size_t s = 0; s < sweeps_.size(); ++s) {
      if (table.stride[s] == 0) continue;
      values.of(sweeps_[s].factor) = sweeps_[s].at(e / table.stride[s] % sweeps_[s].points);
    }
    if (const auto refused = reckoner.reckon_charges(values, candidate)) return refused;
    table.energy_kwh[e] = reckoner.energy_kwh(candidate);
    finder.find(reckoner.charges(), reckoner.charges_with(candidate),
                &table.lines[e * finder.most()]);
  }
  return std::nullopt;
}

/// Rows one after the other in which only the last factor moves.
class KeptGrid::Run {
 public:
  Run(const KeptGrid& grid, std::size_t most)
      : grid_(grid),
        values_(grid.base_.study),
        last_(grid.sweeps_.back()),
        entry_(grid.tables_.size()),
        line_(grid.tables_.size()),
        prices_(most),
        outlays_(most) {}

  /// Goes to `row`; how many rows the run has from there on.
  std::size_t go_to(std::size_t row) {
    std::fill(entry_.begin(), entry_.end(), std::size_t{0});
    point_ = row % last_.points;
    for (std::size_t s = grid_.sweeps_.size(); s-- > 0; row /= grid_.sweeps_[s].points) {
      const std::size_t point = row % grid_.sweeps_[s].points;
      values_.of(grid_.sweeps_[s].factor) = grid_.sweeps_[s].at(point);
      for (std::size_t c = 0; c < entry_.size(); ++c) {
        entry_[c] += point * grid_.tables_[c].stride[s];
      }
    }
    return last_.points - point_;
  }

  /// Candidate by candidate: what it has in common for all rows stays at hand.
  void look_up(std::size_t count, Totals* totals, std::uint32_t* best) {
    const bool moves_price = last_.factor.kind == Factor::Kind::price;
    along(count, moves_price, prices_, [this] { return values_.price; });
    for (std::size_t c = 0; c < entry_.size(); ++c) look_up(c, count, totals + c);
    const bool by_present_cost = grid_.base_.criterion == Criterion::present_cost;
    const auto criterion = by_present_cost ? &Totals::present_cost : &Totals::cost;
    for (std::size_t r = 0; r < count; ++r, totals += entry_.size()) {
      const auto of_candidate = [&](std::size_t c) { return totals[c].*criterion; };
      best[r] = static_cast<std::uint32_t>(best_of(entry_.size(), of_candidate));
    }
  }

 private:
  void look_up(std::size_t c, std::size_t count, Totals* totals) {
    const Table& table = grid_.tables_[c];
    const std::size_t stride = table.stride.back();
    const std::size_t most = grid_.finder_.most();
    const double yearly = grid_.base_.horizon ? grid_.base_.yearly_factor : 0;
    const double* energy_kwh = &table.energy_kwh[entry_[c]];
    const PriceLine* lines = &table.lines[entry_[c] * most];
    std::size_t at = line_[c];
    along(count, !acts_on_energy(last_.factor), outlays_,
          [this, c] { return grid_.base_.present_cost(values_, c, 0); });
    for (std::size_t r = 0; r < count; ++r) {
      const double price = prices_[r];
      // The line of the row before is mostly the one, or next to it.
      while (price < lines[at].from) --at;
      while (price >= lines[at + 1].from) ++at;
      const double cost = lines[at].at_zero + lines[at].slope * price;
      *totals = {*energy_kwh, cost, outlays_[r] + yearly * cost};
      totals += entry_.size();
      energy_kwh += stride;
      lines += stride * most;
    }
    line_[c] = at;
  }

  /// What `figure` comes to in each row; where the last factor does not move it, once.
  template <typename Figure>
  void along(std::size_t count, bool moves, std::vector<double>& figures, const Figure& figure) {
    if (!moves) {
      std::fill_n(figures.begin(), count, figure());
      return;
    }
    for (std::size_t r = 0; r < count; ++r) {
      values_.of(last_.factor) = last_.at(point_ + r);
      figures[r] = figure();
    }
  }

  const KeptGrid& grid_;
  FactorValues values_;
  const Sweep& last_;
  std::size_t point_ = 0;           // Of the last factor.
  std::vector<std::size_t> entry_;  // By candidate.
  std::vector<std::size_t> line_;   // By candidate.
  std::vector<double> prices_;      // By row.
  std::vector<double> outlays_;     // By row.
};

void KeptGrid::look_up(std::size_t first, std::size_t count, Totals* totals,
                       std::uint32_t* best) const {
  Run run(*this, std::min(count, sweeps_.back().points));
  for (std::size_t done = 0; done < count;) {
    const std::size_t rows = std::min(count - done, run.go_to(first + done));
    run.look_up(rows, totals + done * tables_.size(), best + done);
    done += rows;
  }
}

}  // namespace wattweek::decide
