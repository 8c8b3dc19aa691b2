#include "joint_states.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace wattweek::power {

namespace {

// More outcomes than these are sorted together; fewer are merged one after the other.
constexpr std::size_t kMergedOneByOne = 8;

}  // namespace

void JointStates::Rows::clear() {
  sums.clear();
  probability.clear();
}

void JointStates::start(std::size_t columns, std::size_t sets_from) {
  columns_ = columns;
  sets_from_ = sets_from;
  rows_.sums.assign(columns, {});
  rows_.probability.assign(1, 1.0);
}

bool JointStates::precedes(const Addend* a, const Addend* b) const {
  for (std::size_t c = 0; c < columns_; ++c) {
    if (a[c].key != b[c].key) return a[c].key < b[c].key;
  }
  return false;
}

// Rows come in ascending order; one that equals the last adds to its probability.
void JointStates::append(Rows& rows, const Addend* row, double probability) const {
  if (!rows.probability.empty() && !precedes(rows.sums.data() + rows.sums.size() - columns_, row)) {
    rows.probability.back() += probability;
    return;
  }
  rows.sums.insert(rows.sums.end(), row, row + columns_);
  rows.probability.push_back(probability);
}

void JointStates::push_sums(Rows& rows, const JointOutcome& outcome) const {
  for (std::size_t s = 0; s < rows_.probability.size(); ++s) {
    const Addend* row = &rows_.sums[s * columns_];
    for (std::size_t c = 0; c < columns_; ++c) {
      const Addend& add = outcome.adds[c];
      rows.sums.push_back(c < sets_from_ ? Addend{row[c].amount + add.amount, row[c].key + add.key}
                                         : Addend{0, row[c].key | add.key});
    }
    rows.probability.push_back(rows_.probability[s] * outcome.probability);
  }
}

void JointStates::merge(const Rows& a, const Rows& b, Rows& merged) const {
  merged.clear();
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < a.probability.size() || j < b.probability.size()) {
    const bool from_a =
        j == b.probability.size() ||
        (i < a.probability.size() && !precedes(&b.sums[j * columns_], &a.sums[i * columns_]));
    const Rows& from = from_a ? a : b;
    std::size_t& at = from_a ? i : j;
    append(merged, &from.sums[at * columns_], from.probability[at]);
    ++at;
  }
}

// Sorts rows that are out of order, and merges equal ones.
void JointStates::tidy(Rows& rows) {
  order_.resize(rows.probability.size());
  std::iota(order_.begin(), order_.end(), std::size_t{0});
  std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
    return precedes(&rows.sums[a * columns_], &rows.sums[b * columns_]);
  });
  merged_.clear();
  for (const std::size_t s : order_) {
    append(merged_, &rows.sums[s * columns_], rows.probability[s]);
  }
  std::swap(rows, merged_);
}

bool JointStates::add(const std::vector<JointOutcome>& outcomes, std::size_t& left) {
  if (size() * outcomes.size() > left) return false;
  left -= size() * outcomes.size();
  const bool one_by_one = outcomes.size() <= kMergedOneByOne;
  sum_.clear();
  for (const JointOutcome& outcome : outcomes) {
    Rows& to = one_by_one ? run_ : sum_;
    if (one_by_one) run_.clear();
    push_sums(to, outcome);
    if (!one_by_one) continue;
    if (sets_from_ < columns_) tidy(run_);  // A set that has the bit already stays as it is.
    merge(sum_, run_, merged_);
    std::swap(sum_, merged_);
  }
  if (!one_by_one) tidy(sum_);
  std::swap(rows_, sum_);
  return true;
}

}  // namespace wattweek::power
