#pragma once
// What is compared, for whom and when: the whole of what the user described. A study that
// `read` returned is valid, so the computing rooms ask no questions of it.

#include <array>
#include <chrono>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/model/profile.hpp"
#include "wattweek/model/tariff.hpp"
#include "wattweek/model/window.hpp"

namespace wattweek::model {

/// How many of a use's units are in use at an instant in its window.
enum class Pattern {
  together,     ///< All with probability `share`, none otherwise.
  independent,  ///< Each by itself with probability `share`; `units` is whole.
};

/// One habit: in this window so many units, that share of the time.
struct Use {
  Window window;
  double units = 1;
  units::Range<double> share{1.0};  ///< Within 0..1.
  bool is_in_minutes = false;       ///< The share was written as minutes.
  Pattern pattern = Pattern::together;
};

/// Something the machines are used for.
struct Workload {
  std::string id;
  std::string name;
  std::string unit = "unit";
  std::optional<units::Range<double>> compute;  ///< Work units per unit in use.
  std::vector<Use> uses;                        ///< Never empty.
  diag::Place place;
};

/// Dates on which the named workloads are not used.
struct Away {
  DateSpan dates;
  std::vector<std::size_t> workloads;  ///< Indices into `Study::workloads`.
  diag::Place place;
};

enum class RestState { sleep, off };

/// A time in which a device is suspended or shut down.
struct Rest {
  Window window;
  RestState state = RestState::sleep;
};

/// A workload on a device: run by it, or run by another device and taken part in.
struct Task {
  std::size_t workload = 0;  ///< Index into `Study::workloads`.
  Increment increment;
};

/// One plugged-in device of a candidate.
struct Device {
  std::string name;
  std::shared_ptr<const Profile> profile;  ///< Devices that name one file share it.
  int count = 1;                           ///< Identical copies that do the same at the same time.
  std::vector<Task> runs;                  ///< In the study's order of workloads.
  std::vector<Task> assists;               ///< In the study's order of workloads.
  std::vector<Rest> rests;                 ///< The first that holds wins.
  diag::Place place;
};

/// A cost that falls due at the end of a later year.
struct LaterCost {
  int year = 1;
  MoneyRange cost;
  std::string name;
};

/// One whole set-up. Each workload is run by exactly one of its devices or skipped.
struct Candidate {
  std::string id;
  std::string name;
  MoneyRange purchase;
  MoneyRange resale;  ///< At the end of the finance years.
  std::vector<std::size_t> skips;
  std::vector<LaterCost> later;
  std::vector<Device> devices;  ///< Never empty.
  diag::Place place;
};

/// What the home uses without any candidate: kWh a year, or kWh of January to December.
using HouseholdUse = std::variant<units::Range<units::Energy>, std::array<units::Energy, 12>>;

struct Household {
  HouseholdUse use;
  std::optional<std::size_t> includes;  ///< Candidate that ran while this was metered.
  diag::Place includes_place;
};

struct Finance {
  std::optional<int> years;  ///< The horizon.
  units::Range<double> discount_rate;
  units::Range<double> price_rise;
};

/// One factor on all watts of the profiles that name it.
struct Meter {
  std::string id;
  units::Range<double> scale{1.0};
};

struct Study {
  std::string title;
  std::string time_zone;
  std::chrono::year_month start;
  int months = 12;
  diag::Place months_place;  ///< Of `months`, or of `start` where it is not given.
  Tariff tariff;
  Holidays holidays;
  std::size_t baseline = 0;  ///< Index into `candidates`.
  Household household;
  std::optional<units::Range<double>> carbon_kg_per_kwh;
  std::optional<Finance> finance;
  std::vector<Workload> workloads;
  std::vector<Away> away;
  std::vector<Candidate> candidates;  ///< Never empty.
  std::vector<Meter> meters;
};

}  // namespace wattweek::model
