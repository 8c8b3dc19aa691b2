#include "samples.hpp"

#include <fmt/format.h>

#include "wattweek/chart/bars.hpp"
#include "wattweek/chart/lines.hpp"
#include "wattweek/chart/load.hpp"
#include "wattweek/chart/months.hpp"
#include "wattweek/chart/week.hpp"

namespace wattweek::chart {
namespace {

const std::vector<std::string> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

Frame frame(const std::string& prefix, const std::string& title) {
  return {prefix, title, "Invented figures for a test: " + title, true, true};
}

Sample bars() {
  Bars picture{frame("bars", "What does a year cost?"), "EUR a year", {}};
  picture.bars = {{"small server", 82.4, Range{76, 89}, "EUR 76 to 89"},
                  {"network storage", 61, Range{48.5, 80}, "EUR 49 to 80"},
                  {"rented machine", 120, {}, "EUR 120"}};
  return {"bars", svg(picture)};
}

Sample bars_below_zero() {
  Bars picture{frame("saving", "What is saved each year?"), "EUR a year", {}};
  picture.bars = {{"small server", 35, Range{-5, 61}, "EUR -5 to 61"},
                  {"old desktop", -140.5, Range{-180, -120}, "EUR -180 to -120"},
                  {"as it is", 0, {}, "EUR 0"}};
  return {"bars-below-zero", svg(picture)};
}

Sample months() {
  StackedMonths picture{frame("months", "Where does the energy go?"), "kWh a month", kMonths, {}};
  Part always{"always on", {}};
  Part video{"video", {}};
  Part backup{"nightly backup", {}};
  for (int m = 0; m < 12; ++m) {
    always.values.push_back(m == 1 ? 8.4 : 9.3);
    video.values.push_back(m > 4 && m < 8 ? 1.5 : 4);
    backup.values.push_back(2.25);
  }
  picture.parts = {always, video, backup};
  return {"months", svg(picture)};
}

// Idle at night, in use on weekdays from 8 to 17:30 and in every evening.
Sample week() {
  WeekMap picture{frame("week", "When does it draw how much?"), {}, {}};
  for (std::size_t day = 0; day < 7; ++day) {
    for (std::size_t slot = 0; slot < 48; ++slot) {
      const bool office = day < 5 && slot >= 16 && slot < 35;
      const bool evening = slot >= 38 && slot < 46;
      picture.mean_w[day][slot] = office ? 41.5 : evening ? 33 : 22;
    }
  }
  return {"week", svg(picture)};
}

Sample lines() {
  Lines picture{frame("sweep", "From which price on does it pay?"),
                "price of electricity, times today's",
                "EUR in 5 years",
                true,
                {},
                {}};
  picture.lines = {
      {"small server",
       {{0.5, 520, Range{480, 560}}, {1, 640, Range{600, 690}}, {2, 880, Range{800, 980}}}},
      {"old desktop",
       {{0.5, 300, Range{270, 320}}, {1, 600, Range{550, 640}}, {2, 1200, Range{1100, 1290}}}}};
  picture.markers = {{1, {}, "today"}, {1.111, 666.7, "equal at 1.11"}};
  return {"lines", svg(picture)};
}

Sample load() {
  LoadDuration picture{frame("load", "How long does it draw how much?"), {}};
  picture.curves = {{"small server", {{12, 6000}, {35, 760}, {18, 2000}}}};
  return {"load", svg(picture)};
}

std::string candidate(int i) { return fmt::format("candidate {}", i + 1); }

// Fifteen names of 80 letters that begin alike.
std::string long_name(int i) {
  return fmt::format(
      "A second-hand rack server with four drives, two supplies and more memory, "
      "no. {:03}",
      i + 1);
}

Sample many_bars() {
  Bars picture{frame("many-bars", "What do fifteen candidates cost in five years?"),
               "EUR in 5 years, present value",
               {}};
  for (int i = 0; i < 15; ++i) {
    const double value = 1500 + 830 * (i * 7 % 15);
    picture.bars.push_back({long_name(i), value, Range{value * 0.8, value * 1.3},
                            fmt::format("EUR {:.0f} to {:.0f}", value * 0.8, value * 1.3)});
  }
  return {"many-bars", svg(picture)};
}

Sample many_parts() {
  StackedMonths picture{
      frame("many-parts", "Forty workloads, forty months"), "kWh a month", {}, {}};
  for (int m = 0; m < 40; ++m) {
    picture.months.push_back(fmt::format("{}-{:02}", 2027 + m / 12, m % 12 + 1));
  }
  for (int w = 0; w < 40; ++w) {
    Part part{w % 9 == 0 ? long_name(w) : fmt::format("workload {}", w + 1), {}};
    for (int m = 0; m < 40; ++m) part.values.push_back(1 + w * 13 % 40 * (1 + 0.02 * (m % 12)));
    picture.parts.push_back(part);
  }
  return {"many-parts", svg(picture)};
}

Lines sweep_of(int count, std::string (*name)(int)) {
  Lines picture{frame("many", "Fifteen candidates over the price"),
                "price of electricity, times today's",
                "EUR in 5 years",
                true,
                {},
                {}};
  for (int i = 0; i < count; ++i) {
    Line line{name(i), {}};
    for (const double x : {0.5, 1.0, 1.5, 2.0, 3.0}) {
      line.points.push_back({x, 200 + 37.0 * (14 - i) + x * (60 + 31.0 * i), {}});
    }
    picture.lines.push_back(line);
  }
  picture.markers = {{1, {}, "today"},
                     {37.0 / 31, 200 + 37.0 * 14 + 60 * 37.0 / 31, "all cost the same at 1.19"},
                     {1.25, {}, "as announced for next year"}};
  return picture;
}

Sample many_lines() { return {"many-lines", svg(sweep_of(15, candidate))}; }

Sample long_lines() { return {"long-lines", svg(sweep_of(15, long_name))}; }

Sample many_loads() {
  LoadDuration picture{frame("many-loads", "Three machines"), {}};
  for (int i = 0; i < 3; ++i) {
    LoadCurve curve{candidate(i), {}};
    for (int k = 0; k < 40; ++k) curve.loads.push_back({8.0 + 5 * i + k * (3 - i), 219});
    picture.curves.push_back(curve);
  }
  return {"many-loads", svg(picture)};
}

// Another number in each half-hour.
Sample restless_week() {
  WeekMap picture{frame("restless", "A week without two equal half-hours"), {}, {}};
  for (std::size_t day = 0; day < 7; ++day) {
    for (std::size_t slot = 0; slot < 48; ++slot) {
      picture.mean_w[day][slot] = 5 + static_cast<double>((day * 48 + slot) * 131 % 337) / 3;
    }
  }
  return {"restless-week", svg(picture)};
}

const std::vector<std::string> kHostileNames = {
    "<script>alert(\"1\")</script> & 'more'",
    "\u05E9\u05E8\u05EA \u05D1\u05D9\u05EA\u05D9 24/7",             // Hebrew: home server
    "\u062E\u0627\u062F\u0645 \u0645\u0646\u0632\u0644\u064A (2)",  // Arabic: home server
    "over\u202Eride, zero\x01 and \xFF bytes\xC3",
    "\uFFFE and \uFFFF, ]]> and <!-- -->",
    "\u5BB6\u306E\u30B5\u30FC\u30D0\u30FC\u306F\u591C\u3082\u52D5\u3044\u3066\u3044\u307E\u3059"
    "\u3002"
    "\u5BB6\u306E\u30B5\u30FC\u30D0\u30FC\u306F\u591C\u3082\u52D5\u3044\u3066\u3044\u307E\u3059",
    "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
    ""};

Frame hostile_frame(const std::string& prefix) {
  return {prefix, kHostileNames[0] + " " + kHostileNames[1], kHostileNames[3] + kHostileNames[4],
          true, true};
}

Sample hostile_bars() {
  Bars picture{hostile_frame("hostile-bars"), "<EUR> & more", {}};
  for (const std::string& name : kHostileNames) {
    picture.bars.push_back({name, 10, Range{5, 12}, "\u20AA 5 <to> 12"});
  }
  return {"hostile-bars", svg(picture)};
}

Sample hostile_months() {
  StackedMonths picture{hostile_frame("hostile-months"), "k\"Wh\"", {}, {}};
  picture.months = {kHostileNames[0], kHostileNames[1], kHostileNames[6]};
  for (const std::string& name : kHostileNames) picture.parts.push_back({name, {1, -2, 3}});
  return {"hostile-months", svg(picture)};
}

Sample hostile_lines() {
  Lines picture{hostile_frame("hostile-lines"), kHostileNames[0], kHostileNames[6], false, {}, {}};
  double y = 1000;
  for (const std::string& name : kHostileNames) {
    picture.lines.push_back({name, {{1, y, {}}, {2, y += 0.5, {}}}});
  }
  picture.markers = {
      {1, 1000, kHostileNames[0]}, {2, {}, kHostileNames[1]}, {2, {}, kHostileNames[6]}};
  return {"hostile-lines", svg(picture)};
}

}  // namespace

std::vector<Sample> small_samples() {
  return {bars(), bars_below_zero(), months(), week(), lines(), load()};
}

std::vector<Sample> large_samples() {
  return {many_bars(), many_parts(), many_lines(), long_lines(), many_loads(), restless_week()};
}

std::vector<Sample> hostile_samples() {
  return {hostile_bars(), hostile_months(), hostile_lines()};
}

std::vector<Sample> samples() {
  std::vector<Sample> all = small_samples();
  for (Sample& sample : large_samples()) all.push_back(sample);
  for (Sample& sample : hostile_samples()) all.push_back(sample);
  return all;
}

}  // namespace wattweek::chart
