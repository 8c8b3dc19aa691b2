#pragma once
// What of the fold matters to one candidate: the situations of each of its devices - their own
// uses, rests and partners - and the hours of each in every month and price band. A plan knows
// no watts and no shares; a what-if on those uses it again as it is.

#include <Eigen/SparseCore>
#include <compare>
#include <cstdint>
#include <vector>

#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::energy {

enum class State { off, sleep, idle, active };
inline constexpr std::size_t kStates = 4;

/// What a device is in: at rest, or on with these uses holding, or in this hour of the week.
struct DeviceSituation {
  enum class Power { on, sleep, off } power = Power::on;
  /// For each task which of `CandidatePlan::use_sets` of its workload is served; empty at rest.
  std::vector<std::uint32_t> use_set;
  /// Of a device that is on and whose profile has a `week`: an hour of the local week in which it
  /// draws what it draws now. Otherwise 0.
  std::uint32_t hour_of_week = 0;

  friend auto operator<=>(const DeviceSituation&, const DeviceSituation&) = default;
};

struct DevicePlan {
  std::vector<DeviceSituation> situations;
  Eigen::SparseMatrix<double> hours;   ///< Cells (month, band) x situations.
  std::vector<double> total_hours;     ///< Of each situation, over all cells.
  std::vector<std::uint32_t> of_fold;  ///< Situation of the fold -> situation of the device.
  std::vector<std::size_t> workloads;  ///< Of each task: index into the study's workloads.
};

/// Time in which a use's window holds, by whether the candidate serves it then.
struct UseTime {
  std::int64_t served_s = 0;
  std::int64_t unserved_s = 0;
};

struct CandidatePlan {
  std::vector<DevicePlan> devices;
  /// [workload][set]: uses of the workload that hold at the same time. Set 0 is empty.
  std::vector<std::vector<std::vector<std::uint32_t>>> use_sets;
  /// The distinct combinations of device situations that occur together, one after the other:
  /// entry `[i * devices + d]`.
  std::vector<std::uint32_t> together;
  std::vector<std::int64_t> together_s;        ///< Seconds of each combination, over all cells.
  std::vector<std::vector<UseTime>> use_time;  ///< [workload][use]; skipped: all unserved.
};

/// Sorts the fold's situations into those of each device of a candidate.
///
/// A device is at rest where one of its rests holds, the first that does deciding the state.
/// A workload is served while every device that runs or assists it is on; otherwise none of
/// them has units of it in use. A device whose profile has a `week` is in another situation in
/// every hour of the week in which it draws other watts.
CandidatePlan plan_candidate(const model::Study& study, std::size_t candidate,
                             const calendar::FoldedStudy& folded);

}  // namespace wattweek::energy
