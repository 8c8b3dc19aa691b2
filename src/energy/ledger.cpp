#include "wattweek/energy/ledger.hpp"

#include <algorithm>

#include "device_book.hpp"

namespace wattweek::energy {

class Reckoner::Inside {
 public:
  explicit Inside(const CandidatePlan& plan);
  std::optional<TooManyOutcomes> reckon(const power::CandidateLaw& law, Ledger& ledger);
  std::optional<TooManyOutcomes> reckon_energy(const power::CandidateLaw& law, Eigen::VectorXd& kwh,
                                               Devices devices);
  std::uint64_t outcomes_formed() const { return reckoner_.outcomes_formed(); }

 private:
  void add_unit_hours(const power::CandidateLaw& law, Ledger& ledger) const;
  double highest_together_w() const;

  const CandidatePlan& plan_;
  power::DrawReckoner reckoner_;
  UseSetBook uses_;
  std::vector<DeviceBook> books_;
};

Reckoner::Inside::Inside(const CandidatePlan& plan) : plan_(plan), uses_(plan) {
  for (const DevicePlan& device : plan.devices) books_.emplace_back(device);
}

std::optional<TooManyOutcomes> Reckoner::Inside::reckon(const power::CandidateLaw& law,
                                                        Ledger& ledger) {
  uses_.reckon(law);
  for (DeviceBook& book : books_) book.forget();
  ledger.kwh.setZero(plan_.devices.front().hours.rows(),
                     static_cast<Eigen::Index>(1 + plan_.use_sets.size()));
  ledger.states = {};
  ledger.devices.clear();
  for (std::size_t d = 0; d < books_.size(); ++d) {
    const auto refused = books_[d].reckon(law.devices[d], uses_.units(), reckoner_);
    if (refused) return TooManyOutcomes{d, *refused};
    books_[d].add_to(ledger);
  }
  add_unit_hours(law, ledger);
  ledger.highest_w = highest_together_w();
  return std::nullopt;
}

std::optional<TooManyOutcomes> Reckoner::Inside::reckon_energy(const power::CandidateLaw& law,
                                                               Eigen::VectorXd& kwh,
                                                               Devices devices) {
  uses_.reckon(law);
  for (DeviceBook& book : books_) {
    devices == Devices::as_before ? book.forget(uses_.changed()) : book.forget();
  }
  kwh.setZero(plan_.devices.front().hours.rows());
  for (std::size_t d = 0; d < books_.size(); ++d) {
    const auto refused = books_[d].add_energy(law.devices[d], uses_.units(), reckoner_, kwh);
    if (refused) return TooManyOutcomes{d, *refused};
  }
  return std::nullopt;
}

void Reckoner::Inside::add_unit_hours(const power::CandidateLaw& law, Ledger& ledger) const {
  ledger.unit_hours.clear();
  for (std::size_t w = 0; w < plan_.use_time.size(); ++w) {
    UnitHours& sum = ledger.unit_hours.emplace_back();
    for (std::size_t u = 0; u < plan_.use_time[w].size(); ++u) {
      const double mean_units = law.uses[w][u].units * law.uses[w][u].share;
      sum.served += mean_units * static_cast<double>(plan_.use_time[w][u].served_s) / 3600.0;
      sum.unserved += mean_units * static_cast<double>(plan_.use_time[w][u].unserved_s) / 3600.0;
    }
  }
}

double Reckoner::Inside::highest_together_w() const {
  double highest_w = 0;
  for (std::size_t i = 0; i < plan_.together.size(); i += books_.size()) {
    double sum_w = 0;
    for (std::size_t d = 0; d < books_.size(); ++d) {
      sum_w += books_[d].highest_w(plan_.together[i + d]);
    }
    highest_w = std::max(highest_w, sum_w);
  }
  return highest_w;
}

Reckoner::Reckoner(const CandidatePlan& plan) : inside_(std::make_unique<Inside>(plan)) {}
Reckoner::~Reckoner() = default;

std::uint64_t Reckoner::outcomes_formed() const { return inside_->outcomes_formed(); }

std::optional<TooManyOutcomes> Reckoner::reckon(const power::CandidateLaw& law, Ledger& ledger) {
  return inside_->reckon(law, ledger);
}

std::optional<TooManyOutcomes> Reckoner::reckon_energy(const power::CandidateLaw& law,
                                                       Eigen::VectorXd& kwh, Devices devices) {
  return inside_->reckon_energy(law, kwh, devices);
}

}  // namespace wattweek::energy
