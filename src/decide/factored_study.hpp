#pragma once
// A study with factors put into its watts and shares.

#include <vector>

#include "wattweek/decide/what_if.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::decide {

/// The value of every factor; 1 leaves things as they are.
struct FactorValues {
  explicit FactorValues(const model::Study& study);

  double price = 1;
  double use = 1;
  double purchase = 1;
  double household = 1;
  std::vector<double> use_of;       ///< By workload.
  std::vector<double> idle_of;      ///< By candidate.
  std::vector<double> purchase_of;  ///< By candidate.

  double& of(const Factor& factor);
};

/// Does the factor act on what machines draw?
bool acts_on_energy(const Factor& factor);

/// A copy of a study in which shares and idle watts follow the factors; price, purchase and
/// household are left to the bill.
class FactoredStudy {
 public:
  explicit FactoredStudy(const model::Study& study);

  void set_shares(const FactorValues& values);
  /// Both ends of all shares, one after the other: alike for factors that come to the same, as
  /// those do that press every share to 1.
  void append_shares(std::vector<double>& to) const;
  void set_idle(std::size_t candidate, double factor);

  const model::Study& study() const { return study_; }

 private:
  const model::Study& base_;
  model::Study study_;
  std::vector<std::vector<model::Profile*>> profiles_;  // [candidate][device], each its own.
};

}  // namespace wattweek::decide
