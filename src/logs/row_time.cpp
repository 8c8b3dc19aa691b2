#include "row_time.hpp"

namespace wattweek::logs {
namespace {

// A date and a clock time from two fields, as if they stood in one.
std::optional<Stamp> joined(std::string_view date, std::string_view clock) {
  auto day = stamp_of(date);
  const auto time = stamp_of(clock);
  if (!day || !time || day->form == DateForm::none || time->form != DateForm::none) {
    return std::nullopt;
  }
  // Some programs write the date as a moment at midnight.
  day->has_clock = true;
  day->clock_us = time->clock_us;
  if (time->utc_offset_s) day->utc_offset_s = time->utc_offset_s;
  return day;
}

std::optional<RowTime> moment(const TimeLayout& layout, const Stamp& clock,
                              Microseconds midnight_us) {
  if (clock.utc_offset_s.has_value() != layout.names_zone) return std::nullopt;
  const Microseconds offset_us = clock.utc_offset_s.value_or(0) * kSecond;
  return RowTime{midnight_us + clock.clock_us - offset_us, layout.names_zone || layout.is_utc};
}

// The clock time on the known date; nothing where the row is of another, or to be read whole.
std::optional<Stamp> clock_on(const KnownDate& known, const TimeLayout& layout,
                              std::string_view date, std::string_view clock) {
  if (known.text.empty()) return std::nullopt;
  if (layout.clock_column) {
    const auto stamp = date == known.text ? stamp_of(clock) : std::nullopt;
    return stamp && stamp->form == DateForm::none ? stamp : std::nullopt;
  }
  if (date.substr(0, known.text.size()) != known.text) return std::nullopt;
  return clock_of(date.substr(known.text.size()));
}

// A clock time behind a digit may be read in another way together with the date.
void learn(const TimeLayout& layout, std::string_view date, const Stamp& stamp,
           Microseconds midnight_us, KnownDate& known) {
  known.text.clear();
  if (stamp.utc_offset_s && layout.clock_column) return;
  const std::string_view text = layout.clock_column ? date : date.substr(0, stamp.clock_at);
  if (text.empty() || (!layout.clock_column && text.back() >= '0' && text.back() <= '9')) return;
  known.text = text;
  known.midnight_us = midnight_us;
}

}  // namespace

std::optional<RowTime> time_of(const TimeLayout& layout, std::string_view date,
                               std::string_view clock, KnownDate& known) {
  if (layout.epoch) {
    auto at = epoch_us(date, '.');
    if (!at) at = epoch_us(date, ',');
    return at ? std::optional(RowTime{*at, true}) : std::nullopt;
  }
  if (const auto time = clock_on(known, layout, date, clock)) {
    return moment(layout, *time, known.midnight_us);
  }
  const auto stamp = layout.clock_column ? joined(date, clock) : stamp_of(date);
  if (!stamp || !stamp->has_clock || stamp->form == DateForm::none) return std::nullopt;
  const auto at = local_us(*stamp, layout.order);
  if (!at) return std::nullopt;
  learn(layout, date, *stamp, *at - stamp->clock_us, known);
  return moment(layout, *stamp, *at - stamp->clock_us);
}

std::optional<RowTime> time_of(const TimeLayout& layout, std::string_view date,
                               std::string_view clock) {
  KnownDate none;
  return time_of(layout, date, clock, none);
}

}  // namespace wattweek::logs
