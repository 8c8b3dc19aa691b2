#pragma once
// Joint states of several devices, built one workload after the other, with equal states merged.
//
// A state is a row of sums: in column 0 the watts that are settled, in further columns what is
// still open on a device, in the last ones the groups in use as sets of bits. Unlike the lattice,
// which shares watts out among tasks, there is no way back; in return several devices are open at
// once. States are kept in ascending order of their keys, which adding the same to each does not
// change, so an outcome more is a merging of two sorted rows.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace wattweek::power {

/// What is added to a column, and the same on the column's grid. Of a set: its bits in `key`.
struct Addend {
  double amount = 0;
  std::int64_t key = 0;
};

/// A value of a workload's units in use: an addend for each column.
struct JointOutcome {
  double probability = 0;
  std::vector<Addend> adds;
};

class JointStates {
 public:
  /// Begins with one state of probability 1. The columns from `sets_from` on are sets of bits.
  void start(std::size_t columns, std::size_t sets_from);

  /// Adds an independent workload. False where more than `left` states would be formed; otherwise
  /// these are taken off it.
  [[nodiscard]] bool add(const std::vector<JointOutcome>& outcomes, std::size_t& left);

  /// Lets `change(row)` change the columns of each state, and merges those that became equal.
  template <class Change>
  void change(Change change) {
    for (std::size_t s = 0; s < size(); ++s) change(&rows_.sums[s * columns_]);
    tidy(rows_);
  }

  std::size_t size() const { return rows_.probability.size(); }
  double probability(std::size_t state) const { return rows_.probability[state]; }
  const Addend& settled(std::size_t state) const { return rows_.sums[state * columns_]; }

 private:
  struct Rows {
    std::vector<Addend> sums;
    std::vector<double> probability;
    void clear();
  };

  bool precedes(const Addend* a, const Addend* b) const;
  void append(Rows& rows, const Addend* row, double probability) const;
  void push_sums(Rows& rows, const JointOutcome& outcome) const;
  void merge(const Rows& a, const Rows& b, Rows& merged) const;
  void tidy(Rows& rows);

  std::size_t columns_ = 1;
  std::size_t sets_from_ = 1;
  Rows rows_;
  Rows run_;
  Rows sum_;
  Rows merged_;
  std::vector<std::size_t> order_;
};

}  // namespace wattweek::power
