#include "device_book.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace wattweek::energy {

namespace {

using Power = DeviceSituation::Power;

constexpr std::size_t index_of(State state) { return static_cast<std::size_t>(state); }

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

}  // namespace

DeviceBook::DeviceBook(const DevicePlan& plan)
    : plan_(plan), mean_w_(plan.situations.size(), kUnknown) {}

void DeviceBook::find_serving() {
  serving_.resize(plan_.workloads.size());
  for (std::uint32_t s = 0; s < plan_.situations.size(); ++s) {
    const std::vector<std::uint32_t>& use_set = plan_.situations[s].use_set;
    for (std::size_t t = 0; t < use_set.size(); ++t) {
      if (serving_[t].size() <= use_set[t]) serving_[t].resize(use_set[t] + 1);
      serving_[t][use_set[t]].push_back(s);
    }
  }
}

void DeviceBook::forget() { std::fill(mean_w_.begin(), mean_w_.end(), kUnknown); }

void DeviceBook::forget(const std::vector<UseSetBook::UseSet>& changed) {
  if (serving_.empty()) find_serving();
  for (const UseSetBook::UseSet& each : changed) {
    const auto task =
        std::lower_bound(plan_.workloads.begin(), plan_.workloads.end(), each.workload);
    if (task == plan_.workloads.end() || *task != each.workload) continue;
    const auto& sets = serving_[static_cast<std::size_t>(task - plan_.workloads.begin())];
    if (each.set >= sets.size()) continue;
    for (const std::uint32_t situation : sets[each.set]) mean_w_[situation] = kUnknown;
  }
}

std::optional<Steady> steady_draw(const power::DeviceLaw& law, const DeviceSituation& situation) {
  if (situation.power == Power::sleep) return Steady{State::sleep, law.sleep_w};
  if (situation.power == Power::off) return Steady{State::off, law.off_w};
  if (law.week_w.empty()) return std::nullopt;
  return Steady{State::idle, law.week_w[situation.hour_of_week]};
}

std::optional<std::size_t> DeviceBook::reckon(const power::DeviceLaw& law, const UseSetUnits& units,
                                              power::DrawReckoner& reckoner) {
  law_ = &law;
  states_ = {};
  overload_hours_ = 0;
  highest_w_.assign(plan_.situations.size(), 0.0);
  watts_.setZero(static_cast<Eigen::Index>(plan_.situations.size()),
                 static_cast<Eigen::Index>(1 + law.tasks.size()));
  for (std::size_t s = 0; s < plan_.situations.size(); ++s) {
    const DeviceSituation& situation = plan_.situations[s];
    if (const auto steady = steady_draw(law, situation)) {
      book_steady(s, steady->state, steady->watts);
    } else {
      if (!find_units_in_use(plan_, situation, units, in_use_)) return s;
      if (!reckoner.reckon(law, in_use_, draw_)) return s;
      book_on(s);
    }
  }
  return std::nullopt;
}

std::optional<std::size_t> DeviceBook::add_energy(const power::DeviceLaw& law,
                                                  const UseSetUnits& units,
                                                  power::DrawReckoner& reckoner,
                                                  Eigen::VectorXd& kwh) {
  law_ = &law;
  for (std::size_t s = 0; s < plan_.situations.size(); ++s) {
    if (std::isnan(mean_w_[s]) && !find_mean_w(s, units, reckoner)) return s;
    add_watts(s, mean_w_[s], kwh);
  }
  return std::nullopt;
}

bool DeviceBook::find_mean_w(std::size_t situation, const UseSetUnits& units,
                             power::DrawReckoner& reckoner) {
  if (const auto steady = steady_draw(*law_, plan_.situations[situation])) {
    mean_w_[situation] = steady->watts;
    return true;
  }
  double above_idle_w = 0;
  if (!find_units_in_use(plan_, plan_.situations[situation], units, in_use_)) return false;
  if (!reckoner.reckon_mean(*law_, in_use_, above_idle_w)) return false;
  mean_w_[situation] = law_->idle_w + above_idle_w;
  return true;
}

void DeviceBook::book_on(std::size_t situation) {
  const auto row = static_cast<Eigen::Index>(situation);
  const double hours = this->hours(situation);
  watts_(row, 0) = law_->idle_w;
  double above_idle_w = 0;
  for (std::size_t t = 0; t < draw_.task_w.size(); ++t) {
    watts_(row, static_cast<Eigen::Index>(1 + t)) = draw_.task_w[t];
    above_idle_w += draw_.task_w[t];
  }
  highest_w_[situation] = draw_.highest_w;
  overload_hours_ += draw_.overload * hours;
  book(State::idle, (1 - draw_.active) * hours, law_->idle_w);
  StateTotal& active = states_[index_of(State::active)];
  active.device_hours += draw_.active * hours;
  active.energy_kwh += (draw_.active * law_->idle_w + above_idle_w) * hours / 1000.0;
}

void DeviceBook::book_steady(std::size_t situation, State state, double watts) {
  watts_(static_cast<Eigen::Index>(situation), 0) = watts;
  highest_w_[situation] = watts;
  book(state, hours(situation), watts);
}

void DeviceBook::book(State state, double hours, double watts) {
  states_[index_of(state)].device_hours += hours;
  states_[index_of(state)].energy_kwh += hours * watts / 1000.0;
}

void DeviceBook::add_to(Ledger& ledger) {
  double energy_kwh = add_cause(0, 0, ledger);
  for (std::size_t t = 0; t < law_->tasks.size(); ++t) {
    energy_kwh += add_cause(1 + t, 1 + law_->tasks[t].workload, ledger);
  }
  for (std::size_t i = 0; i < kStates; ++i) {
    ledger.states[i].device_hours += law_->count * states_[i].device_hours;
    ledger.states[i].energy_kwh += law_->count * states_[i].energy_kwh;
  }
  const double highest_w =
      highest_w_.empty() ? 0.0 : *std::max_element(highest_w_.begin(), highest_w_.end());
  ledger.devices.push_back({energy_kwh, law_->count * highest_w, overload_hours_});
}

void DeviceBook::add_watts(std::size_t situation, double watts, Eigen::VectorXd& kwh) const {
  const double kw = watts * law_->count / 1000.0;
  if (kw == 0) return;
  using Cells = Eigen::SparseMatrix<double>::InnerIterator;
  for (Cells cell(plan_.hours, static_cast<Eigen::Index>(situation)); cell; ++cell) {
    kwh[cell.row()] += cell.value() * kw;
  }
}

// The product of hours and one column of watts, situation after situation; in most situations
// most causes draw nothing. Returns the kWh over all cells.
double DeviceBook::add_cause(std::size_t cause, std::size_t column, Ledger& ledger) {
  kwh_.setZero(plan_.hours.rows());
  for (Eigen::Index s = 0; s < watts_.rows(); ++s) {
    add_watts(static_cast<std::size_t>(s), watts_(s, static_cast<Eigen::Index>(cause)), kwh_);
  }
  ledger.kwh.col(static_cast<Eigen::Index>(column)) += kwh_;
  return kwh_.sum();
}

}  // namespace wattweek::energy
