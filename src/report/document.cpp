#include "document.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "numbers.hpp"
#include "sentences.hpp"
#include "sums.hpp"

namespace wattweek::report {
namespace {

/// A study and its results, and what they are shown with.
struct Shown {
  const model::Study& study;
  const decide::Assessment& all;
  Scope scope;
  int kwh_decimals = 1;
  int watt_decimals = 1;

  std::string kwh(double value) const { return fixed(value, kwh_decimals); }
  std::string watts(double value) const { return fixed(value, watt_decimals); }
  std::string cost(double value) const { return amount(value, study.tariff.currency); }
  std::string cost(units::Money money) const { return cost(units::in_currency(money)); }
};

Shown shown(const model::Study& study, const decide::Assessment& all, Scope scope) {
  std::vector<double> kwh;
  std::vector<double> watts;
  for (const decide::CandidateResult& result : all.candidates) {
    kwh.push_back(units::in_kilowatt_hours(result.energy));
    watts.push_back(units::in_watts(result.mean));
  }
  return {study, all, scope, decimals_for(kwh), decimals_for(watts)};
}

std::string period(const Shown& s) {
  const std::chrono::year_month last = s.study.start + std::chrono::months(s.study.months - 1);
  const std::chrono::year_month_day end{last / std::chrono::last};
  return fmt::format("{:04}-{:02}-01 to {:04}-{:02}-{:02}, {} days, {} hours, {}",
                     static_cast<int>(s.study.start.year()),
                     static_cast<unsigned>(s.study.start.month()), static_cast<int>(end.year()),
                     static_cast<unsigned>(end.month()), static_cast<unsigned>(end.day()),
                     s.all.days, rounded(s.all.hours, 2), s.study.time_zone);
}

std::string contract(const Shown& s) {
  return fmt::format("Electricity contract: {}, in {}", s.study.tariff.name,
                     s.study.tariff.currency);
}

/// A column of the table of candidates; `cell` shows its figure for candidate c.
struct Figure {
  std::string header;
  std::function<std::string(std::size_t c)> cell;
};

bool any_purchase(const model::Study& study) {
  return std::any_of(study.candidates.begin(), study.candidates.end(), [](const auto& candidate) {
    return units::in_currency(candidate.purchase.central()) != 0;
  });
}

std::vector<Figure> energy_figures(const Shown& s) {
  return {
      {"kWh",
       [&s](std::size_t c) { return s.kwh(units::in_kilowatt_hours(s.all.candidates[c].energy)); }},
      {"mean W",
       [&s](std::size_t c) { return s.watts(units::in_watts(s.all.candidates[c].mean)); }}};
}

std::vector<Figure> cost_figures(const Shown& s) {
  const std::string& currency = s.study.tariff.currency;
  std::vector<Figure> figures;
  figures.push_back({fmt::format("cost {}", currency),
                     [&s](std::size_t c) { return s.cost(s.all.candidates[c].cost.cost); }});
  if (s.study.months != 12) {
    figures.push_back({fmt::format("a year {}", currency), [&s](std::size_t c) {
                         const double a_year = 12.0 / s.study.months;
                         return s.cost(s.all.candidates[c].cost.cost * a_year);
                       }});
  }
  return figures;
}

std::vector<Figure> lifetime_figures(const Shown& s) {
  const std::string& currency = s.study.tariff.currency;
  const auto& lifetime = s.all.candidates.front().lifetime;
  std::vector<Figure> figures;
  if (any_purchase(s.study) || lifetime) {
    figures.push_back({fmt::format("purchase {}", currency), [&s](std::size_t c) {
                         return s.cost(s.study.candidates[c].purchase.central());
                       }});
  }
  if (lifetime) {
    figures.push_back(
        {fmt::format("{}-year cost* {}", lifetime->years, currency),
         [&s](std::size_t c) { return s.cost(s.all.candidates[c].lifetime->present_cost); }});
  }
  if (s.study.carbon_kg_per_kwh) {
    figures.push_back({"CO2 kg", [&s](std::size_t c) {
                         return rounded(s.all.candidates[c].co2_kg.value_or(0), 0);
                       }});
  }
  return figures;
}

std::string name_in_table(const Shown& s, std::size_t c) {
  std::string name = s.study.candidates[c].name;
  if (s.scope == Scope::compare && c == s.all.baseline) name += " (baseline)";
  if (s.all.candidates[c].lower_bound) name += " (at least)";
  return name;
}

Table candidates_table(const Shown& s) {
  std::vector<Figure> figures = energy_figures(s);
  for (const auto& more : {cost_figures(s), lifetime_figures(s)}) {
    figures.insert(figures.end(), more.begin(), more.end());
  }
  Table table{{{"", Align::left}}, {}};
  for (const Figure& figure : figures) table.columns.push_back({figure.header, Align::right});
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    table.rows.push_back({name_in_table(s, c)});
    for (const Figure& figure : figures) table.rows.back().push_back(figure.cell(c));
  }
  return table;
}

Section overview(const Shown& s) {
  Section section{"", {Paragraph{period(s)}, Paragraph{contract(s)}, candidates_table(s)}};
  if (s.all.candidates.front().lifetime) {
    section.blocks.emplace_back(Paragraph{
        "* Purchase, electricity and later costs less resale, each at its present value."});
  }
  return section;
}

/// What a workload is used for how long, such as `208 film-hours`.
std::string use(const Shown& s, const decide::CandidateResult& result, std::size_t w) {
  return fmt::format("{} {}-hours", rounded(result.ledger.unit_hours[w].served, 0),
                     s.study.workloads[w].unit);
}

bool is_skipped(const model::Candidate& candidate, std::size_t workload) {
  return std::find(candidate.skips.begin(), candidate.skips.end(), workload) !=
         candidate.skips.end();
}

/// Where a candidate's energy and cost go; the parts add up to the whole.
Table parts_table(const Shown& s, std::size_t c) {
  const decide::CandidateResult& result = s.all.candidates[c];
  Table table{{{"", Align::left},
               {"kWh"},
               {fmt::format("cost {}", s.study.tariff.currency)},
               {"use", Align::left}},
              {}};
  table.rows.push_back({"base: off, asleep, idle", s.kwh(cause_kwh(result, 0)),
                        s.cost(result.cost.by_cause[0]), ""});
  for (std::size_t w = 0; w < s.study.workloads.size(); ++w) {
    if (is_skipped(s.study.candidates[c], w)) continue;
    table.rows.push_back({s.study.workloads[w].name, s.kwh(cause_kwh(result, 1 + w)),
                          s.cost(result.cost.by_cause[1 + w]), use(s, result, w)});
  }
  if (result.cost.minimum_cost != units::Money{}) {
    table.rows.push_back({"minimum bill", "", s.cost(result.cost.minimum_cost), ""});
  }
  table.rows.push_back(
      {"together", s.kwh(units::in_kilowatt_hours(result.energy)), s.cost(result.cost.cost), ""});
  return table;
}

std::string joined(const std::vector<std::string>& parts) {
  return fmt::format("{}", fmt::join(parts, ", "));
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

std::string devices_sentence(const Shown& s, std::size_t c) {
  const model::Candidate& candidate = s.study.candidates[c];
  std::vector<std::string> parts;
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    const model::Device& device = candidate.devices[d];
    const energy::DeviceTotal& total = s.all.candidates[c].ledger.devices[d];
    const std::string times = device.count > 1 ? fmt::format("{} x ", device.count) : "";
    parts.push_back(fmt::format("{}{} {} kWh (mean {} W)", times, device.name,
                                s.kwh(total.energy_kwh), s.watts(device_mean_w(s.all, total))));
  }
  return fmt::format("Devices: {}.", joined(parts));
}

std::string bands_sentence(const Shown& s, std::size_t c) {
  const decide::CandidateResult& result = s.all.candidates[c];
  std::vector<std::string> parts;
  for (std::size_t b = 0; b < s.study.tariff.bands.size(); ++b) {
    parts.push_back(fmt::format(
        "{} {} kWh for {}", s.study.tariff.bands[b].name, s.kwh(band_kwh(s.all, result, b)),
        money(units::in_currency(result.cost.by_band[b]), s.study.tariff.currency)));
  }
  return fmt::format("Price bands: {}.", joined(parts));
}

Section whereabouts(const Shown& s, std::size_t c) {
  const model::Candidate& candidate = s.study.candidates[c];
  std::string heading = candidate.name;
  if (candidate.id != candidate.name) heading += fmt::format(" [{}]", candidate.id);
  std::string also = hours_sentence(s, c);
  if (candidate.devices.size() > 1) also += " " + devices_sentence(s, c);
  if (s.study.tariff.bands.size() > 1) also += " " + bands_sentence(s, c);
  return {heading, {parts_table(s, c), Paragraph{also}}};
}

Section comparison(const Shown& s) {
  Section section{fmt::format("Compared with {}", s.study.candidates[s.all.baseline].name), {}};
  List list;
  for (const decide::ComparisonRow& row : s.all.rows) {
    list.items.push_back(comparison_sentence(s.study, s.all, row));
  }
  if (list.items.empty()) {
    section.blocks.emplace_back(Paragraph{"There is no other candidate."});
  } else {
    section.blocks.emplace_back(list);
  }
  return section;
}

Section notes(const Shown& s) {
  List list;
  for (const decide::Note& note : s.all.notes) list.items.push_back(note_sentence(note));
  return {"Notes", {list}};
}

}  // namespace

Document document(const model::Study& study, const decide::Assessment& all, Scope scope) {
  const Shown s = shown(study, all, scope);
  Document whole{study.title, {overview(s)}};
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    whole.sections.push_back(whereabouts(s, c));
  }
  if (scope == Scope::compare) whole.sections.push_back(comparison(s));
  if (!all.notes.empty()) whole.sections.push_back(notes(s));
  whole.sections.push_back({"Bear in mind", {List{limits(study)}}});
  return whole;
}

std::string text(const model::Study& study, const decide::Assessment& all, Scope scope,
                 int columns) {
  return lay_out_text(document(study, all, scope), columns);
}

std::string markdown(const model::Study& study, const decide::Assessment& all, Scope scope) {
  return lay_out_markdown(document(study, all, scope));
}

}  // namespace wattweek::report
