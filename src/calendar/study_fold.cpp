#include "wattweek/calendar/study_fold.hpp"

#include <utility>

#include "price_bands.hpp"
#include "week_classes.hpp"

namespace wattweek::calendar {

namespace {

std::vector<model::DateSpan> away_dates(const model::Study& study, std::size_t workload) {
  std::vector<model::DateSpan> spans;
  for (const model::Away& away : study.away) {
    for (const std::size_t named : away.workloads) {
      if (named == workload) spans.push_back(away.dates);
    }
  }
  return spans;
}

void add_uses(const model::Study& study, FoldInput& input, ConditionIndex& index) {
  for (std::size_t w = 0; w < study.workloads.size(); ++w) {
    const std::vector<model::DateSpan> away = away_dates(study, w);
    auto& positions = index.use.emplace_back();
    for (const model::Use& use : study.workloads[w].uses) {
      positions.push_back(static_cast<std::uint32_t>(input.conditions.size()));
      input.conditions.push_back({{&use.window}, away, &study.holidays});
    }
  }
}

void add_rests(const model::Study& study, FoldInput& input, ConditionIndex& index) {
  for (const model::Candidate& candidate : study.candidates) {
    auto& by_device = index.rest.emplace_back();
    for (const model::Device& device : candidate.devices) {
      auto& positions = by_device.emplace_back();
      for (const model::Rest& rest : device.rests) {
        positions.push_back(static_cast<std::uint32_t>(input.conditions.size()));
        input.conditions.push_back({{&rest.window}, {}, &study.holidays});
      }
    }
  }
}

std::vector<model::Window> week_slots(int slots_per_day) {
  const int length_min = 1440 / slots_per_day;
  std::vector<model::Window> slots;
  for (unsigned day = 0; day < 7; ++day) {
    for (int i = 0; i < slots_per_day; ++i) {
      model::Window& slot = slots.emplace_back();
      slot.days = model::WeekdaySet{1U << day};
      slot.hours = {{i * length_min, (i + 1) * length_min}};
    }
  }
  return slots;
}

FoldedStudy fold_with(const model::Study& study, const ZoneRules& zone,
                      std::vector<Condition> bands) {
  FoldInput input{study.start, study.months, {}, std::move(bands)};
  FoldedStudy folded;
  add_uses(study, input, folded.index);
  add_rests(study, input, folded.index);
  WeekClasses classes(study);
  classes.add_to(input);
  folded.fold = fold(input, zone);
  folded.hour_of_week = classes.hours_of(folded.fold);
  return folded;
}

}  // namespace

FoldedStudy fold_study(const model::Study& study, const ZoneRules& zone) {
  return fold_with(study, zone, bands_of(study.tariff));
}

FoldedStudy fold_week(const model::Study& study, const ZoneRules& zone, int slots_per_day) {
  const std::vector<model::Window> slots = week_slots(slots_per_day);
  std::vector<Condition> bands;
  for (const model::Window& slot : slots) bands.push_back({{&slot}, {}, nullptr});
  return fold_with(study, zone, std::move(bands));
}

std::optional<LocalTime> first_uncovered(const model::Tariff& tariff, std::chrono::year_month start,
                                         int months, const ZoneRules& zone) {
  return fold({start, months, {}, bands_of(tariff)}, zone).first_uncovered;
}

}  // namespace wattweek::calendar
