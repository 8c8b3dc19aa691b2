#include "wattweek/decide/shift.hpp"

#include <algorithm>

#include "changed_study.hpp"
#include "wattweek/decide/lifetime.hpp"

namespace wattweek::decide {
namespace {

using Problems = std::vector<diag::Diagnostic>;

bool same_windows(const model::Workload& a, const model::Workload& b) {
  return std::equal(a.uses.begin(), a.uses.end(), b.uses.begin(), b.uses.end(),
                    [](const model::Use& one, const model::Use& other) {
                      return one.window.days == other.window.days &&
                             one.window.hours == other.window.hours;
                    });
}

/// The hours after which everything is as it was: 24 where no use names days.
int period(const model::Workload& workload) {
  const model::Workload today = moved(workload, 0);
  int hours = 1;
  while (hours < kHoursOfWeek && !same_windows(moved(workload, hours), today)) ++hours;
  return hours;
}

/// The first day of a run of days; Monday where all days pass.
int first_day(const model::WeekdaySet& days) {
  for (std::size_t day = 0; day < 7; ++day) {
    if (days[day] && !days[(day + 6) % 7]) return static_cast<int>(day);
  }
  return 0;
}

/// The use that names the start: the first with days and hours, else with days, else with hours.
const model::Use& naming_use(const model::Workload& workload) {
  const auto rank = [](const model::Use& use) {
    const bool has_hours = use.window.hours.front() != model::HourSpan{};
    return (use.window.days.all() ? 0 : 2) + (has_hours ? 1 : 0);
  };
  return *std::max_element(
      workload.uses.begin(), workload.uses.end(),
      [&rank](const model::Use& a, const model::Use& b) { return rank(a) < rank(b); });
}

StartTime start_time(const model::Workload& workload, int hours_later) {
  const model::Window& window = naming_use(workload).window;
  const int minute = window.hours.front().start_min + hours_later * 60;
  StartTime time;
  time.minute = minute % 1440;
  if (!window.days.all()) {
    time.weekday_bit = static_cast<unsigned>((first_day(window.days) + minute / 1440) % 7);
  }
  return time;
}

StartFigures figures_of(const ChangedCandidate& candidate, std::size_t workload) {
  const auto column = static_cast<Eigen::Index>(workload) + 1;
  return {candidate.ledger.total_kwh(), units::in_currency(candidate.cost.cost),
          candidate.ledger.unit_hours[workload], candidate.ledger.kwh.col(column).sum(),
          units::in_currency(candidate.cost.by_cause[workload + 1])};
}

/// Chooses for one candidate.
class Chooser {
 public:
  Chooser(const model::Study& study, const std::vector<Start>& starts, std::size_t candidate)
      : study_(study), starts_(starts), candidate_(candidate) {}

  ShiftChoice choose() const {
    ShiftChoice choice;
    std::vector<std::size_t> all;
    std::vector<std::size_t> served;
    for (std::size_t s = 0; s < starts_.size(); ++s) {
      if (!falls_into_study(s)) continue;
      all.push_back(s);
      if (serves_as_much(s)) served.push_back(s);
    }
    const auto equal_work = [this](std::size_t s) { return cost_of_equal_work(s); };
    const auto plain = [this](std::size_t s) { return at(s).cost; };
    const std::size_t cheapest = lowest(served, equal_work);
    choice.cheapest = choice_of(cheapest, saved(at(0).energy_kwh, energy_of_equal_work(cheapest)),
                                saved(at(0).cost, cost_of_equal_work(cheapest)));
    const std::size_t any = lowest(all, plain);
    const double saves = saved(at(0).cost, at(any).cost) * to_a_year();
    const bool is_cheaper = saves > choice.cheapest->saves_cost &&
                            !nearly_equal(at(any).cost, cost_of_equal_work(cheapest));
    if (is_cheaper && !serves_as_much(any)) {
      choice.cheaper_unserved = choice_of(any, saved(at(0).energy_kwh, at(any).energy_kwh),
                                          saved(at(0).cost, at(any).cost));
    }
    return choice;
  }

 private:
  const StartFigures& at(std::size_t start) const { return starts_[start].candidates[candidate_]; }
  double to_a_year() const { return 12.0 / study_.months; }

  static double saved(double today, double then) {
    return nearly_equal(today, then) ? 0.0 : today - then;
  }

  // Where months or dates leave nothing of it after the move, it is not cheap but gone.
  bool falls_into_study(std::size_t start) const {
    const energy::UnitHours& then = at(start).unit_hours;
    return start == 0 || then.served + then.unserved > 0;
  }

  bool serves_as_much(std::size_t start) const {
    const double today = at(0).unit_hours.unserved;
    const double then = at(start).unit_hours.unserved;
    return then <= today || nearly_equal(then, today);
  }

  // A year need not have as many Saturdays as Fridays, nor as many hours between 2 and 3 as between
  // 3 and 4. What is served more or less than today counts at what a unit-hour costs then.
  double of_equal_work(std::size_t start, double total, double of_workload) const {
    const double today = at(0).unit_hours.served;
    const double then = at(start).unit_hours.served;
    if (then == 0 || nearly_equal(today, then)) return total;
    return total + (today - then) / then * of_workload;
  }
  double cost_of_equal_work(std::size_t start) const {
    return of_equal_work(start, at(start).cost, at(start).workload_cost);
  }
  double energy_of_equal_work(std::size_t start) const {
    return of_equal_work(start, at(start).energy_kwh, at(start).workload_kwh);
  }

  template <class Value>
  std::size_t lowest(const std::vector<std::size_t>& among, const Value& value) const {
    const std::size_t best =
        *std::min_element(among.begin(), among.end(),
                          [&value](std::size_t a, std::size_t b) { return value(a) < value(b); });
    return *std::find_if(among.begin(), among.end(), [&value, best](std::size_t s) {
      return s == best || nearly_equal(value(s), value(best));
    });
  }

  StartChoice choice_of(std::size_t start, double kwh, double cost) const {
    const double a_year = cost * to_a_year();
    return {start, kwh * to_a_year(), a_year, present_saving(study_, a_year)};
  }

  const model::Study& study_;
  const std::vector<Start>& starts_;
  std::size_t candidate_;
};

std::variant<Start, Problems> start_at(const model::Study& study, const calendar::ZoneRules& zone,
                                       const Assessment& today, std::size_t workload,
                                       int hours_later) {
  model::Study changed = study;
  changed.workloads[workload] = moved(study.workloads[workload], hours_later);
  const ChangedStudy reckoner(changed, zone, today.without);
  Start start{hours_later, start_time(study.workloads[workload], hours_later), {}};
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    auto reckoned = reckoner.reckon(c);
    if (auto* problem = std::get_if<diag::Diagnostic>(&reckoned)) return Problems{*problem};
    start.candidates.push_back(figures_of(std::get<ChangedCandidate>(reckoned), workload));
  }
  return start;
}

bool skips(const model::Candidate& candidate, std::size_t workload) {
  return std::find(candidate.skips.begin(), candidate.skips.end(), workload) !=
         candidate.skips.end();
}

}  // namespace

std::variant<Shift, Problems> shift(const model::Study& study, const calendar::ZoneRules& zone,
                                    const Assessment& today, std::size_t workload,
                                    const Progress& progress) {
  Shift result{workload, {}, {}};
  const int hours = period(study.workloads[workload]);
  for (int later = 0; later < hours; ++later) {
    if (progress) progress("starts", static_cast<double>(later) / hours);
    auto start = start_at(study, zone, today, workload, later);
    if (auto* problems = std::get_if<Problems>(&start)) return std::move(*problems);
    result.starts.push_back(std::get<Start>(std::move(start)));
  }
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    result.choices.push_back(skips(study.candidates[c], workload)
                                 ? ShiftChoice{}
                                 : Chooser(study, result.starts, c).choose());
  }
  return result;
}

}  // namespace wattweek::decide
