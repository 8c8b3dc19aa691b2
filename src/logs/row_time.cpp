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

}  // namespace

std::optional<RowTime> time_of(const TimeLayout& layout, std::string_view date,
                               std::string_view clock) {
  if (layout.epoch) {
    auto at = epoch_us(date, '.');
    if (!at) at = epoch_us(date, ',');
    return at ? std::optional(RowTime{*at, true}) : std::nullopt;
  }
  const auto stamp = layout.clock_column ? joined(date, clock) : stamp_of(date);
  if (!stamp || !stamp->has_clock || stamp->form == DateForm::none ||
      stamp->utc_offset_s.has_value() != layout.names_zone) {
    return std::nullopt;
  }
  const auto at = local_us(*stamp, layout.order);
  if (!at) return std::nullopt;
  const Microseconds offset_us = stamp->utc_offset_s.value_or(0) * kSecond;
  return RowTime{*at - offset_us, layout.names_zone || layout.is_utc};
}

}  // namespace wattweek::logs
