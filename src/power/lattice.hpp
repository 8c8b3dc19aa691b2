#pragma once
// Joint outcomes of independent tasks, built one task after the other, with equal sums merged;
// and the way back through them, which shares out what the outcomes are worth.
//
// Forward: the states after a task are the distinct sums (amount, members in use by group) that
// can occur, each with its probability. Backward: given what a unit of each channel is worth
// in each final state, the expected worth of each task's contribution follows in one pass:
//
//     E[contribution_i * worth] = sum_s P(s) sum_o P(o) contribution_i(o) V(next(s, o))
//     V_before(s) = sum_o P(o) V(next(s, o))
//
// which costs no more than the way forward, however many tasks there are (the reverse sweep of
// automatic differentiation; common practice, no source).

#include <cstddef>
#include <cstdint>
#include <vector>

#include "wattweek/power/units_in_use.hpp"

namespace wattweek::power {

/// One value of a task's units in use.
struct TaskOutcome {
  double probability = 0;
  double amount = 0;     ///< What it adds: watts, or load.
  std::int64_t key = 0;  ///< The same on a fixed grid, where sums are exact; equal keys merge.
  double in_use = 0;     ///< 1 or 0.
};

/// A channel for each group that is tracked, after the channel of amounts.
inline constexpr std::size_t kAmountChannel = 0;
inline constexpr std::size_t kNoGroup = static_cast<std::size_t>(-1);

class Lattice {
 public:
  /// Begins with one state of probability 1. `group_members[g]` is the number of tasks of
  /// tracked group g that will be added. False where their numbers alone are too many.
  [[nodiscard]] bool start(const std::vector<std::size_t>& group_members);

  /// Adds an independent task; `group` is the tracked group that it belongs to, or `kNoGroup`.
  /// False beyond `kMostOutcomes` merged states.
  [[nodiscard]] bool add(const std::vector<TaskOutcome>& outcomes, std::size_t group);

  /// Replaces each state's amount a by `of(a)`, to be added to by other tasks, and each key by
  /// `key(of(a))`. The states stay apart.
  template <class Of, class Key>
  void transform(Of of, Key key) {
    const Layer from = layers_.back();
    push_layer(from.size);
    const Layer to = layers_.back();
    steps_.push_back({Step::Kind::transform, from, to, 0, 0, kNoGroup, 0, false});
    for (std::size_t s = 0; s < from.size; ++s) {
      probability_[to.begin + s] = probability_[from.begin + s];
      amount_[to.begin + s] = of(amount_[from.begin + s]);
      key_[to.begin + s] = key(amount_[to.begin + s]);
      counts_[to.begin + s] = counts_[from.begin + s];
    }
  }

  /// States formed since the lattice was made: what it has cost.
  std::uint64_t formed() const { return formed_; }

  std::size_t states() const { return layers_.back().size; }
  double probability(std::size_t state) const { return probability_[layers_.back().begin + state]; }
  double amount(std::size_t state) const { return amount_[layers_.back().begin + state]; }
  /// How many of a tracked group's members are in use.
  std::size_t in_use(std::size_t state, std::size_t group) const {
    return static_cast<std::size_t>(counts_[layers_.back().begin + state] / digit_[group] %
                                    radix_[group]);
  }

  /// What a unit of a channel is worth in a final state, to be set before `go_back`: channel 0
  /// is the amount, channel 1 + g being a member in use of group g.
  double& worth(std::size_t channel, std::size_t state) { return worth_[channel][state]; }
  void prepare_worth();

  /// Walks back over the last task and returns the expected worth of its contribution. Tasks
  /// come in the reverse order of `add`.
  double go_back();

  /// Walks back over `transform`: a unit of the amount before it is worth
  /// `share(before, after)` units of the amount after it.
  template <class Share>
  void go_back_transform(Share share) {
    const Step& step = steps_.back();
    for (std::size_t s = 0; s < step.from.size; ++s) {
      worth_[kAmountChannel][s] *= share(amount_[step.from.begin + s], amount_[step.to.begin + s]);
    }
    drop_layer();
  }

 private:
  struct Layer {
    std::size_t begin = 0;
    std::size_t size = 0;
  };
  struct Step {
    enum class Kind { task, transform } kind;
    Layer from;
    Layer to;
    std::size_t outcomes_begin;  // Into `outcomes_`.
    std::size_t outcomes;
    std::size_t group;
    std::size_t next_begin;  // Into `next_`, where the step merged.
    bool merged;             // Otherwise state s and outcome o lead to o * from.size + s.
  };

  void push_layer(std::size_t size);
  void make_room(std::size_t states);
  void drop_layer();
  void add_apart(const Step& step);
  [[nodiscard]] bool add_merging(Step& step);
  std::uint64_t counts_after(const Step& step, std::size_t state, const TaskOutcome& outcome) const;
  std::size_t slot_of(std::int64_t key, std::uint64_t counts) const;
  void grow_slots(const Layer& layer);

  std::uint64_t formed_ = 0;
  std::vector<Layer> layers_;
  std::vector<Step> steps_;
  std::vector<TaskOutcome> outcomes_;  // Of all steps, one after the other.
  std::vector<double> probability_;    // Of all layers, one after the other, and room beyond.
  std::vector<double> amount_;
  std::vector<std::int64_t> key_;
  std::vector<std::uint64_t> counts_;  // Members in use of all groups, in mixed radix.
  std::vector<std::uint32_t> next_;
  std::vector<std::uint32_t> slots_;  // Open addressing: state + 1, or 0.
  std::size_t slots_begin_ = 0;       // First state of the layer that the slots speak of.
  std::vector<std::uint64_t> radix_;
  std::vector<std::uint64_t> digit_;
  std::vector<std::vector<double>> worth_;
  std::vector<double> worth_before_;
};

}  // namespace wattweek::power
