// docs/measuring.md reckoned anew from the inputs that stand in it: the budget of the idle
// reading after JCGM 100:2008, the doubt of increments, and the ranges of the example profiles.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <numeric>
#include <sstream>

#include "toml_examples.hpp"

namespace wattweek::docs {
namespace {

const std::string kDocument = "docs/measuring.md";
const double kSqrt3 = std::sqrt(3.0);

using Numbers = std::vector<double>;

Section in_measuring(const std::string& heading) { return section(kDocument, "", heading); }

// The number at the start of a cell: of `0.42 W` or `44 %`.
double number(const std::string& cell) {
  std::size_t used = 0;
  const double value = std::stod(cell, &used);
  CHECK_MESSAGE((used == cell.size() || cell[used] == ' '), cell);
  return value;
}

double square(double x) { return x * x; }

Row row_of(const Section& in, const std::string& name) {
  for (const Row& row : table_rows(in)) {
    if (row.front() == name) return row;
  }
  FAIL("no row '" << name << "' in " << in.heading);
  return {};
}

// The first line that stands as a block: numbers with blanks between.
Numbers readings_of(const Section& in) {
  for (const std::string& line : lines_of(in.text)) {
    if (line.substr(0, 4) != "    ") continue;
    Numbers readings;
    std::istringstream words(line);
    for (double reading = 0; words >> reading;) readings.push_back(reading);
    return readings;
  }
  return {};
}

struct Budget {
  int readings = 0;
  double mean_w = 0;
  double spread_w = 0;  // Standard deviation of one reading.
  double limit_w = 0;   // Of the meter's error at the mean.
  double relative = 0;  // The part of the limit that goes with the reading, as a fraction.
  double constant_w = 0;
  double step_w = 0;

  double meter() const { return limit_w / kSqrt3; }
  double display() const { return step_w / 2 / kSqrt3; }
  double repeat() const { return spread_w / std::sqrt(double(readings)); }
  // What is left where the meter's error is the same in both readings of a difference.
  double unshared() const { return std::hypot(display(), repeat()); }
  double combined() const { return std::hypot(meter(), unshared()); }
};

Budget budget() {
  const Section text = in_measuring("An error budget");
  const Numbers readings = readings_of(text);
  REQUIRE(readings.size() > 1);
  Budget all;
  all.readings = static_cast<int>(readings.size());
  all.mean_w = std::accumulate(readings.begin(), readings.end(), 0.0) / all.readings;
  double squares = 0;
  for (const double reading : readings) squares += square(reading - all.mean_w);
  all.spread_w = std::sqrt(squares / (all.readings - 1));
  all.relative = number(row_of(text, "meter's limit of error, of the reading")[1]) / 100;
  all.constant_w = number(row_of(text, "meter's limit of error, constant")[1]);
  all.step_w = number(row_of(text, "step of the display")[1]);
  all.limit_w = all.relative * all.mean_w + all.constant_w;
  return all;
}

void check_source(const std::string& name, double standard_uncertainty_w) {
  const Row row = row_of(in_measuring("An error budget"), name);
  CHECK(row[2] == fmt::format("{:.4f}", standard_uncertainty_w));
  if (!row[3].empty()) CHECK(row[3] == fmt::format("{:.5f}", square(standard_uncertainty_w)));
}

// Text without its line breaks, so that a sentence is found wherever it is wrapped.
std::string unwrapped(std::string text) {
  for (char& c : text) c = c == '\n' ? ' ' : c;
  return text;
}

void check_says(const std::string& heading, const std::string& words) {
  const std::string text = unwrapped(in_measuring(heading).text);
  CHECK_MESSAGE(text.find(words) != text.npos, heading << " does not say: " << words);
}

TEST_CASE("docs/measuring.md: the error budget adds up as JCGM 100 says") {
  const Budget all = budget();
  check_source("meter", all.meter());
  check_source("display", all.display());
  check_source("readings", all.repeat());
  check_source("combined", all.combined());
  check_source("expanded (6.2.1)", 2 * all.combined());
}

TEST_CASE("docs/measuring.md: the figures in the sentences are those of the budget") {
  const Budget all = budget();
  const std::string heading = "An error budget";
  check_says(heading, fmt::format("mean is {:.1f} / {} = {:.2f} W", all.mean_w * all.readings,
                                  all.readings, all.mean_w));
  const double squares = square(all.spread_w) * (all.readings - 1);
  check_says(heading, fmt::format("add up to {:.2f} W2", squares));
  check_says(heading, fmt::format("s = sqrt({:.2f} / {}) = {:.4f} W", squares, all.readings - 1,
                                  all.spread_w));
  check_says(heading, fmt::format("a = {} x {} + {} = {:.2f} W", all.relative, all.mean_w,
                                  all.constant_w, all.limit_w));
  check_says(heading, fmt::format("a = {} W.", all.step_w / 2));
  check_says(heading, fmt::format("idle is {:.1f} W +- {:.1f} W", all.mean_w, 2 * all.combined()));
  check_says(heading, fmt::format("8760 hours {:.4f} W are {:.1f} kWh", 2 * all.combined(),
                                  2 * all.combined() * 8760 / 1000));
  check_says("The range in the profile", fmt::format("{:.4f} x {:.4f} = {:.3f} W", kSqrt3,
                                                     all.combined(), kSqrt3 * all.combined()));
  check_says("The range in the profile", fmt::format("2 / sqrt(3) = {:.2f}", 2 / kSqrt3));
}

double idle_left_w(const Budget& all) {
  return std::hypot(all.constant_w / kSqrt3, all.unshared());
}

TEST_CASE("docs/measuring.md: what a meter's scale leaves to the idle range is reckoned right") {
  const Budget all = budget();
  check_says("Several readings by one meter",
             fmt::format("= {:.4f} W, times sqrt(3) {:.3f} W", idle_left_w(all),
                         kSqrt3 * idle_left_w(all)));
}

struct Difference {
  double w = 0;
  double units = 1;
  double percent_w = 0;   // The meter's limit that goes with the reading, of the difference.
  double unshared_w = 0;  // Display and readings, of the two readings.

  double each_w() const { return w / units; }
  double combined() const { return std::hypot(percent_w / kSqrt3, unshared_w) / units; }
  double without_scale() const { return unshared_w / units; }
};

Difference difference(const std::string& name) {
  const Budget all = budget();
  const Row row = row_of(in_measuring("The range in the profile"), name);
  REQUIRE(row.size() == 8);
  Difference of{number(row[1]), number(row[2]), 0, std::sqrt(2.0) * all.unshared()};
  of.percent_w = all.relative * of.w;
  CHECK(row[3] == fmt::format("{:.4f}", of.percent_w));
  CHECK(row[4] == fmt::format("{:.4f}", of.unshared_w));
  CHECK(row[5] == fmt::format("{:.2f}", of.each_w()));
  CHECK(row[6] == fmt::format("{:.4f}", of.combined()));
  CHECK(row[7] == fmt::format("{:.4f}", kSqrt3 * of.combined()));
  return of;
}

// Readings by the number of units in use, from the table of steps.
double read_w(const std::string& units) {
  return number(row_of(in_measuring("Busy, in steps"), units)[1]);
}

TEST_CASE("docs/measuring.md: increments are the differences of the readings in steps") {
  CHECK(read_w("0") == doctest::Approx(budget().mean_w).epsilon(1e-12));
  CHECK(difference("first").w == doctest::Approx(read_w("1") - read_w("0")).epsilon(1e-12));
  CHECK(difference("each").w == doctest::Approx(read_w("5") - read_w("1")).epsilon(1e-12));
  CHECK(difference("each").units == 4);
}

TEST_CASE("docs/measuring.md: the table of steps is reckoned right") {
  double before_w = read_w("0");
  double before_units = 0;
  for (const Row& row : table_rows(in_measuring("Busy, in steps"))) {
    const double units = number(row[0]);
    if (units == 0) continue;
    const double w = number(row[1]);
    CHECK(row[2] == fmt::format("{:.1f}", w - read_w("0")));
    CHECK(row[3] == fmt::format("{:.1f}", (w - before_w) / (units - before_units)));
    before_w = w;
    before_units = units;
  }
  CHECK(before_units == 5);
}

model::Profile example_profile(const std::string& name) {
  const auto files = named_files(kDocument);
  REQUIRE(files.count(name) == 1);
  const auto got = read::profile({name, name, files.at(name)});
  REQUIRE(got.value.has_value());
  return *got.value;
}

void check_range(const model::PowerRange& range, double middle_w, double half_w, double digit) {
  const auto rounded = [digit](double w) { return std::round(w / digit) * digit; };
  CHECK(units::in_watts(range.low) == doctest::Approx(rounded(middle_w - half_w)).epsilon(1e-12));
  CHECK(units::in_watts(range.high) == doctest::Approx(rounded(middle_w + half_w)).epsilon(1e-12));
}

const model::PerUnit& films_of(const model::Profile& profile) {
  REQUIRE(profile.increments.size() == 1);
  return std::get<model::PerUnit>(profile.increments.front().increment.form);
}

TEST_CASE("docs/measuring.md: each range has the standard uncertainty that was reckoned") {
  const model::Profile box = example_profile("metered-box.toml");
  check_range(box.idle, budget().mean_w, kSqrt3 * budget().combined(), 0.1);
  const Difference first = difference("first");
  const Difference each = difference("each");
  check_range(films_of(box).first.value(), first.each_w(), kSqrt3 * first.combined(), 0.01);
  check_range(films_of(box).each, each.each_w(), kSqrt3 * each.combined(), 0.01);
}

TEST_CASE("docs/measuring.md: with a meter's scale the ranges hold only what is left") {
  const model::Profile box = example_profile("metered-box-by-one-meter.toml");
  CHECK(box.meter == "plug-meter");
  check_range(box.idle, budget().mean_w, kSqrt3 * idle_left_w(budget()), 0.1);
  const Difference first = difference("first");
  const Difference each = difference("each");
  check_range(films_of(box).first.value(), first.each_w(), kSqrt3 * first.without_scale(), 0.01);
  check_range(films_of(box).each, each.each_w(), kSqrt3 * each.without_scale(), 0.01);
}

TEST_CASE("docs/measuring.md: the table of what a meter may be off by follows its limit") {
  const Budget all = budget();
  int checked = 0;
  for (const Row& row : table_rows(in_measuring("What the meter can tell"))) {
    const double w = number(row[0]);
    const double limit_w = all.relative * w + all.constant_w;
    CHECK(row[1] == fmt::format("{:.3f}", limit_w));
    CHECK(row[2] == fmt::format("{:.0f} %", 100 * limit_w / w));
    ++checked;
  }
  CHECK(checked > 2);
}

TEST_CASE("docs/measuring.md: the table of counted kWh is one step over the hours") {
  const double step_kwh = 0.01;
  const std::string heading = "Average, do not glance";
  check_says(heading, fmt::format("last digit is {} kWh", step_kwh));
  int checked = 0;
  for (const Row& row : table_rows(in_measuring(heading))) {
    CHECK(row[1] == fmt::format("{:.2f} W", step_kwh * 1000 / number(row[0])));
    ++checked;
  }
  CHECK(checked > 2);
}

}  // namespace
}  // namespace wattweek::docs
