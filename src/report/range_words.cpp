#include "range_words.hpp"

#include <fmt/format.h>

#include <cassert>

namespace wattweek::report {
namespace {

using decide::RangeKind;
using decide::RangePlace;

/// A profile by its name; one that stands in the study itself by its candidate, too.
std::string profile_name(const model::Study& study, const RangePlace& place) {
  const model::Candidate& candidate = study.candidates[place.of];
  const model::Profile& profile = *candidate.devices[place.device].profile;
  const bool is_inline =
      profile.place.file && candidate.place.file && *profile.place.file == *candidate.place.file;
  return is_inline ? fmt::format("{} of {}", profile.name, candidate.name) : profile.name;
}

/// Of a profile, which may be that of several devices.
std::string of_watts(const RangeKind kind, const std::string& name) {
  switch (kind) {
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
    default:
      assert(kind == RangeKind::capacity);
      return fmt::format("how much work {} can do", name);
  }
}

/// What a workload adds on a profile.
std::string of_increment(const RangeKind kind, const std::string& workload,
                         const std::string& name) {
  const std::string words = fmt::format("what {} adds on {}", workload, name);
  switch (kind) {
    case RangeKind::increment_first:
      return words + " for the first unit";
    case RangeKind::increment_further:
      return words + " for each further unit";
    case RangeKind::increment_load:
      return fmt::format("the load of {} on {}", workload, name);
    default:
      assert(kind == RangeKind::increment);
      return words;
  }
}

std::string band_price(const model::Tariff& tariff, std::size_t band) {
  if (tariff.bands.size() == 1) return "the price of a kWh";
  return fmt::format("the price of a kWh in the band {}", tariff.bands[band].name);
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
    case RangeKind::tax:
      return "the tax on the bill";
    case RangeKind::standing_per_day:
      return "the standing charge of a day";
    case RangeKind::standing_per_month:
      return "the standing charge of a month";
    case RangeKind::minimum_bill:
      return "the minimum bill";
    case RangeKind::band_price:
      return band_price(study.tariff, place.of);
    case RangeKind::block_price:
      return fmt::format("the price of block {}", place.of + 1);
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
    case RangeKind::off_w:
    case RangeKind::sleep_w:
    case RangeKind::idle_w:
    case RangeKind::busy_w:
    case RangeKind::max_w:
    case RangeKind::capacity:
      return of_watts(place.kind, profile_name(study, place));
    case RangeKind::group_w: {
      const auto& profile = *study.candidates[place.of].devices[place.device].profile;
      return fmt::format("the watts of the {} of {}", profile.groups[place.index].name,
                         profile_name(study, place));
    }
    case RangeKind::increment:
    case RangeKind::increment_first:
    case RangeKind::increment_further:
    case RangeKind::increment_load:
      return of_increment(place.kind, study.workloads[place.index].name,
                          profile_name(study, place));
    case RangeKind::meter_scale:
      break;
  }
  return fmt::format("the error of the meter {}", study.meters[place.of].id);
}

}  // namespace wattweek::report
