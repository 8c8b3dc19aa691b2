#include "factor_words.hpp"

#include <fmt/format.h>

#include "numbers.hpp"

namespace wattweek::report {
namespace {

using Kind = decide::Factor::Kind;

bool clips(const model::Workload& workload, double value) {
  for (const model::Use& use : workload.uses) {
    if (use.share.high * value > 1) return true;
  }
  return false;
}

/// Hours of use a week; nothing where a share has reached 1, since then it is less than in
/// proportion.
std::string use_of(const WhatIfShown& shown, std::size_t w, double value) {
  const model::Workload& workload = shown.study.workloads[w];
  if (clips(workload, value)) return "";
  const energy::UnitHours& hours = shown.assessment.candidates.front().ledger.unit_hours[w];
  const double weeks = shown.assessment.days / 7.0;
  const double a_week = (hours.served + hours.unserved) / weeks * value;
  return fmt::format("{} {}-hours a week", rounded(a_week, 1), workload.unit);
}

std::string household(const WhatIfShown& shown, double value) {
  double kwh = 0;
  for (const units::Energy month : shown.assessment.without.household) {
    kwh += units::in_kilowatt_hours(month);
  }
  const double a_year = kwh * 12 / shown.study.months * value;
  return fmt::format("{} kWh a year", rounded(a_year, 0));
}

std::string idle_of(const model::Candidate& candidate, double value) {
  double watts = 0;
  for (const model::Device& device : candidate.devices) {
    if (device.profile->at_load.empty()) {
      watts += device.count * units::in_watts(device.profile->idle.central());
    }
  }
  return fmt::format("{} W", rounded(watts * value, 1));
}

}  // namespace

std::string factor_words(const model::Study& study, const decide::Factor& factor) {
  switch (factor.kind) {
    case Kind::price:
      return "prices per kWh";
    case Kind::use:
      return "all use";
    case Kind::purchase:
      return "all purchases";
    case Kind::household:
      return "the household's own kWh";
    case Kind::use_of:
      return "the use of " + study.workloads[factor.index].name;
    case Kind::idle_of:
      return "the idle watts of " + study.candidates[factor.index].name;
    case Kind::purchase_of:
      break;
  }
  return "the purchase of " + study.candidates[factor.index].name;
}

std::string meaning_of(const WhatIfShown& shown, const decide::Factor& factor, double value) {
  const model::Study& study = shown.study;
  switch (factor.kind) {
    case Kind::price:
      return prices_at(study.tariff, value);
    case Kind::household:
      return household(shown, value);
    case Kind::use_of:
      return use_of(shown, factor.index, value);
    case Kind::idle_of:
      return idle_of(study.candidates[factor.index], value);
    case Kind::purchase_of:
      return money(units::in_currency(study.candidates[factor.index].purchase.central()) * value,
                   study.tariff.currency);
    case Kind::use:
    case Kind::purchase:
      break;
  }
  return "";
}

std::string prices_at(const model::Tariff& tariff, double factor) {
  constexpr std::size_t kFew = 3;
  if (!tariff.blocks.empty() || tariff.bands.size() > kFew) return "";
  std::string words;
  for (const model::Band& band : tariff.bands) {
    const double price = factor * (1 + tariff.tax.central()) *
                         units::in_currency_per_kilowatt_hour(band.price.central());
    words += fmt::format("{}{} {}", words.empty() ? "" : ", ", price_text(price, tariff.currency),
                         tariff.currency);
    if (tariff.bands.size() > 1) words += fmt::format(" ({})", band.name);
  }
  return words + ", tax included";
}

}  // namespace wattweek::report
