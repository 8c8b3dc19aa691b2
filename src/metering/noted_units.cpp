#include "noted_units.hpp"

#include <algorithm>
#include <limits>
#include <set>

namespace wattweek::metering {
namespace {

using logs::Microseconds;

constexpr Microseconds kEver_us = std::numeric_limits<Microseconds>::max();

/// A use that starts or ends.
struct Change {
  Microseconds at_us;
  bool starts;
  const NotedUse* use;
};

std::vector<Change> changes_of(const Activity& activity) {
  std::vector<Change> changes;
  for (const NotedUse& use : activity.uses) {
    if (use.end_us <= use.start_us) continue;
    changes.push_back({use.start_us, true, &use});
    changes.push_back({use.end_us, false, &use});
  }
  std::stable_sort(changes.begin(), changes.end(),
                   [](const Change& a, const Change& b) { return a.at_us < b.at_us; });
  return changes;
}

/// What runs of one workload at a time. Its sum is taken anew at each change: what is added and
/// taken away again would leave crumbs.
class Running {
 public:
  void change(const Change& change) {
    if (change.starts) {
      units_.insert(change.use->units);
    } else {
      units_.erase(units_.find(change.use->units));
    }
  }
  double sum() const {
    double sum = 0;
    for (const double units : units_) sum += units;
    return sum;
  }

 private:
  std::multiset<double> units_;
};

}  // namespace

NotedUnits::NotedUnits(const Activity& activity) {
  Units units(activity.workloads.size(), 0.0);
  pieces_.push_back({std::numeric_limits<Microseconds>::min(), row_of(units, false)});
  std::vector<Running> running(units.size());
  const std::vector<Change> changes = changes_of(activity);
  for (std::size_t i = 0; i < changes.size(); ++i) {
    const std::size_t workload = changes[i].use->workload;
    running[workload].change(changes[i]);
    units[workload] = running[workload].sum();
    const bool more_at_once = i + 1 < changes.size() && changes[i + 1].at_us == changes[i].at_us;
    if (!more_at_once) pieces_.push_back({changes[i].at_us, row_of(units, false)});
  }
}

std::uint32_t NotedUnits::row_of(const Units& units, bool changing) {
  const auto [found, is_new] =
      row_numbers_.try_emplace({units, changing}, static_cast<std::uint32_t>(rows_.size()));
  if (is_new) {
    rows_.push_back(units);
    changing_.push_back(changing);
  }
  return found->second;
}

Microseconds NotedUnits::end_us(std::size_t piece) const {
  return piece + 1 < pieces_.size() ? pieces_[piece + 1].from_us : kEver_us;
}

Microseconds NotedUnits::turn_to(Microseconds at_us) {
  const auto next =
      std::upper_bound(pieces_.begin(), pieces_.end(), at_us,
                       [](Microseconds us, const Piece& p) { return us < p.from_us; });
  piece_ = static_cast<std::size_t>(next - pieces_.begin()) - 1;
  return end_us(piece_);
}

std::uint32_t NotedUnits::mean_design(Microseconds start_us, Microseconds end_us) {
  if (end_us <= this->end_us(piece_)) return design();
  Units mean(rows_.front().size(), 0.0);
  std::size_t piece = piece_;
  for (Microseconds from_us = start_us; from_us < end_us; ++piece) {
    const Microseconds to_us = std::min(this->end_us(piece), end_us);
    const double share =
        static_cast<double>(to_us - from_us) / static_cast<double>(end_us - start_us);
    const Units& units = rows_[pieces_[piece].design];
    for (std::size_t w = 0; w < mean.size(); ++w) mean[w] += share * units[w];
    from_us = to_us;
  }
  return row_of(mean, true);
}

std::vector<Eigen::VectorXd> NotedUnits::designs() const {
  std::vector<Eigen::VectorXd> designs;
  designs.reserve(rows_.size());
  for (const Units& row : rows_) {
    designs.push_back(
        Eigen::Map<const Eigen::VectorXd>(row.data(), static_cast<Eigen::Index>(row.size())));
  }
  return designs;
}

}  // namespace wattweek::metering
