#include "day_words.hpp"
#include "json_parts.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/shift_and_rest.hpp"

namespace wattweek::report {
namespace {

/// The horizon; null without one.
Json years(const model::Study& study) {
  return study.finance && study.finance->years ? Json(*study.finance->years) : Json();
}

Json start_head(const decide::Start& start) {
  return {
      {"hours_later", start.hours_later},
      {"day", start.time.weekday_bit ? Json(weekday_word(*start.time.weekday_bit)) : Json()},
      {"time", clock_words(start.time.minute)},
  };
}

Json start_part(const ShiftShown& shown, const decide::Start& start) {
  Json candidates = Json::array();
  for (std::size_t c = 0; c < start.candidates.size(); ++c) {
    const decide::StartFigures& figures = start.candidates[c];
    candidates.push_back({{"id", shown.study.candidates[c].id},
                          {"energy_kwh", number(figures.energy_kwh)},
                          {"cost", number(figures.cost)},
                          {"unit_hours", number(figures.unit_hours.served)},
                          {"unserved_unit_hours", number(figures.unit_hours.unserved)}});
  }
  Json part = start_head(start);
  part["candidates"] = candidates;
  return part;
}

Json choice_part(const ShiftShown& shown, std::size_t candidate,
                 const std::optional<decide::StartChoice>& choice) {
  if (!choice) return {};
  const decide::Start& start = shown.shift.starts[choice->start];
  Json part = start_head(start);
  part["saves_kwh"] = number(choice->saves_kwh);
  part["saves_cost"] = number(choice->saves_cost);
  part["saves_present_cost"] = number(choice->saves_present_cost);
  part["unserved_unit_hours"] = number(start.candidates[candidate].unit_hours.unserved);
  return part;
}

Json devices_part(const RestShown& shown) {
  Json devices = Json::array();
  const auto& all = shown.study.candidates[shown.plan.candidate].devices;
  for (const std::size_t d : shown.plan.devices) {
    devices.push_back({{"number", d + 1}, {"name", all[d].name}, {"count", all[d].count}});
  }
  return devices;
}

Json figures_part(const decide::RestFigures& figures) {
  return {{"energy_kwh", number(figures.energy_kwh)},
          {"cost", number(figures.cost)},
          {"resting_device_hours", number(figures.resting_device_hours)}};
}

Json workloads_part(const RestShown& shown) {
  Json workloads = Json::array();
  for (std::size_t w = 0; w < shown.study.workloads.size(); ++w) {
    const energy::UnitHours& with = shown.result.with.unit_hours[w];
    workloads.push_back(
        {{"id", shown.study.workloads[w].id},
         {"unit_hours", number(with.served)},
         {"unserved_unit_hours", number(with.unserved)},
         {"unserved_without", number(shown.result.without.unit_hours[w].unserved)}});
  }
  return workloads;
}

}  // namespace

std::string shift_json(const ShiftShown& shown) {
  Json starts = Json::array();
  for (const decide::Start& start : shown.shift.starts) starts.push_back(start_part(shown, start));
  Json candidates = Json::array();
  for (std::size_t c = 0; c < shown.study.candidates.size(); ++c) {
    const decide::ShiftChoice& choice = shown.shift.choices[c];
    candidates.push_back({{"id", shown.study.candidates[c].id},
                          {"cheapest", choice_part(shown, c, choice.cheapest)},
                          {"cheaper_unserved", choice_part(shown, c, choice.cheaper_unserved)}});
  }
  return json_text({{"format", "wattweek-shift-1"},
                    {"workload", shown.study.workloads[shown.shift.workload].id},
                    {"currency", shown.study.tariff.currency},
                    {"years", years(shown.study)},
                    {"candidates", candidates},
                    {"starts", starts}});
}

std::string rest_json(const RestShown& shown) {
  const decide::RestResult& result = shown.result;
  return json_text({{"format", "wattweek-rest-1"},
                    {"candidate", shown.study.candidates[shown.plan.candidate].id},
                    {"devices", devices_part(shown)},
                    {"hours", clock_words(shown.plan.hours.start_min) + "-" +
                                  clock_words(shown.plan.hours.end_min)},
                    {"state", shown.plan.state == model::RestState::sleep ? "sleep" : "off"},
                    {"currency", shown.study.tariff.currency},
                    {"years", years(shown.study)},
                    {"without", figures_part(result.without)},
                    {"with", figures_part(result.with)},
                    {"saves_kwh", number(result.saves_kwh)},
                    {"saves_cost", number(result.saves_cost)},
                    {"saves_present_cost", number(result.saves_present_cost)},
                    {"workloads", workloads_part(shown)},
                    {"caution", std::string(switching_caution())}});
}

}  // namespace wattweek::report
