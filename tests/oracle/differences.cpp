#include "differences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "../support/about.hpp"

namespace wattweek::oracle {
namespace {

// Collects what differs; knows where in the results it is.
class Comparison {
 public:
  void enter(const std::string& part) { path_.push_back(part); }
  void leave() { path_.pop_back(); }

  void number(const std::string& member, double engine, double dumb) {
    if (!agree(engine, dumb)) report(member, fmt::format("{}", engine), fmt::format("{}", dumb));
  }

  void number(const std::string& member, std::optional<double> engine, std::optional<double> dumb) {
    if (engine && dumb) return number(member, *engine, *dumb);
    const auto text = [](std::optional<double> x) { return x ? fmt::format("{}", *x) : "null"; };
    if (engine || dumb) report(member, text(engine), text(dumb));
  }

  void text(const std::string& member, const std::string& engine, const std::string& dumb) {
    if (engine != dumb) report(member, engine, dumb);
  }

  std::vector<std::string> found;

 private:
  void report(const std::string& member, const std::string& engine, const std::string& dumb) {
    std::string place;
    for (const std::string& part : path_) place += part + ".";
    found.push_back(fmt::format("{}{}: engine {}, dumb {}", place, member, engine, dumb));
  }

  std::vector<std::string> path_;
};

class Within {
 public:
  Within(Comparison& comparison, const std::string& part) : comparison_(comparison) {
    comparison_.enter(part);
  }
  Within(Comparison& comparison, const char* list, std::size_t index)
      : Within(comparison, fmt::format("{}[{}]", list, index)) {}
  ~Within() { comparison_.leave(); }
  Within(const Within&) = delete;
  Within& operator=(const Within&) = delete;

 private:
  Comparison& comparison_;
};

void compare_bill(Comparison& found, const billing::Bill& engine, const Bill& dumb) {
  found.number("kwh", units::in_kilowatt_hours(engine.energy), dumb.kwh);
  found.number("standing", units::in_currency(engine.standing), dumb.standing);
  found.number("bands.size", static_cast<double>(engine.bands.size()),
               static_cast<double>(dumb.bands.size()));
  for (std::size_t b = 0; b < std::min(engine.bands.size(), dumb.bands.size()); ++b) {
    const Within band(found, "bands", b);
    found.number("kwh", units::in_kilowatt_hours(engine.bands[b].energy), dumb.bands[b].kwh);
    found.number("amount", units::in_currency(engine.bands[b].amount), dumb.bands[b].amount);
  }
  found.number("blocks", units::in_currency(engine.blocks), dumb.blocks);
  found.number("minimum_top_up", units::in_currency(engine.minimum_top_up), dumb.minimum_top_up);
  found.number("tax", units::in_currency(engine.tax), dumb.tax);
  found.number("total", units::in_currency(engine.total), dumb.total);
}

void compare_bills(Comparison& found, const std::vector<billing::Bill>& engine,
                   const std::vector<Bill>& dumb) {
  found.number("bills.size", static_cast<double>(engine.size()), static_cast<double>(dumb.size()));
  for (std::size_t m = 0; m < std::min(engine.size(), dumb.size()); ++m) {
    const Within month(found, "bills", m);
    compare_bill(found, engine[m], dumb[m]);
  }
}

void compare_months_and_bands(Comparison& found, const decide::CandidateResult& engine,
                              const CandidateReckoned& dumb) {
  const std::size_t bands = dumb.bands.size();
  std::vector<double> band_kwh(bands, 0.0);
  for (std::size_t m = 0; m < dumb.months.size(); ++m) {
    const Within month(found, "months", m);
    double month_kwh = 0;
    for (std::size_t b = 0; b < bands; ++b) {
      const double kwh = engine.ledger.kwh.row(static_cast<Eigen::Index>(m * bands + b)).sum();
      month_kwh += kwh;
      band_kwh[b] += kwh;
    }
    found.number("energy_kwh", month_kwh, dumb.months[m].energy_kwh);
    found.number("cost", units::in_currency(engine.cost.by_period[m]), dumb.months[m].cost);
  }
  for (std::size_t b = 0; b < bands; ++b) {
    const Within band(found, "bands", b);
    found.number("energy_kwh", band_kwh[b], dumb.bands[b].energy_kwh);
    found.number("cost", units::in_currency(engine.cost.by_band[b]), dumb.bands[b].cost);
  }
}

void compare_causes(Comparison& found, const decide::CandidateResult& engine,
                    const CandidateReckoned& dumb) {
  found.number("base.energy_kwh", engine.ledger.kwh.col(0).sum(), dumb.base_kwh);
  found.number("base.cost", units::in_currency(engine.cost.by_cause[0]), dumb.base_cost);
  for (std::size_t w = 0; w < dumb.workloads.size(); ++w) {
    const Within workload(found, "workloads", w);
    const WorkloadOfCandidate& right = dumb.workloads[w];
    found.number("unit_hours", engine.ledger.unit_hours[w].served, right.unit_hours);
    found.number("unserved_unit_hours", engine.ledger.unit_hours[w].unserved,
                 right.unserved_unit_hours);
    found.number("energy_kwh", engine.ledger.kwh.col(static_cast<Eigen::Index>(1 + w)).sum(),
                 right.energy_kwh);
    found.number("cost", units::in_currency(engine.cost.by_cause[1 + w]), right.cost);
  }
}

void compare_states_and_devices(Comparison& found, const decide::CandidateResult& engine,
                                const CandidateReckoned& dumb) {
  for (std::size_t s = 0; s < kStateCount; ++s) {
    const Within state(found, "states", s);
    found.number("hours", engine.ledger.states[s].device_hours, dumb.states[s].hours);
    found.number("energy_kwh", engine.ledger.states[s].energy_kwh, dumb.states[s].energy_kwh);
  }
  for (std::size_t d = 0; d < dumb.devices.size(); ++d) {
    const Within device(found, "devices", d);
    found.number("energy_kwh", engine.ledger.devices[d].energy_kwh, dumb.devices[d].energy_kwh);
    found.number("highest_w", engine.ledger.devices[d].highest_w, dumb.devices[d].highest_w);
    found.number("overload_hours", engine.ledger.devices[d].overload_hours,
                 dumb.devices[d].overload_hours);
  }
}

void compare_lifetimes(Comparison& found, const std::optional<decide::Lifetime>& engine,
                       const std::optional<LifetimeOfCandidate>& dumb) {
  found.text("lifetime", engine ? "set" : "null", dumb ? "set" : "null");
  if (!engine || !dumb) return;
  const Within lifetime(found, "lifetime");
  found.number("purchase", engine->purchase, dumb->purchase);
  found.number("energy_cost", engine->energy_cost, dumb->energy_cost);
  found.number("later_cost", engine->later_cost, dumb->later_cost);
  found.number("resale", engine->resale, dumb->resale);
  found.number("total", engine->total, dumb->total);
  found.number("present_cost", engine->present_cost, dumb->present_cost);
}

void compare_candidate(Comparison& found, const decide::CandidateResult& engine,
                       const CandidateReckoned& dumb) {
  found.number("energy_kwh", units::in_kilowatt_hours(engine.energy), dumb.energy_kwh);
  found.number("mean_w", units::in_watts(engine.mean), dumb.mean_w);
  found.number("highest_w", engine.ledger.highest_w, dumb.highest_w);
  found.number("cost", units::in_currency(engine.cost.cost), dumb.cost);
  found.number("blocks_cost", units::in_currency(engine.cost.blocks_cost), dumb.blocks_cost);
  found.number("minimum_cost", units::in_currency(engine.cost.minimum_cost), dumb.minimum_cost);
  found.number("co2_kg", engine.co2_kg, dumb.co2_kg);
  found.number("lower_bound", engine.lower_bound, dumb.lower_bound);
  compare_months_and_bands(found, engine, dumb);
  compare_causes(found, engine, dumb);
  compare_states_and_devices(found, engine, dumb);
  compare_lifetimes(found, engine.lifetime, dumb.lifetime);
  compare_bills(found, engine.cost.bills, dumb.bills);
}

void compare_row(Comparison& found, const decide::ComparisonRow& engine, const RowReckoned& dumb) {
  found.number("candidate", static_cast<double>(engine.candidate),
               static_cast<double>(dumb.candidate));
  found.number("saves_kwh", engine.saves_kwh, dumb.saves_kwh);
  found.number("saves_cost", engine.saves_cost, dumb.saves_cost);
  found.number("extra_purchase", engine.extra_purchase, dumb.extra_purchase);
  found.number("payback_years", engine.payback_years, dumb.payback_years);
  found.number("overtaken_years", engine.overtaken_years, dumb.overtaken_years);
  found.number("discounted_payback_years", engine.discounted_payback_years,
               dumb.discounted_payback_years);
  found.number("saves_present_cost", engine.saves_present_cost, dumb.saves_present_cost);
  found.number("break_even_price_factor", engine.break_even_price_factor,
               dumb.break_even_price_factor);
}

void compare_hours(Comparison& found, const decide::Assessment& engine, const Reckoned& dumb) {
  found.number("study.days", engine.days, dumb.days);
  found.number("study.hours", engine.hours, dumb.hours);
  found.number("months.size", static_cast<double>(engine.months.size()),
               static_cast<double>(dumb.month_hours.size()));
  for (std::size_t m = 0; m < std::min(engine.months.size(), dumb.month_hours.size()); ++m) {
    const Within month(found, "months", m);
    found.number("hours", engine.months[m].hours(), dumb.month_hours[m]);
  }
  for (std::size_t b = 0; b < dumb.band_hours.size(); ++b) {
    const Within band(found, "bands", b);
    found.number("hours", engine.band_hours[b], dumb.band_hours[b]);
  }
}

// Notes whose condition is a plain matter of fact: windows that never hold, and candidates that
// are not like for like.
void compare_notes(Comparison& found, const model::Study& study, const decide::Assessment& engine,
                   const Reckoned& dumb) {
  std::set<std::string> expected;
  std::set<std::string> actual;
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    const std::string& id = study.candidates[c].id;
    if (!study.candidates[c].skips.empty()) expected.insert("skipped " + id);
    if (dumb.candidates[c].lower_bound) expected.insert("overload " + id);
    for (std::size_t w = 0; w < study.workloads.size(); ++w) {
      const auto& skips = study.candidates[c].skips;
      const bool skipped = std::find(skips.begin(), skips.end(), w) != skips.end();
      if (!skipped && dumb.candidates[c].workloads[w].unserved_unit_hours > 0) {
        expected.insert("unserved " + id);
      }
    }
  }
  // With one candidate alone nothing is scaled that results list; either way is right.
  const bool compares = study.candidates.size() > 1;
  if (study.months < 12 && compares) expected.insert("scaled-to-year");
  for (const decide::Note& note : engine.notes) {
    if (note.code == "scaled-to-year" && compares) actual.insert(note.code);
    for (const char* code : {"skipped", "overload", "unserved"}) {
      if (note.code == code) actual.insert(note.code + " " + decide::where_text(note));
    }
  }
  for (const std::string& note : expected) {
    if (!actual.contains(note)) found.text("notes", "without", note);
  }
  for (const std::string& note : actual) {
    if (!expected.contains(note)) found.text("notes", note, "without");
  }
  for (const diag::Place& place : dumb.windows_that_never_hold) {
    const std::string where = diag::to_text(place);
    const bool told =
        std::any_of(engine.notes.begin(), engine.notes.end(), [&](const decide::Note& note) {
          return note.code == "never-holds" && decide::where_text(note) == where;
        });
    if (!told) found.text("notes", "without", "never-holds " + where);
  }
}

}  // namespace

bool agree(double a, double b) { return a == tests::about(b); }

std::vector<std::string> differences(const model::Study& study, const decide::Assessment& engine,
                                     const Reckoned& dumb) {
  Comparison found;
  compare_hours(found, engine, dumb);
  {
    const Within without(found, "without");
    compare_bills(found, engine.without.bills, dumb.without);
  }
  for (std::size_t c = 0; c < dumb.candidates.size(); ++c) {
    const Within candidate(found, "candidates", c);
    compare_candidate(found, engine.candidates[c], dumb.candidates[c]);
  }
  found.number("rows.size", static_cast<double>(engine.rows.size()),
               static_cast<double>(dumb.rows.size()));
  for (std::size_t r = 0; r < std::min(engine.rows.size(), dumb.rows.size()); ++r) {
    const Within row(found, "rows", r);
    compare_row(found, engine.rows[r], dumb.rows[r]);
  }
  compare_notes(found, study, engine, dumb);
  return found.found;
}

std::string on_lines(const std::vector<std::string>& differences, std::size_t most) {
  std::string text;
  for (std::size_t i = 0; i < std::min(most, differences.size()); ++i) {
    text += differences[i] + "\n";
  }
  if (differences.size() > most) {
    text += fmt::format("... and {} more\n", differences.size() - most);
  }
  return text;
}

}  // namespace wattweek::oracle
