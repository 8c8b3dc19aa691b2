#include "fit_parts.hpp"

#include <fmt/format.h>

namespace wattweek::report {
namespace {

constexpr logs::Microseconds kSecond_us = 1'000'000;

calendar::Instant instant_of(logs::Microseconds at_us) {
  return calendar::Instant(std::chrono::seconds(at_us / kSecond_us));
}

}  // namespace

std::string_view state_name(metering::State state) {
  switch (state) {
    case metering::State::off:
      return "off";
    case metering::State::sleep:
      return "sleep";
    case metering::State::idle:
      return "idle";
    case metering::State::active:
      return "active";
  }
  return {};
}

std::vector<std::pair<std::string, std::size_t>> dropped_rows(const FitShown& shown) {
  std::vector<std::pair<std::string, std::size_t>> rows;
  for (const logs::Dropped& dropped : shown.log.dropped) {
    rows.emplace_back(dropped.reason, dropped.rows);
  }
  const std::size_t restarts = shown.measurement.coverage.restarts;
  if (restarts > 0) rows.emplace_back("restart", restarts);
  return rows;
}

std::string moment_text(const FitShown& shown, logs::Microseconds at_us) {
  const calendar::Instant at = instant_of(at_us);
  const calendar::LocalTime local = calendar::local_time(shown.zone, at);
  const auto offset_min = (local.time_since_epoch() - at.time_since_epoch()).count() / 60;
  const auto day = std::chrono::floor<std::chrono::days>(local);
  const std::chrono::hh_mm_ss clock(local - day);
  std::string text =
      fmt::format("{}T{:02}:{:02}:{:02}", calendar::to_text(day), clock.hours().count(),
                  clock.minutes().count(), clock.seconds().count());
  if (const auto fraction = at_us % kSecond_us; fraction != 0) {
    text += fmt::format(".{:06}", fraction);
    text.erase(text.find_last_not_of('0') + 1);
  }
  return text + fmt::format("{}{:02}:{:02}", offset_min < 0 ? '-' : '+', std::abs(offset_min) / 60,
                            std::abs(offset_min) % 60);
}

std::string clock_text(const FitShown& shown, logs::Microseconds at_us) {
  return calendar::to_text(calendar::local_time(shown.zone, instant_of(at_us)));
}

double meter_kwh(const FitShown& shown) {
  const double hours = shown.measurement.measured.kept.seconds / 3600;
  return shown.meter->at(shown.fit.mean_w) * hours / 1000;
}

double meter_increment_w(const FitShown& shown, const metering::Estimate& each_w) {
  return shown.meter->percent / 100 * each_w.value;
}

}  // namespace wattweek::report
