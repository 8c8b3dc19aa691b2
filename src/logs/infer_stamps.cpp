// Whether a stamp is the begin or the end of the interval whose energy stands beside it.

#include <algorithm>

#include "infer.hpp"
#include "local_clock.hpp"

namespace wattweek::logs {
namespace {

constexpr Microseconds kLongestStep = kDay / 2;

Microseconds typical_step(std::vector<Microseconds> times) {
  std::vector<Microseconds> steps;
  for (std::size_t i = 1; i < times.size(); ++i) steps.push_back(times[i] - times[i - 1]);
  if (steps.empty()) return 0;
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  return *middle;
}

// The offset that a stamp is written with; none of UTC, whose midnight is nobody's.
std::optional<Microseconds> offset_written(const Inference& inference) {
  const Sample& sample = inference.sample;
  const TimeLayout& time = inference.layout.time;
  for (std::size_t row = 0; row < sample.rows() && !time.epoch; ++row) {
    const auto stamp = stamp_of(sample.field(row, time.clock_column.value_or(time.column)));
    if (stamp && stamp->utc_offset_s.value_or(0) != 0) return *stamp->utc_offset_s * kSecond;
  }
  return std::nullopt;
}

// What the clocks on the wall showed, in order; nothing where that is not known.
std::vector<Microseconds> local_times(const Inference& inference) {
  const TimeLayout& time = inference.layout.time;
  std::vector<Microseconds> times;
  for (const RowTime& row : times_of(inference)) times.push_back(row.us);
  std::sort(times.begin(), times.end());
  if (times.empty() || (!time.names_zone && !time.is_utc)) return times;
  auto offset = offset_written(inference);
  if (!offset && inference.options.zone)
    offset = utc_offset_at(*inference.options.zone, times.front());
  if (!offset) return {};
  for (Microseconds& at : times) at += *offset;
  return times;
}

// A log that begins at midnight has stamps at the start; one that begins a step later, at the end.
std::optional<Stamps> by_midnight(const std::vector<Microseconds>& times) {
  if (times.empty()) return std::nullopt;
  const Microseconds step = typical_step(times);
  if (step <= 0 || step > kLongestStep) return std::nullopt;
  const Microseconds of_day = times.front() % kDay;
  if (of_day == 0) return Stamps::start;
  return of_day == step ? std::optional(Stamps::end) : std::nullopt;
}

template <class Condition>
bool any_stamp(const Inference& inference, Condition&& condition) {
  const Sample& sample = inference.sample;
  const TimeLayout& time = inference.layout.time;
  for (std::size_t row = 0; row < sample.rows() && !time.epoch; ++row) {
    const auto stamp = stamp_of(sample.field(row, time.clock_column.value_or(time.column)));
    if (stamp && condition(*stamp)) return true;
  }
  return false;
}

}  // namespace

Step infer_stamps(Inference& inference) {
  Meaning& meaning = inference.layout.meaning;
  const auto& asked = inference.options.stamps;
  meaning.stamps = asked.value_or(Stamps::start);
  if (asked || meaning.kind != Kind::energy) return std::nullopt;
  std::optional<Stamps> found = inference.stamps_named;
  std::string why = "as a heading says";
  if (!found && any_stamp(inference, [](const Stamp& stamp) { return stamp.is_range; })) {
    found = Stamps::start;
    why = "since its end stands behind it";
  }
  // 24:00 can only be an end.
  if (!found && any_stamp(inference, [](const Stamp& stamp) { return stamp.clock_us == kDay; })) {
    found = Stamps::end;
    why = "since there is a 24:00";
  }
  if (!found) {
    found = by_midnight(local_times(inference));
    why = found == Stamps::start ? "since the log begins at midnight"
                                 : "since the log begins one interval after midnight";
  }
  if (!found) {
    return Refusal{
        "a stamp may be the start or the end of the interval whose energy stands beside "
        "it; say which by --stamps start or --stamps end",
        0, inference.layout.time.column};
  }
  meaning.stamps = *found;
  inference.said.push_back(std::string("stamps: at the ") +
                           (*found == Stamps::start ? "start" : "end") + " of each interval, " +
                           why + " (--stamps)");
  return std::nullopt;
}

}  // namespace wattweek::logs
