#include "parcels.hpp"

#include <algorithm>
#include <tuple>

namespace wattweek::metering {
namespace {

// With fewer it takes a while until cells have to grow again.
constexpr std::size_t kMany = Parcels::kMost / 4 * 3;

auto key_of(const Parcel& parcel) {
  return std::tuple(parcel.minute, parcel.watt_class, parcel.design);
}

}  // namespace

Parcels::Parcels()
    : first_of_turn_(1), parcel_of_class_(bins::bin_of(kHighestReading_w) / kBinsOfClass + 1, 0) {
  parcels_.reserve(kMost + 1);  // The system gives what is used.
  parcels_.emplace_back();      // Place 0 stands for "none": it is before the first of any turn.
}

logs::Microseconds Parcels::turn_to(logs::Microseconds at_us, std::uint32_t design) {
  const std::int64_t cell = floor_of(at_us - first_us_, cell_us_);
  if (cell != cell_ || design != design_) first_of_turn_ = parcels_.size();
  cell_ = cell;
  design_ = design;
  return first_us_ + (cell + 1) * cell_us_;
}

void Parcels::open(std::size_t watt_class) {
  if (parcels_.size() > most_) double_cells();
  parcel_of_class_[watt_class] = parcels_.size();
  Parcel parcel;
  parcel.minute = static_cast<std::int32_t>(cell_);
  parcel.watt_class = static_cast<std::uint16_t>(watt_class);
  parcel.design = design_;
  parcels_.push_back(parcel);
}

void Parcels::merge_equal() {
  const auto begin = parcels_.begin() + 1;
  // Stable is not needed: of equal parcels the sums of two or three numbers are added, in an order
  // that the same input always gives.
  std::sort(begin, parcels_.end(),
            [](const Parcel& a, const Parcel& b) { return key_of(a) < key_of(b); });
  auto last = begin;
  for (auto next = begin; next != parcels_.end(); ++next) {
    if (next == last) continue;
    if (key_of(*next) == key_of(*last)) {
      last->drawn.seconds += next->drawn.seconds;
      last->drawn.joules += next->drawn.joules;
    } else {
      *++last = *next;
    }
  }
  if (begin != parcels_.end()) parcels_.erase(last + 1, parcels_.end());
}

void Parcels::double_cells() {
  do {
    if (cell_us_ < kLongestCell_us) {
      cell_us_ *= 2;
      cell_ = floor_of(cell_, 2);
      for (Parcel& parcel : parcels_) {
        parcel.minute = static_cast<std::int32_t>(floor_of(parcel.minute, 2));
      }
    }
    merge_equal();
  } while (parcels_.size() > kMany && cell_us_ < kLongestCell_us);
  if (parcels_.size() > kMany) most_ = 2 * parcels_.size();
  // They have moved: what comes opens anew, and merges later.
  first_of_turn_ = parcels_.size();
  std::fill(parcel_of_class_.begin(), parcel_of_class_.end(), 0);
}

std::vector<Parcel> Parcels::in_order() {
  merge_equal();
  parcels_.erase(parcels_.begin());
  if (parcels_.empty()) return {};
  // An interval that ends at the first stamp lies before it.
  const std::int32_t earliest = std::min(parcels_.front().minute, 0);
  for (Parcel& parcel : parcels_) parcel.minute -= earliest;
  return std::move(parcels_);
}

}  // namespace wattweek::metering
