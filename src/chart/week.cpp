#include "wattweek/chart/week.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "framed.hpp"
#include "letters.hpp"
#include "plot.hpp"
#include "wattweek/chart/palette.hpp"
#include "wattweek/diag/number_text.hpp"

namespace wattweek::chart {
namespace {

constexpr std::size_t kDays = 7;
constexpr std::size_t kSlots = 48;
constexpr double kLeft = 52;
constexpr double kSlotWidth = 8.0;
constexpr double kTop = 2;
constexpr double kDayHeight = 22;  // Two more than the cells' stroke: lines of paper between.
constexpr double kBottom = kTop + kDayHeight * kDays;
constexpr double kRight = kLeft + kSlotWidth * kSlots;

constexpr std::array<std::string_view, kDays> kDayNames = {
    "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"};

double slot_x(std::size_t slot) { return kLeft + kSlotWidth * static_cast<double>(slot); }

double day_y(std::size_t day) { return kTop + kDayHeight * (static_cast<double>(day) + 0.5); }

Range reach(const WeekWatts& week) {
  Range range{week[0][0], week[0][0]};
  for (const auto& day : week) {
    for (const double w : day) range = {std::min(range.low, w), std::max(range.high, w)};
  }
  return range;
}

std::size_t intervals(const Ticks& ticks) { return static_cast<std::size_t>(ticks.count) - 1; }

// The interval between marks that watts are in. A hair below a mark belongs above it, so that
// rounding errors of sums do not scatter shades.
std::size_t interval_of(const Ticks& ticks, double watts) {
  constexpr double kHair = 1e-9;
  const double steps = (watts - ticks.at(0)) / ticks.step() + kHair;
  return static_cast<std::size_t>(
      std::clamp(std::floor(steps), 0.0, static_cast<double>(intervals(ticks) - 1)));
}

// Fewer intervals than shades keep to the ends of the row of shades.
std::size_t shade_of(const Ticks& ticks, std::size_t interval) {
  const std::size_t last = intervals(ticks) - 1;
  if (last == 0) return kShades / 2;
  return (interval * (kShades - 1) + last / 2) / last;
}

// Neighbouring half-hours of one interval.
struct Run {
  std::size_t first = 0;
  std::size_t end = 0;
  std::size_t interval = 0;
  Range watts;
};

std::vector<Run> runs_of(const std::array<double, kSlots>& day, const Ticks& ticks) {
  std::vector<Run> runs;
  for (std::size_t slot = 0; slot < kSlots; ++slot) {
    const std::size_t interval = interval_of(ticks, day[slot]);
    if (runs.empty() || runs.back().interval != interval) {
      runs.push_back({slot, slot, interval, {day[slot], day[slot]}});
    }
    Run& run = runs.back();
    run.end = slot + 1;
    run.watts = {std::min(run.watts.low, day[slot]), std::max(run.watts.high, day[slot])};
  }
  return runs;
}

using WeekRuns = std::array<std::vector<Run>, kDays>;

// One path for each shade: a stroke for each run.
void draw_cells(Canvas& canvas, const WeekRuns& week, const Ticks& ticks) {
  for (std::size_t interval = 0; interval < intervals(ticks); ++interval) {
    std::string data;
    for (std::size_t day = 0; day < kDays; ++day) {
      for (const Run& run : week[day]) {
        if (run.interval != interval) continue;
        data += fmt::format("M{}h{}", coordinates(slot_x(run.first), day_y(day)),
                            coordinate(slot_x(run.end) - slot_x(run.first)));
      }
    }
    canvas.path(data, fmt::format("w{} cells", shade_of(ticks, interval)));
  }
}

std::string clock(std::size_t slot) { return fmt::format("{:02}:{:02}", slot / 2, slot % 2 * 30); }

std::string watts_text(const Range& watts, int decimals) {
  const std::string low = diag::rounded(watts.low, decimals);
  const std::string high = diag::rounded(watts.high, decimals);
  return low == high ? low : low + " to " + high;
}

// "Monday, W from each time on: 00:00 31; 08:00 40 to 41.5; ..."
void draw_hovers(Canvas& canvas, const WeekRuns& week, const Ticks& ticks) {
  const int decimals = std::max(1 - ticks.exponent, 0);  // One more than a step has.
  for (std::size_t day = 0; day < kDays; ++day) {
    std::string title = fmt::format("{}, W from each time on:", kDayNames[day]);
    for (const Run& run : week[day]) {
      title += fmt::format("{} {} {}", run.first == 0 ? "" : ";", clock(run.first),
                           watts_text(run.watts, decimals));
    }
    canvas.hover(kLeft, day_y(day) - kDayHeight / 2, kRight, day_y(day) + kDayHeight / 2, title);
  }
}

void draw_day_names(Canvas& canvas) {
  for (std::size_t day = 0; day < kDays; ++day) {
    canvas.text(kLeft - 6, day_y(day) + 4.5, kDayNames[day].substr(0, 3), "small end");
  }
}

// The palest shade is near to paper, so a line goes round all cells.
void draw_hours(Canvas& canvas) {
  std::string marks = box_path(kLeft, kTop, kRight, kBottom);
  for (std::size_t slot = 0; slot <= kSlots; slot += 6) {
    const bool named = slot % 12 == 0;
    marks += fmt::format("M{}v{}", coordinates(slot_x(slot), kBottom), named ? 6 : 3);
    if (!named) continue;
    const double middle = kept_inside(slot_x(slot), text_width(clock(slot), kSmallSize));
    canvas.text(middle, kBottom + 19, clock(slot), "small mid");
  }
  canvas.path(marks, "axis");
  canvas.text(kRight, kBottom + 36, "time of day", "small end muted");
}

// A strip of the shades with their limits. Returns where it ends.
double draw_shades(Canvas& canvas, const Ticks& ticks) {
  const double top = kBottom + 46;
  const double width = (kRight - kLeft) / static_cast<double>(intervals(ticks));
  const auto limit = [&](int i) { return kLeft + width * i; };
  canvas.text(kLeft - 6, top + 14, "W", "small end muted");
  for (int i = 0; i < ticks.count; ++i) {
    if (i + 1 < ticks.count) {
      canvas.path(fmt::format("M{}H{}", coordinates(limit(i), top + 10), coordinate(limit(i + 1))),
                  fmt::format("w{} cells", shade_of(ticks, static_cast<std::size_t>(i))));
    }
    const std::string number = tick_text(ticks, i);
    canvas.text(kept_inside(limit(i), text_width(number, kSmallSize)), top + 37, number,
                "small mid");
  }
  canvas.path(box_path(kLeft, top, kRight, top + 20), "axis");
  canvas.text(kRight, top + 54, "mean of each half-hour", "small end muted");
  return top + 58;
}

}  // namespace

std::string svg(const WeekMap& picture) {
  Canvas canvas;
  const Range range = picture.shades_w.value_or(reach(picture.mean_w));
  const Ticks ticks = nice_ticks(range, static_cast<int>(kShades) + 1);
  WeekRuns week;
  for (std::size_t day = 0; day < kDays; ++day) week[day] = runs_of(picture.mean_w[day], ticks);
  draw_cells(canvas, week, ticks);
  draw_day_names(canvas);
  draw_hours(canvas);
  const double bottom = draw_shades(canvas, ticks);
  draw_hovers(canvas, week, ticks);
  return framed(picture.frame, canvas, bottom);
}

}  // namespace wattweek::chart
