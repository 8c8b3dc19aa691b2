#include "notes_of_study.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "wattweek/diag/number_text.hpp"
#include "wattweek/units/currency.hpp"
#include "words.hpp"

namespace wattweek::decide {

namespace {

using calendar::FoldedStudy;
using units::in_currency;

class NoteTaker {
 public:
  NoteTaker(const model::Study& study, const FoldedStudy& folded, const Assessment& assessment)
      : study_(study), folded_(folded), assessment_(assessment) {}

  std::vector<Note> run() {
    note_period();
    append(notes_of_tariff(study_.tariff));
    note_bands();
    note_holidays();
    note_uses();
    note_away();
    note_rests();
    note_profiles();
    for (std::size_t c = 0; c < study_.candidates.size(); ++c) note_candidate(c);
    return std::move(notes_);
  }

 private:
  void add(std::string code, diag::Place place, std::string text) {
    notes_.push_back({std::move(code), std::move(place), std::move(text)});
  }
  void add(std::string code, const model::Candidate& candidate, std::string text) {
    notes_.push_back({std::move(code), candidate.id, std::move(text)});
  }

  model::CivilDay first_day() const { return calendar::first_day(study_.start); }
  model::CivilDay end_day() const {
    return calendar::first_day(study_.start + std::chrono::months{study_.months});
  }

  std::string money(units::Money amount) const {
    return diag::rounded(in_currency(amount), units::minor_digits(study_.tariff.currency)) + " " +
           study_.tariff.currency;
  }

  void note_period() {
    if (study_.months >= 12) return;
    add("scaled-to-year", study_.months_place,
        "the study covers " + std::to_string(study_.months) +
            " months; what is saved a year is scaled up from them, whatever the season");
  }

  void append(const std::vector<Note>& more) {
    notes_.insert(notes_.end(), more.begin(), more.end());
  }

  void note_bands() {
    for (std::size_t b = 0; b < study_.tariff.bands.size(); ++b) {
      const model::Band& band = study_.tariff.bands[b];
      const auto& ever = folded_.fold.band_windows_ever_hold[b];
      for (std::size_t w = 0; w < ever.size(); ++w) {
        if (ever[w]) continue;
        add("never-holds", band.when[w].place,
            "this window of the band " + quoted(band.name) + " never holds in the study");
      }
      const bool holds = std::find(ever.begin(), ever.end(), true) != ever.end();
      if (holds && assessment_.band_hours[b] <= 0) {
        add("never-first", band.place,
            "the band " + quoted(band.name) +
                " holds only where an earlier band holds too, so its price is never paid");
      }
    }
  }

  void note_holiday_dates(const std::vector<model::CivilDay>& dates,
                          const std::vector<diag::Place>& places) {
    for (std::size_t i = 0; i < dates.size(); ++i) {
      // The evening of the day before the study reaches into its first morning.
      if (dates[i] >= first_day() - std::chrono::days{1} && dates[i] < end_day()) continue;
      add("never-holds", places[i],
          "the holiday " + calendar::to_text(dates[i]) + " is not in the study");
    }
  }

  void note_holidays() {
    note_holiday_dates(study_.holidays.dates, study_.holidays.places);
    const model::Tariff& tariff = study_.tariff;
    if (tariff.has_own_holidays) note_holiday_dates(tariff.holidays.dates, tariff.holidays.places);
    const bool study_uses =
        study_.holidays.count_as || (!tariff.has_own_holidays && tariff.holidays.count_as);
    const std::string idle =
        "these holidays change nothing: no holidays_as says which day they count as";
    if (!study_.holidays.dates.empty() && !study_uses) {
      add("holidays-unused", study_.holidays.places.front(), idle);
    }
    if (tariff.has_own_holidays && !tariff.holidays.dates.empty() && !tariff.holidays.count_as) {
      add("holidays-unused", tariff.holidays.places.front(), idle);
    }
  }

  bool ever_holds(std::uint32_t condition) const {
    return folded_.fold.condition_windows_ever_hold[condition].front();
  }

  void note_uses() {
    for (std::size_t w = 0; w < study_.workloads.size(); ++w) {
      const model::Workload& workload = study_.workloads[w];
      for (std::size_t u = 0; u < workload.uses.size(); ++u) {
        if (ever_holds(folded_.index.use[w][u])) continue;
        add("never-holds", workload.uses[u].window.place,
            "this use of " + quoted(workload.id) + " never holds in the study");
      }
    }
  }

  void note_away() {
    for (const model::Away& away : study_.away) {
      if (away.dates.last >= first_day() - std::chrono::days{1} && away.dates.first < end_day())
        continue;
      add("never-holds", away.place, "these dates away are not in the study");
    }
  }

  void note_rests() {
    for (std::size_t c = 0; c < study_.candidates.size(); ++c) {
      for (std::size_t d = 0; d < study_.candidates[c].devices.size(); ++d) {
        const model::Device& device = study_.candidates[c].devices[d];
        for (std::size_t r = 0; r < device.rests.size(); ++r) {
          if (ever_holds(folded_.index.rest[c][d][r])) continue;
          add("never-holds", device.rests[r].window.place,
              "this rest of the device " + quoted(device.name) + " never holds in the study");
        }
      }
    }
  }

  static bool is_load(const model::Task& task) {
    return std::holds_alternative<model::LoadPerUnit>(task.increment.form) ||
           std::holds_alternative<model::LoadFromCompute>(task.increment.form);
  }

  static bool uses_load(const model::Device& device) {
    return std::any_of(device.runs.begin(), device.runs.end(), is_load) ||
           std::any_of(device.assists.begin(), device.assists.end(), is_load);
  }

  // Each profile once, however many devices share it.
  void note_profiles() {
    std::set<const model::Profile*> loaded;
    std::vector<const model::Profile*> profiles;
    for (const model::Candidate& candidate : study_.candidates) {
      for (const model::Device& device : candidate.devices) {
        if (uses_load(device)) loaded.insert(device.profile.get());
        if (std::find(profiles.begin(), profiles.end(), device.profile.get()) == profiles.end()) {
          profiles.push_back(device.profile.get());
        }
      }
    }
    for (const model::Profile* profile : profiles)
      note_profile(*profile, loaded.count(profile) > 0);
  }

  void note_profile(const model::Profile& profile, bool loaded) {
    if (profile.full_load_place && !loaded) {
      add("busy-unused", *profile.full_load_place,
          "nothing uses the watts at full load of " + quoted(profile.name) +
              ": no workload on it adds a load");
    }
    append(notes_of_profile(profile));
    const auto known = [&](const model::Meter& meter) { return meter.id == profile.meter; };
    if (profile.meter && std::none_of(study_.meters.begin(), study_.meters.end(), known)) {
      add("meter-unknown", *profile.meter_place,
          "the study has no [[meter]] " + quoted(*profile.meter) + ", so its error is not counted");
    }
  }

  void note_candidate(std::size_t c) {
    const model::Candidate& candidate = study_.candidates[c];
    const CandidateResult& result = assessment_.candidates[c];
    for (std::size_t w = 0; w < study_.workloads.size(); ++w) note_unserved(candidate, result, w);
    for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
      const double hours = result.ledger.devices[d].overload_hours;
      if (hours <= 0) continue;
      add("overload", candidate,
          "the device " + quoted(candidate.devices[d].name) +
              " is asked for more than full load in " + diag::rounded(hours, 1) +
              " hours; work that does not fit is not stretched in time, so the "
              "figures are the least it can be and it is not like for like");
    }
    note_minimum(candidate, result);
  }

  void note_unserved(const model::Candidate& candidate, const CandidateResult& result,
                     std::size_t w) {
    const std::string workload = quoted(study_.workloads[w].id);
    const std::string unit_hours =
        diag::rounded(result.ledger.unit_hours[w].unserved, 1) + " unit-hours";
    if (std::find(candidate.skips.begin(), candidate.skips.end(), w) != candidate.skips.end()) {
      add("skipped", candidate,
          "it does not offer " + workload + " (" + unit_hours + "), so it is not like for like");
    } else if (result.ledger.unit_hours[w].unserved > 0) {
      add("unserved", candidate,
          "a device is at rest while " + workload + " is wanted: " + unit_hours +
              " go unserved, so it is not like for like");
    }
  }

  void note_minimum(const model::Candidate& candidate, const CandidateResult& result) {
    const double swallowed = in_currency(result.cost.minimum_cost);
    const double plain = in_currency(result.cost.cost) - swallowed;
    if (std::abs(swallowed) <= kEqual * std::abs(plain)) return;
    add("minimum-swallows", candidate,
        swallowed < 0 ? "the minimum bill swallows " + money(-result.cost.minimum_cost) +
                            " of its cost: what is saved below the minimum is not saved on the bill"
                      : "the minimum bill swallows " + money(result.cost.minimum_cost) +
                            " of what it takes off the bill at negative prices");
  }

  const model::Study& study_;
  const FoldedStudy& folded_;
  const Assessment& assessment_;
  std::vector<Note> notes_;
};

}  // namespace

std::vector<Note> notes_of_study(const model::Study& study, const FoldedStudy& folded,
                                 const Assessment& assessment) {
  return NoteTaker(study, folded, assessment).run();
}

}  // namespace wattweek::decide
