// Factors by name.

#include <algorithm>

#include "wattweek/decide/what_if.hpp"

namespace wattweek::decide {

namespace {

using Kind = Factor::Kind;

std::vector<Factor> all_factors(const model::Study& study) {
  std::vector<Factor> all = {
      {Kind::price, 0}, {Kind::use, 0}, {Kind::purchase, 0}, {Kind::household, 0}};
  for (std::size_t w = 0; w < study.workloads.size(); ++w) all.push_back({Kind::use_of, w});
  for (std::size_t c = 0; c < study.candidates.size(); ++c) all.push_back({Kind::idle_of, c});
  for (std::size_t c = 0; c < study.candidates.size(); ++c) all.push_back({Kind::purchase_of, c});
  return all;
}

}  // namespace

std::string name_of(const model::Study& study, const Factor& factor) {
  switch (factor.kind) {
    case Kind::price:
      return "price";
    case Kind::use:
      return "use";
    case Kind::purchase:
      return "purchase";
    case Kind::household:
      return "household";
    case Kind::use_of:
      return "use." + study.workloads[factor.index].id;
    case Kind::idle_of:
      return "idle." + study.candidates[factor.index].id;
    case Kind::purchase_of:
      break;
  }
  return "purchase." + study.candidates[factor.index].id;
}

std::vector<std::string> factor_names(const model::Study& study) {
  std::vector<std::string> names;
  for (const Factor& factor : all_factors(study)) names.push_back(name_of(study, factor));
  return names;
}

std::optional<Factor> factor_named(const model::Study& study, const std::string& name) {
  const std::vector<Factor> all = all_factors(study);
  const auto found = std::find_if(
      all.begin(), all.end(), [&](const Factor& factor) { return name_of(study, factor) == name; });
  return found == all.end() ? std::nullopt : std::optional(*found);
}

std::vector<double> values_in_row(const std::vector<Sweep>& sweeps, std::size_t row) {
  std::vector<double> values(sweeps.size());
  for (std::size_t s = sweeps.size(); s-- > 0; row /= sweeps[s].points) {
    values[s] = sweeps[s].at(row % sweeps[s].points);
  }
  return values;
}

double Sweep::at(std::size_t point) const {
  if (point + 1 == points) return high;
  return low + (high - low) * static_cast<double>(point) / static_cast<double>(points - 1);
}

}  // namespace wattweek::decide
