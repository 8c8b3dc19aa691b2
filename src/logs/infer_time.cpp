// Which column holds the time of a row.

#include <algorithm>

#include "headings.hpp"
#include "infer.hpp"
#include "local_clock.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

struct Candidate {
  std::size_t column = 0;
  std::optional<std::size_t> clock_column{};
  bool epoch = false;
  bool names_zone = false;
  Heading heading{};
};

// Half of what stands in the column; the rest may be headings repeated and stray words.
bool mostly(std::size_t count, const ColumnFacts& facts) {
  return count > 0 && count * 2 >= facts.filled - facts.no_values;
}

Heading heading_at(const Sample& sample, std::size_t column) {
  return column < sample.names.size() ? heading_of(sample.names[column]) : Heading{};
}

bool steps_on(const Sample& sample, std::size_t column) {
  return sample.rows() < 2 || !facts_of(sample, column).constant;
}

std::vector<Candidate> candidates_of(const Sample& sample) {
  std::vector<Candidate> found;
  std::vector<ColumnFacts> facts;
  for (std::size_t c = 0; c < sample.columns(); ++c) facts.push_back(facts_of(sample, c));
  for (std::size_t c = 0; c < facts.size(); ++c) {
    const bool zoned = facts[c].zoned * 2 > facts[c].stamps;
    if (mostly(facts[c].stamps, facts[c])) {
      found.push_back({c, std::nullopt, false, zoned, heading_at(sample, c)});
    } else if (mostly(facts[c].epochs, facts[c]) && steps_on(sample, c)) {
      found.push_back({c, std::nullopt, true, true, heading_at(sample, c)});
    }
  }
  if (!found.empty()) return found;
  for (std::size_t c = 0; c < facts.size(); ++c) {
    if (!mostly(facts[c].dates, facts[c])) continue;
    for (std::size_t clock = 0; clock < facts.size(); ++clock) {
      if (mostly(facts[clock].clocks, facts[clock])) {
        const bool zoned = facts[clock].zoned * 2 > facts[clock].clocks;
        Heading heading = heading_at(sample, clock);
        const Heading of_date = heading_at(sample, c);
        heading.is_utc |= of_date.is_utc;
        heading.is_end |= of_date.is_end;
        heading.is_start = (heading.is_start || of_date.is_start) && !heading.is_end;
        found.push_back({c, clock, false, zoned, heading});
      }
    }
  }
  return found;
}

template <class Condition>
void keep_if_any(std::vector<Candidate>& candidates, Condition&& condition) {
  if (std::any_of(candidates.begin(), candidates.end(), condition)) {
    std::erase_if(candidates, [&](const Candidate& c) { return !condition(c); });
  }
}

std::vector<Microseconds> times_in(const Inference& inference, const Candidate& candidate) {
  Inference trial{inference.options, inference.file_name, inference.sample};
  trial.layout.time = {
      candidate.column, candidate.clock_column, candidate.epoch, candidate.names_zone, false,
      DateOrder::dmy};
  std::vector<Microseconds> times;
  for (const RowTime& time : times_of(trial)) times.push_back(time.us);
  return times;
}

// Two columns of which one is the begin and the other the end of an interval: the begin.
bool are_begin_and_end(const Inference& inference, const Candidate& a, const Candidate& b) {
  const auto begins = times_in(inference, a), ends = times_in(inference, b);
  if (begins.size() != ends.size() || begins.size() < 3) return false;
  std::size_t meet = 0;
  for (std::size_t i = 0; i + 1 < begins.size(); ++i) {
    meet += ends[i] == begins[i + 1] && begins[i] < ends[i];
  }
  return meet * 2 > begins.size();
}

bool are_same(const Inference& inference, const Candidate& a, const Candidate& b) {
  return a.names_zone && b.names_zone && times_in(inference, a) == times_in(inference, b);
}

// Whether clock times without zone and times that name theirs are the same moments.
bool are_same_in_zone(const Inference& inference, const Candidate& clock, const Candidate& other) {
  if (clock.names_zone || !other.names_zone || !inference.options.zone) return false;
  LocalClock local(*inference.options.zone, false);
  const auto clocks = times_in(inference, clock), moments = times_in(inference, other);
  if (clocks.size() != moments.size()) return false;
  std::size_t same = 0;
  for (std::size_t i = 0; i < clocks.size(); ++i) same += local.at(clocks[i]) == moments[i];
  return same * 2 > clocks.size();
}

// What a heading says of one column of times it says of another that holds the same.
void share_headings(const Inference& inference, std::vector<Candidate>& candidates) {
  for (Candidate& candidate : candidates) {
    if (candidate.heading.is_start || candidate.heading.is_end || !candidate.names_zone) continue;
    for (const Candidate& other : candidates) {
      if (!other.heading.is_start && !other.heading.is_end) continue;
      if (!are_same_in_zone(inference, other, candidate)) continue;
      candidate.heading.is_start = other.heading.is_start;
      candidate.heading.is_end = other.heading.is_end;
    }
  }
}

// Fewer candidates, by what tells them apart.
void narrow(Inference& inference, std::vector<Candidate>& candidates) {
  if (candidates.size() > 1) share_headings(inference, candidates);
  // A moment that is the end is better than a start without zone.
  keep_if_any(candidates, [](const Candidate& c) { return c.names_zone; });
  keep_if_any(candidates, [](const Candidate& c) { return !c.heading.is_end; });
  keep_if_any(candidates, [](const Candidate& c) { return c.heading.is_utc; });
  while (candidates.size() > 1) {
    const Candidate &a = candidates[0], &b = candidates[1];
    const bool a_begins = are_begin_and_end(inference, a, b);
    const bool b_begins = !a_begins && are_begin_and_end(inference, b, a);
    if (!a_begins && !b_begins && !are_same(inference, a, b)) return;
    if (a_begins || b_begins) inference.stamps_named = Stamps::start;
    candidates.erase(candidates.begin() + (b_begins ? 0 : 1));
  }
}

Refusal no_time(const Sample& sample) {
  for (std::size_t c = 0; c < sample.columns(); ++c) {
    const ColumnFacts facts = facts_of(sample, c);
    if (mostly(facts.dates, facts)) {
      return {column_name(sample, c) +
                  " holds dates without a clock time; a fit needs to know the hours: expected "
                  "readings with date and time",
              0, c};
    }
  }
  return {
      "no column holds a date and time in most of its rows; say which one does by "
      "--columns time=NAME"};
}

std::variant<Candidate, Refusal> named(const Inference& inference, const std::string& name) {
  const Sample& sample = inference.sample;
  const auto column = column_named(sample, name);
  if (!column) return no_column(sample, "--columns time", name);
  for (const Candidate& candidate : candidates_of(sample)) {
    if (candidate.column == *column || candidate.clock_column == *column) return candidate;
  }
  return Refusal{"--columns time: " + column_name(sample, *column) +
                     " holds no date and time that could be read, such as '" +
                     diag::printable(sample.field(0, *column)) + "'",
                 0, *column};
}

std::variant<Candidate, Refusal> chosen(Inference& inference) {
  if (inference.options.time_column) return named(inference, *inference.options.time_column);
  std::vector<Candidate> candidates = candidates_of(inference.sample);
  if (candidates.empty()) return no_time(inference.sample);
  narrow(inference, candidates);
  if (candidates.size() == 1) return candidates.front();
  std::vector<std::size_t> columns;
  for (const Candidate& candidate : candidates) columns.push_back(candidate.column);
  return Refusal{"several columns hold times: " + names_of(inference.sample, columns) +
                     "; say which one by --columns time=NAME",
                 0, columns[1]};
}

std::string how(const Sample& sample, const Candidate& candidate) {
  if (candidate.epoch) {
    const auto fields = different_fields(sample, candidate.column, 1);
    return std::string(fields.empty() ? "seconds" : epoch_unit(fields.front())) + " since 1970";
  }
  if (candidate.names_zone) return "with UTC or an offset";
  return candidate.heading.is_utc ? "in UTC, as its heading says" : "without zone";
}

}  // namespace

Step infer_time(Inference& inference) {
  auto choice = chosen(inference);
  if (auto* refusal = std::get_if<Refusal>(&choice)) return std::move(*refusal);
  const auto& candidate = std::get<Candidate>(choice);
  TimeLayout& time = inference.layout.time;
  time.column = candidate.column;
  time.clock_column = candidate.clock_column;
  time.epoch = candidate.epoch;
  time.names_zone = candidate.names_zone;
  time.is_utc = !candidate.names_zone && candidate.heading.is_utc;
  if (candidate.heading.is_start) inference.stamps_named = Stamps::start;
  if (candidate.heading.is_end) inference.stamps_named = Stamps::end;
  std::string where = column_name(inference.sample, time.column);
  if (time.clock_column) where += " and " + column_name(inference.sample, *time.clock_column);
  inference.said.push_back("time: " + where + ", " + how(inference.sample, candidate) +
                           " (--columns)");
  if (time.names_zone || time.is_utc || inference.options.zone) return std::nullopt;
  return Refusal{"the times in " + where +
                     " name no zone; say where the clock hangs by --zone, "
                     "such as --zone Europe/Dublin",
                 0, time.column};
}

}  // namespace wattweek::logs
