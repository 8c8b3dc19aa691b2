#include "candidates.hpp"

#include <utility>

#include "devices.hpp"
#include "numbers.hpp"
#include "tasks.hpp"

namespace wattweek::read {

namespace {

// Later than this no horizon reaches.
constexpr int kLatestYear = 1000;

model::MoneyRange read_money(const Table& table, std::string_view key) {
  const auto value = table.find(key);
  if (!value) return {};
  return as<units::Money>(read_range(*value, kMoney).value_or(units::Range<double>()));
}

model::LaterCost read_later(const Table& table, std::optional<int> years) {
  model::LaterCost later;
  const WholeRule rule{1, years.value_or(kLatestYear),
                       years ? ", within finance.years" : ", counted from the start"};
  if (const auto year = table.require("year", "the year at whose end it falls due")) {
    later.year = read_whole(*year, rule).value_or(1);
  }
  if (table.require("cost", accepted_range(kMoney))) later.cost = read_money(table, "cost");
  if (const auto name = table.find("name")) {
    later.name = read_text(*name, "what is paid for, in quotes").value_or("");
  }
  return later;
}

void read_own_keys(const Table& table, const CandidateContext& context, Ids& ids,
                   model::Candidate& candidate) {
  candidate.place = table.place();
  candidate.id = ids.add(table);
  candidate.name = candidate.id;
  if (const auto name = table.find("name")) {
    candidate.name = read_text(*name, "the candidate's name in quotes").value_or("");
  }
  candidate.purchase = read_money(table, "purchase");
  candidate.resale = read_money(table, "resale");
  for (const Table& later : table.repeated("later")) {
    candidate.later.push_back(read_later(later, context.years));
  }
}

model::Candidate read_candidate(const Table& table, const CandidateContext& context, Ids& ids) {
  CandidateDraft draft{{}, table, read_references(table, "skips", context.workloads.ids), {}};
  read_own_keys(table, context, ids, draft.candidate);
  draft.devices = read_devices(table, context);
  assign_tasks(draft, context.workloads);
  for (DeviceDraft& device : draft.devices) {
    draft.candidate.devices.push_back(std::move(device.device));
  }
  return std::move(draft.candidate);
}

}  // namespace

CandidateList read_candidates(const Table& study, const CandidateContext& context) {
  CandidateList list;
  for (const Table& table : study.at_least_one("candidate")) {
    list.candidates.push_back(read_candidate(table, context, list.ids));
  }
  return list;
}

}  // namespace wattweek::read
