#include "wattweek/energy/ledger.hpp"

#include <algorithm>
#include <memory>
#include <optional>

#include "wattweek/power/draw.hpp"
#include "wattweek/power/units_in_use.hpp"

namespace wattweek::energy {

namespace {

using Power = DeviceSituation::Power;

constexpr std::size_t index_of(State state) { return static_cast<std::size_t>(state); }

// By workload and use set: units in use.
using UseSetUnits = std::vector<std::vector<power::UnitsInUse>>;

// One device's part of the ledger.
class DeviceBook {
 public:
  DeviceBook(const DevicePlan& plan, const power::DeviceLaw& law, const UseSetUnits& units)
      : plan_(plan), law_(law), units_(units), reckoner_(law) {
    const auto situations = static_cast<Eigen::Index>(plan.situations.size());
    watts_.setZero(situations, static_cast<Eigen::Index>(1 + law.tasks.size()));
    highest_w_.reserve(plan.situations.size());
  }

  // Nothing, or the situation that has too many outcomes.
  std::optional<std::size_t> reckon() {
    for (std::size_t s = 0; s < plan_.situations.size(); ++s) {
      const DeviceSituation& situation = plan_.situations[s];
      if (situation.power == Power::on) {
        if (!reckon_on(s, situation)) return s;
      } else {
        reckon_rest(s, situation.power);
      }
    }
    return std::nullopt;
  }

  // All copies, kWh of each cell and cause; causes are the ledger's columns.
  void add_to(Ledger& ledger) const {
    double energy_kwh = add_cause(0, 0, ledger);
    for (std::size_t t = 0; t < law_.tasks.size(); ++t) {
      energy_kwh += add_cause(1 + t, 1 + law_.tasks[t].workload, ledger);
    }
    for (std::size_t i = 0; i < kStates; ++i) {
      ledger.states[i].device_hours += law_.count * states_[i].device_hours;
      ledger.states[i].energy_kwh += law_.count * states_[i].energy_kwh;
    }
    const double highest_w =
        highest_w_.empty() ? 0.0 : *std::max_element(highest_w_.begin(), highest_w_.end());
    ledger.devices.push_back({energy_kwh, law_.count * highest_w, overload_hours_});
  }

  // All copies, the most drawn in a situation.
  double highest_w(std::size_t situation) const { return law_.count * highest_w_[situation]; }

 private:
  // The product of hours and one column of watts, situation after situation; in most situations
  // most causes draw nothing. Returns the kWh over all cells.
  double add_cause(std::size_t cause, std::size_t column, Ledger& ledger) const {
    using Cells = Eigen::SparseMatrix<double>::InnerIterator;
    Eigen::VectorXd kwh = Eigen::VectorXd::Zero(plan_.hours.rows());
    for (Eigen::Index s = 0; s < watts_.rows(); ++s) {
      const double kw = watts_(s, static_cast<Eigen::Index>(cause)) * law_.count / 1000.0;
      if (kw == 0) continue;
      for (Cells cell(plan_.hours, s); cell; ++cell) kwh[cell.row()] += cell.value() * kw;
    }
    ledger.kwh.col(static_cast<Eigen::Index>(column)) += kwh;
    return kwh.sum();
  }

  double hours(std::size_t situation) const { return plan_.total_hours[situation]; }

  void reckon_rest(std::size_t s, Power power) {
    const bool asleep = power == Power::sleep;
    const double rest_w = asleep ? law_.sleep_w : law_.off_w;
    watts_(static_cast<Eigen::Index>(s), 0) = rest_w;
    highest_w_.push_back(rest_w);
    book(asleep ? State::sleep : State::off, hours(s), rest_w);
  }

  bool reckon_on(std::size_t s, const DeviceSituation& situation) {
    in_use_.clear();
    for (std::size_t t = 0; t < situation.use_set.size(); ++t) {
      in_use_.push_back(&units_[plan_.workloads[t]][situation.use_set[t]]);
      if (in_use_.back()->units.empty()) return false;
    }
    if (!reckoner_.reckon(in_use_, draw_)) return false;
    const auto row = static_cast<Eigen::Index>(s);
    watts_(row, 0) = law_.idle_w;
    double above_idle_w = 0;
    for (std::size_t t = 0; t < draw_.task_w.size(); ++t) {
      watts_(row, static_cast<Eigen::Index>(1 + t)) = draw_.task_w[t];
      above_idle_w += draw_.task_w[t];
    }
    highest_w_.push_back(draw_.highest_w);
    overload_hours_ += draw_.overload * hours(s);
    book(State::idle, (1 - draw_.active) * hours(s), law_.idle_w);
    StateTotal& active = states_[index_of(State::active)];
    active.device_hours += draw_.active * hours(s);
    active.energy_kwh += (draw_.active * law_.idle_w + above_idle_w) * hours(s) / 1000.0;
    return true;
  }

  void book(State state, double hours, double watts) {
    states_[index_of(state)].device_hours += hours;
    states_[index_of(state)].energy_kwh += hours * watts / 1000.0;
  }

  const DevicePlan& plan_;
  const power::DeviceLaw& law_;
  const UseSetUnits& units_;
  power::DrawReckoner reckoner_;
  Eigen::MatrixXd watts_;  // Situations x (base, tasks), one copy.
  std::array<StateTotal, kStates> states_;
  std::vector<double> highest_w_;  // By situation, one copy.
  double overload_hours_ = 0;
  power::Draw draw_;
  std::vector<const power::UnitsInUse*> in_use_;
};

// A set of uses whose units have too many values is left without any.
UseSetUnits units_of_use_sets(const CandidatePlan& plan, const power::CandidateLaw& law) {
  UseSetUnits units(plan.use_sets.size());
  std::vector<power::UseLaw> uses;
  for (std::size_t w = 0; w < plan.use_sets.size(); ++w) {
    units[w].reserve(plan.use_sets[w].size());
    for (const auto& set : plan.use_sets[w]) {
      uses.clear();
      for (const std::uint32_t u : set) uses.push_back(law.uses[w][u]);
      if (!power::units_in_use(uses, units[w].emplace_back())) units[w].back() = {};
    }
  }
  return units;
}

void add_unit_hours(const CandidatePlan& plan, const power::CandidateLaw& law, Ledger& ledger) {
  for (std::size_t w = 0; w < plan.use_time.size(); ++w) {
    UnitHours& sum = ledger.unit_hours.emplace_back();
    for (std::size_t u = 0; u < plan.use_time[w].size(); ++u) {
      const double mean_units = law.uses[w][u].units * law.uses[w][u].share;
      sum.served += mean_units * static_cast<double>(plan.use_time[w][u].served_s) / 3600.0;
      sum.unserved += mean_units * static_cast<double>(plan.use_time[w][u].unserved_s) / 3600.0;
    }
  }
}

using DeviceBooks = std::vector<std::unique_ptr<DeviceBook>>;

double highest_together_w(const CandidatePlan& plan, const DeviceBooks& books) {
  double highest_w = 0;
  for (std::size_t i = 0; i < plan.together.size(); i += books.size()) {
    double sum_w = 0;
    for (std::size_t d = 0; d < books.size(); ++d)
      sum_w += books[d]->highest_w(plan.together[i + d]);
    highest_w = std::max(highest_w, sum_w);
  }
  return highest_w;
}

}  // namespace

std::variant<Ledger, TooManyOutcomes> reckon(const CandidatePlan& plan,
                                             const power::CandidateLaw& law) {
  const UseSetUnits units = units_of_use_sets(plan, law);
  Ledger ledger;
  ledger.kwh.setZero(plan.devices.front().hours.rows(),
                     static_cast<Eigen::Index>(1 + plan.use_sets.size()));
  DeviceBooks books;
  for (std::size_t d = 0; d < plan.devices.size(); ++d) {
    books.push_back(std::make_unique<DeviceBook>(plan.devices[d], law.devices[d], units));
    if (const auto refused = books.back()->reckon()) return TooManyOutcomes{d, *refused};
    books.back()->add_to(ledger);
  }
  add_unit_hours(plan, law, ledger);
  ledger.highest_w = highest_together_w(plan, books);
  return ledger;
}

}  // namespace wattweek::energy
