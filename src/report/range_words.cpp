#include "range_words.hpp"

#include <fmt/format.h>

namespace wattweek::report {
namespace {

using decide::RangeKind;
using decide::RangePlace;

/// Of a profile, which may be that of several devices.
std::string of_profile(const model::Study& study, const RangePlace& place) {
  const model::Profile& profile = *study.candidates[place.of].devices[place.device].profile;
  const std::string& name = profile.name;
  switch (place.kind) {
    case RangeKind::off_w:
      return fmt::format("the watts of {} shut down", name);
    case RangeKind::sleep_w:
      return fmt::format("the watts of {} asleep", name);
    case RangeKind::idle_w:
      return fmt::format("the idle watts of {}", name);
    case RangeKind::busy_w:
      return fmt::format("the watts of {} at full load", name);
    case RangeKind::max_w:
      return fmt::format("the most watts of {}", name);
    case RangeKind::capacity:
      return fmt::format("how much work {} can do", name);
    case RangeKind::group_w:
      return fmt::format("the watts of the {} of {}", profile.groups[place.index].name, name);
    default:
      return fmt::format("what {} adds on {}", study.workloads[place.index].name, name);
  }
}

std::string of_tariff(const model::Tariff& tariff, const RangePlace& place) {
  switch (place.kind) {
    case RangeKind::tax:
      return "the tax on the bill";
    case RangeKind::standing_charge:
      return "the standing charge";
    case RangeKind::minimum_bill:
      return "the minimum bill";
    case RangeKind::block_price:
      return fmt::format("the price of block {}", place.of + 1);
    default:
      if (tariff.bands.size() == 1) return "the price of a kWh";
      return fmt::format("the price of a kWh in the band {}", tariff.bands[place.of].name);
  }
}

std::string share(const model::Workload& workload, std::size_t use) {
  const std::string words = fmt::format("how much of the time {} is in use", workload.name);
  return workload.uses.size() == 1 ? words : fmt::format("{} (use {})", words, use + 1);
}

std::string later_cost(const model::Candidate& candidate, std::size_t later) {
  const std::string& what = candidate.later[later].name;
  return fmt::format("{} of {}", what.empty() ? "a later cost" : "the later cost (" + what + ")",
                     candidate.name);
}

}  // namespace

std::string range_words(const model::Study& study, const RangePlace& place) {
  switch (place.kind) {
    case RangeKind::household:
      return "what the home itself uses";
    case RangeKind::discount_rate:
      return "the rate of discount";
    case RangeKind::price_rise:
      return "the yearly rise of electricity prices";
    case RangeKind::compute:
      return fmt::format("how much work {} takes", study.workloads[place.of].name);
    case RangeKind::share:
      return share(study.workloads[place.of], place.index);
    case RangeKind::purchase:
      return "the purchase of " + study.candidates[place.of].name;
    case RangeKind::resale:
      return "the resale of " + study.candidates[place.of].name;
    case RangeKind::later_cost:
      return later_cost(study.candidates[place.of], place.index);
    case RangeKind::meter_scale:
      return fmt::format("the error of the meter {}", study.meters[place.of].id);
    case RangeKind::tax:
    case RangeKind::standing_charge:
    case RangeKind::minimum_bill:
    case RangeKind::band_price:
    case RangeKind::block_price:
      return of_tariff(study.tariff, place);
    case RangeKind::off_w:
    case RangeKind::sleep_w:
    case RangeKind::idle_w:
    case RangeKind::busy_w:
    case RangeKind::max_w:
    case RangeKind::capacity:
    case RangeKind::group_w:
    case RangeKind::increment:
      break;
  }
  return of_profile(study, place);
}

}  // namespace wattweek::report
