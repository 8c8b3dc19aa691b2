#include "made_log.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "../metering/chance.hpp"

namespace wattweek::tests {
namespace {

using metering::Chance;
using metering::FadingNoise;

constexpr double kDay_s = 86400;

// A use that begins or ends.
struct Change {
  double at_s;
  double by_w;
};

// `2025-01-06T17:03:22Z`; all logs begin on that Monday and end within the month.
void add_stamp(std::string& text, double at_s) {
  const auto s = static_cast<int>(at_s);
  std::array<char, 32> stamp{};
  std::snprintf(stamp.data(), stamp.size(), "2025-01-%02dT%02d:%02d:%02dZ", 6 + s / 86400,
                s / 3600 % 24, s / 60 % 60, s % 60);
  text += stamp.data();
}

void add_number(std::string& text, double value, double quantum) {
  std::array<char, 32> number{};
  const int decimals = quantum >= 1 ? 0 : (quantum >= 0.1 ? 1 : 3);
  std::snprintf(number.data(), number.size(), "%.*f", decimals, value);
  text += number.data();
}

class Home {
 public:
  Home(const MadeSort& sort, std::uint64_t seed)
      : sort_(sort), chance_(seed), noise_(sort.noise_w, sort.memory_s, noise_step_s()) {
    made_.idle_w = 10 + 25 * chance_.even();
    made_.films_w = increment_w();
    made_.backup_w = increment_w();
    made_.activity = "workload,start,end,units\n";
    for (int day = 0; day < sort_.days; ++day) live(day);
    std::stable_sort(changes_.begin(), changes_.end(),
                     [](const Change& a, const Change& b) { return a.at_s < b.at_s; });
    made_.year_kwh = 0.365 * (24 * made_.idle_w + kFilmUnitHours * made_.films_w +
                              kBackupHours * made_.backup_w);
    load_w_ = made_.idle_w;
  }

  MadeLog log() {
    switch (sort_.kind) {
      case logs::Kind::power:
        sample();
        break;
      case logs::Kind::energy:
        meter_intervals();
        break;
      case logs::Kind::counter:
        count();
        break;
    }
    return made_;
  }

 private:
  // Films of one to three hours, a second one beside three in ten of them for half of its time;
  // two backups of 15 to 75 minutes a day.
  static constexpr double kFilmUnitHours = 2 + 0.3 * 0.5 * 2;
  static constexpr double kBackupHours = 2 * 0.75;

  // A sample has noise of its own; what is metered has it by the minute.
  double noise_step_s() const {
    return sort_.kind == logs::Kind::power ? sort_.step_s : std::min(sort_.step_s, 60.0);
  }

  // Up to 20 W; small ones as often as great ones.
  double increment_w() {
    return sort_.least_increment_w * std::pow(20 / sort_.least_increment_w, chance_.even());
  }

  void live(int day) {
    const double midnight_s = day * kDay_s;
    const double film_s = 3600 * (1 + 2 * chance_.even());
    const double begin_s = midnight_s + 3600 * (17 + 3 * chance_.even());
    use("films", begin_s, film_s, made_.films_w);
    if (chance_.even() < 0.3) use("films", begin_s + film_s / 4, film_s / 2, made_.films_w);
    for (const double hour : {1.0, 9.0}) {
      use("backup", midnight_s + 3600 * (hour + 6 * chance_.even()), 900 + 3600 * chance_.even(),
          made_.backup_w);
    }
  }

  void use(const char* workload, double begin_s, double length_s, double by_w) {
    const double from_s = std::floor(begin_s);
    const double to_s = std::floor(begin_s + length_s);
    made_.activity += workload;
    made_.activity += ',';
    add_stamp(made_.activity, from_s);
    made_.activity += ',';
    add_stamp(made_.activity, to_s);
    made_.activity += ",1\n";
    changes_.push_back({from_s, by_w});
    changes_.push_back({to_s, -by_w});
  }

  // What is drawn at the moment, without noise. Moments come in order.
  double load_w(double at_s) {
    for (; next_ < changes_.size() && changes_[next_].at_s <= at_s; ++next_) {
      load_w_ += changes_[next_].by_w;
    }
    return load_w_;
  }

  // What is drawn until then, with noise that stays the same for a minute at most.
  double drawn_wh(double from_s, double to_s) {
    double joules = 0;
    for (double at_s = from_s; at_s < to_s;) {
      const double until_s = std::min(at_s + noise_step_s(), to_s);
      const double noise_w = noise_.next(chance_);
      while (at_s < until_s) {
        const double watts = std::max(0.0, load_w(at_s) + noise_w);
        double end_s = until_s;
        if (next_ < changes_.size()) end_s = std::min(end_s, changes_[next_].at_s);
        joules += watts * (end_s - at_s);
        at_s = end_s;
      }
    }
    return joules / 3600;
  }

  // Now and then rows are missing, up to 20 of them.
  bool is_missing() {
    if (missing_ == 0 && chance_.even() < 0.0005)
      missing_ = 1 + static_cast<int>(20 * chance_.even());
    if (missing_ == 0) return false;
    --missing_;
    return true;
  }

  void row(double at_s, double value) {
    add_stamp(made_.log, at_s);
    made_.log += ',';
    add_number(made_.log, value, sort_.quantum);
    made_.log += '\n';
  }

  double to_quantum(double value) const {
    return std::round(value / sort_.quantum) * sort_.quantum;
  }

  void sample() {
    made_.log = "time,power (W)\n";
    for (double at_s = 0; at_s < sort_.days * kDay_s; at_s += sort_.step_s) {
      const double watts = std::max(0.0, load_w(at_s) + noise_.next(chance_));
      if (!is_missing()) row(at_s, to_quantum(watts));
    }
  }

  // Stamps at the end of each interval. Its own energy, rounded; or what a counter rose by.
  void meter_intervals() {
    made_.log = "end of interval,energy (Wh)\n";
    for (double at_s = 0; at_s < sort_.days * kDay_s; at_s += sort_.step_s) {
      const double wh = drawn_wh(at_s, at_s + sort_.step_s);
      const double shown_wh = to_quantum(wh + rest_wh_);
      if (sort_.carries_rest) rest_wh_ += wh - shown_wh;
      if (!is_missing()) row(at_s + sort_.step_s, shown_wh);
    }
  }

  // A counter that shows whole steps only, and begins at 0 again now and then.
  void count() {
    made_.log = "time,total (Wh)\n";
    double total_wh = 1000 * chance_.even();
    for (double at_s = 0; at_s < sort_.days * kDay_s; at_s += sort_.step_s) {
      if (!is_missing()) row(at_s, std::floor(total_wh / sort_.quantum) * sort_.quantum);
      total_wh += drawn_wh(at_s, at_s + sort_.step_s);
      if (chance_.even() < 0.0005) total_wh = 0;
    }
  }

  const MadeSort& sort_;
  Chance chance_;
  FadingNoise noise_;
  MadeLog made_;
  std::vector<Change> changes_;
  std::size_t next_ = 0;
  double load_w_ = 0;
  int missing_ = 0;
  double rest_wh_ = 0;
};

}  // namespace

MadeLog made_log(const MadeSort& sort, std::uint64_t seed) { return Home(sort, seed).log(); }

}  // namespace wattweek::tests
