#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "sections.hpp"
#include "sums.hpp"

namespace wattweek::report {
namespace {

bool is_skipped(const model::Candidate& candidate, std::size_t workload) {
  return std::find(candidate.skips.begin(), candidate.skips.end(), workload) !=
         candidate.skips.end();
}

/// `8760 h, 12.1 W`: the mean over all hours, whatever state the devices are in.
std::string base_use(const Shown& s, double kwh) {
  return fmt::format("{} h, {} W", rounded(s.all.hours, 1), s.watts(1000 * kwh / s.all.hours));
}

/// `970 stream-hours, 3.1 W each`: what a unit adds while it is in use.
std::string use(const Shown& s, std::size_t w, double served, double kwh) {
  const std::string hours =
      fmt::format("{} {}-hours", rounded(served, 0), s.study.workloads[w].unit);
  return served > 0 ? fmt::format("{}, {} W each", hours, s.watts(1000 * kwh / served)) : hours;
}

}  // namespace

Table parts_table(const Shown& s, std::size_t c) {
  const decide::CandidateResult& result = s.all.candidates[c];
  Table table{
      {{"", Align::left}, {"kWh"}, {fmt::format("cost {}", s.currency())}, {"in use", Align::left}},
      {}};
  const double base_kwh = cause_kwh(result, 0);
  table.rows.push_back({"base: off, asleep, idle", s.kwh(base_kwh), s.cost(result.cost.by_cause[0]),
                        base_use(s, base_kwh)});
  for (std::size_t w = 0; w < s.study.workloads.size(); ++w) {
    if (is_skipped(s.study.candidates[c], w)) continue;
    const double kwh = cause_kwh(result, 1 + w);
    table.rows.push_back({s.study.workloads[w].name, s.kwh(kwh),
                          s.cost(result.cost.by_cause[1 + w]),
                          use(s, w, result.ledger.unit_hours[w].served, kwh)});
  }
  if (result.cost.minimum_cost != units::Money{}) {
    table.rows.push_back({"minimum bill", "", s.cost(result.cost.minimum_cost), ""});
  }
  table.rows.push_back(
      {"together", s.kwh(units::in_kilowatt_hours(result.energy)), s.cost(result.cost.cost), ""});
  return table;
}

Table devices_table(const Shown& s, std::size_t c) {
  Table table{{{"", Align::left}, {"kWh"}, {"mean W"}, {"highest W"}}, {}};
  const model::Candidate& candidate = s.study.candidates[c];
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    const model::Device& device = candidate.devices[d];
    const energy::DeviceTotal& total = s.all.candidates[c].ledger.devices[d];
    const std::string times = device.count > 1 ? fmt::format("{} x ", device.count) : "";
    table.rows.push_back({times + device.name, s.kwh(total.energy_kwh),
                          s.watts(device_mean_w(s.all, total)), s.watts(total.highest_w)});
  }
  return table;
}

std::string hours_sentence(const Shown& s, std::size_t c) {
  static constexpr std::array<const char*, energy::kStates> kWords = {"off", "asleep", "idle",
                                                                      "active"};
  const energy::Ledger& ledger = s.all.candidates[c].ledger;
  std::vector<std::string> parts;
  for (std::size_t state = 0; state < energy::kStates; ++state) {
    const std::string hours = rounded(ledger.states[state].device_hours, 0);
    if (hours != "0") parts.push_back(fmt::format("{} {}", hours, kWords[state]));
  }
  return fmt::format("Device-hours: {}. Highest draw {} W.", joined(parts),
                     s.watts(ledger.highest_w));
}

Section whereabouts(const Shown& s, std::size_t c) {
  const model::Candidate& candidate = s.study.candidates[c];
  std::string heading = candidate.name;
  if (candidate.id != candidate.name) heading += fmt::format(" [{}]", candidate.id);
  Section section{heading, {parts_table(s, c)}};
  if (candidate.devices.size() > 1) section.blocks.emplace_back(devices_table(s, c));
  section.blocks.emplace_back(Paragraph{hours_sentence(s, c)});
  return section;
}

}  // namespace wattweek::report
