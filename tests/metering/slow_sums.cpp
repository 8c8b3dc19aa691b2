#include "slow_sums.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace wattweek::tests {
namespace {

struct Row {
  double s;
  double value;
};

double median_step(const std::vector<Row>& rows) {
  std::vector<double> steps;
  for (std::size_t i = 1; i < rows.size(); ++i) steps.push_back(rows[i].s - rows[i - 1].s);
  std::sort(steps.begin(), steps.end());
  const std::size_t n = steps.size();
  return (steps[(n - 1) / 2] + steps[n / 2]) / 2;
}

std::vector<SlowInterval> of_power(const std::vector<Row>& rows) {
  std::vector<SlowInterval> all;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    all.push_back({rows[i - 1].s, rows[i].s, rows[i - 1].value});
  }
  return all;
}

std::vector<SlowInterval> of_energy(std::vector<Row> rows, bool stamped_at_end) {
  const double typical_s = median_step(rows);
  std::vector<SlowInterval> all;
  if (stamped_at_end) {
    rows.insert(rows.begin(), {rows.front().s - typical_s, 0});
    for (std::size_t i = 1; i < rows.size(); ++i) {
      all.push_back({rows[i - 1].s, rows[i].s, rows[i].value});
    }
  } else {
    rows.push_back({rows.back().s + typical_s, 0});
    all = of_power(rows);
  }
  for (SlowInterval& interval : all) interval.watts *= 3600 / interval.seconds();
  return all;
}

/// What rises tell of a counter's ticks.
struct Ticks {
  double smallest_wh = HUGE_VAL;
  long long shown = 0;  ///< Ten-thousandths of 1 Wh: all readings so far are multiples.
  int rises = 0;
  int at_once = 0;

  double wh() const {
    const bool fine = rises > 0 && 2 * at_once >= rises;
    return fine ? std::min(smallest_wh, static_cast<double>(shown) / 1e4) : smallest_wh;
  }
};

/// A stretch of rows [from, to] without a fall.
void count_stretch(const std::vector<Row>& rows, std::size_t from, std::size_t to, Ticks& ticks,
                   std::vector<SlowInterval>& all) {
  const auto hourly = [&](std::size_t a, std::size_t b) {
    for (std::size_t i = a; i < b; ++i) {
      if (rows[i + 1].s - rows[i].s > 3636 + 1e-7) return false;
    }
    return true;
  };
  const auto put = [&](std::size_t a, std::size_t b, double wh, double unsure_wh) {
    SlowInterval interval{rows[a].s, rows[b].s, wh * 3600 / (rows[b].s - rows[a].s)};
    interval.by_hour = interval.seconds() <= 3636 + 1e-7 || (unsure_wh <= 1.000001 && hourly(a, b));
    if (a != b) all.push_back(interval);
  };
  std::size_t last_rise = from;
  const auto show = [&](std::size_t i) {
    ticks.shown = std::gcd(ticks.shown, std::llround(rows[i].value * 1e4));
  };
  show(from);
  for (std::size_t i = from + 1; i <= to; ++i) {
    show(i);
    const double wh = rows[i].value - rows[last_rise].value;
    if (wh == 0) continue;
    ticks.smallest_wh = std::min(ticks.smallest_wh, wh);
    ++ticks.rises;
    if (last_rise == i - 1) ++ticks.at_once;
    const double still_s = rows[i - 1].s - rows[last_rise].s;
    if (wh * still_s / (rows[i].s - rows[last_rise].s) < 2 * ticks.wh() * 0.999999) {
      put(last_rise, i, wh, wh);
    } else {
      put(last_rise, i - 1, 0, ticks.wh());
      put(i - 1, i, wh, wh);
    }
    last_rise = i;
  }
  put(last_rise, to, 0, ticks.wh());
}

std::vector<SlowInterval> of_counter(const std::vector<Row>& with_nothing, std::size_t& restarts) {
  std::vector<Row> rows;
  for (const Row& row : with_nothing) {
    if (!std::isnan(row.value)) rows.push_back(row);
  }
  std::vector<SlowInterval> all;
  Ticks ticks;
  std::size_t from = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const bool falls = i + 1 < rows.size() && rows[i + 1].value < rows[i].value;
    if (falls) ++restarts;
    if (!falls && i + 1 < rows.size()) continue;
    count_stretch(rows, from, i, ticks, all);
    from = i + 1;
  }
  return all;
}

}  // namespace

SlowSums slow_sums(const std::vector<logs::Reading>& log, const logs::Meaning& meaning,
                   std::optional<double> gap_s) {
  std::vector<Row> rows;
  for (const logs::Reading& reading : log) {
    rows.push_back({static_cast<double>(reading.at_us - log.front().at_us) / 1e6, reading.value});
  }
  SlowSums sums;
  sums.gap_s = gap_s.value_or(std::max(300.0, 3 * median_step(rows)));
  std::vector<SlowInterval> all;
  if (meaning.kind == logs::Kind::power) all = of_power(rows);
  if (meaning.kind == logs::Kind::energy) {
    all = of_energy(rows, meaning.stamps == logs::Stamps::end);
  }
  if (meaning.kind == logs::Kind::counter) {
    sums.gap_s = HUGE_VAL;
    all = of_counter(rows, sums.restarts);
  }
  for (const SlowInterval& interval : all) {
    const bool has_value = interval.watts <= metering::kHighestReading_w;
    if (has_value && interval.seconds() <= sums.gap_s + 1e-7) sums.kept.push_back(interval);
  }
  return sums;
}

std::map<std::int64_t, metering::Drawn> slow_hours(const SlowSums& sums,
                                                   logs::Microseconds first_us,
                                                   const calendar::ZoneRules& zone) {
  const double first_s = static_cast<double>(first_us) / 1e6;
  std::map<std::int64_t, metering::Drawn> hours;
  for (const SlowInterval& interval : sums.kept) {
    if (!interval.by_hour) continue;
    const double end_s = first_s + interval.end_s;
    for (double s = first_s + interval.start_s; s < end_s;) {
      const double next_s = std::min(std::floor(s) + 1, end_s);
      const calendar::Instant instant{std::chrono::seconds{std::llround(std::floor(s))}};
      const auto local = calendar::local_time(zone, instant);
      auto& hour = hours[std::chrono::floor<std::chrono::hours>(local).time_since_epoch().count()];
      hour.seconds += next_s - s;
      hour.joules += (next_s - s) * interval.watts;
      s = next_s;
    }
  }
  return hours;
}

double slow_longest_zero_s(const SlowSums& sums) {
  double longest_s = 0;
  double start_s = 0;
  double end_s = -HUGE_VAL;
  for (const SlowInterval& interval : sums.kept) {
    if (interval.watts != 0) continue;
    if (interval.start_s != end_s) start_s = interval.start_s;
    end_s = interval.end_s;
    longest_s = std::max(longest_s, end_s - start_s);
  }
  return longest_s;
}

}  // namespace wattweek::tests
