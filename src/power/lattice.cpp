#include "lattice.hpp"

#include <algorithm>
#include <cassert>

namespace wattweek::power {

namespace {

// Up to here states are cheaper kept apart than merged.
constexpr std::size_t kApart = 256;

// Transitions that are remembered for the way back, at most; more would only be needed where
// tasks have thousands of outcomes each.
constexpr std::size_t kMostTransitions = std::size_t{1} << 26U;

std::uint64_t hash(std::int64_t key, std::uint64_t counts) {
  std::uint64_t h = static_cast<std::uint64_t>(key) * 0x9E3779B97F4A7C15U;
  h ^= h >> 32U;
  h = (h + counts) * 0xFF51AFD7ED558CCDU;
  return h ^ (h >> 29U);
}

}  // namespace

bool Lattice::start(const std::vector<std::size_t>& group_members) {
  layers_.clear();
  steps_.clear();
  outcomes_.clear();
  next_.clear();
  radix_.clear();
  digit_.clear();
  std::uint64_t product = 1;
  for (const std::size_t members : group_members) {
    digit_.push_back(product);
    radix_.push_back(members + 1);
    product *= radix_.back();
    if (product > kMostOutcomes) return false;
  }
  make_room(1);
  probability_[0] = 1;
  amount_[0] = 0;
  key_[0] = 0;
  counts_[0] = 0;
  layers_.push_back({0, 1});
  return true;
}

void Lattice::push_layer(std::size_t size) {
  const std::size_t begin = layers_.back().begin + layers_.back().size;
  layers_.push_back({begin, size});
  make_room(begin + size);
}

// Room that was made once is kept: filling it with zeros again would cost as much as the states.
void Lattice::make_room(std::size_t states) {
  if (states <= probability_.size()) return;
  const std::size_t room = std::max(states, 2 * probability_.size());
  probability_.resize(room);
  amount_.resize(room);
  key_.resize(room);
  counts_.resize(room);
}

void Lattice::drop_layer() {
  steps_.pop_back();
  layers_.pop_back();
}

std::uint64_t Lattice::counts_after(const Step& step, std::size_t state,
                                    const TaskOutcome& outcome) const {
  const std::uint64_t counts = counts_[step.from.begin + state];
  return step.group == kNoGroup || outcome.in_use == 0 ? counts : counts + digit_[step.group];
}

bool Lattice::add(const std::vector<TaskOutcome>& outcomes, std::size_t group) {
  const Layer from = layers_.back();
  formed_ += from.size * outcomes.size();
  Step step{Step::Kind::task, from,  {},           outcomes_.size(),
            outcomes.size(),  group, next_.size(), false};
  outcomes_.insert(outcomes_.end(), outcomes.begin(), outcomes.end());
  if (from.size * outcomes.size() <= kApart) {
    push_layer(from.size * outcomes.size());
    step.to = layers_.back();
    add_apart(step);
  } else if (!add_merging(step)) {
    return false;
  }
  steps_.push_back(step);
  return true;
}

void Lattice::add_apart(const Step& step) {
  std::size_t to = step.to.begin;
  for (std::size_t o = 0; o < step.outcomes; ++o) {
    const TaskOutcome& outcome = outcomes_[step.outcomes_begin + o];
    for (std::size_t s = 0; s < step.from.size; ++s, ++to) {
      probability_[to] = probability_[step.from.begin + s] * outcome.probability;
      amount_[to] = amount_[step.from.begin + s] + outcome.amount;
      key_[to] = key_[step.from.begin + s] + outcome.key;
      counts_[to] = counts_after(step, s, outcome);
    }
  }
}

std::size_t Lattice::slot_of(std::int64_t key, std::uint64_t counts) const {
  const std::size_t mask = slots_.size() - 1;
  std::size_t slot = static_cast<std::size_t>(hash(key, counts)) & mask;
  while (slots_[slot] != 0) {
    const std::size_t state = slots_begin_ + slots_[slot] - 1;
    if (key_[state] == key && counts_[state] == counts) break;
    slot = (slot + 1) & mask;
  }
  return slot;
}

void Lattice::grow_slots(const Layer& layer) {
  slots_.assign(slots_.size() * 2, 0);
  for (std::size_t s = 0; s < layer.size; ++s) {
    const std::size_t state = layer.begin + s;
    slots_[slot_of(key_[state], counts_[state])] = static_cast<std::uint32_t>(s + 1);
  }
}

bool Lattice::add_merging(Step& step) {
  const std::size_t transitions = step.from.size * step.outcomes;
  if (transitions > kMostTransitions - next_.size()) return false;
  next_.reserve(next_.size() + transitions);
  push_layer(0);
  Layer& to = layers_.back();
  slots_.assign(4 * kApart, 0);
  slots_begin_ = to.begin;
  for (std::size_t o = 0; o < step.outcomes; ++o) {
    const TaskOutcome& outcome = outcomes_[step.outcomes_begin + o];
    for (std::size_t s = 0; s < step.from.size; ++s) {
      const std::size_t from = step.from.begin + s;
      const std::int64_t key = key_[from] + outcome.key;
      const std::uint64_t counts = counts_after(step, s, outcome);
      const double probability = probability_[from] * outcome.probability;
      std::uint32_t& slot = slots_[slot_of(key, counts)];
      if (slot != 0) {
        probability_[to.begin + slot - 1] += probability;
        next_.push_back(slot - 1);
        continue;
      }
      if (to.size == kMostOutcomes) return false;
      const std::size_t at = to.begin + to.size;
      slot = static_cast<std::uint32_t>(++to.size);
      next_.push_back(slot - 1);
      make_room(at + 1);
      probability_[at] = probability;
      amount_[at] = amount_[from] + outcome.amount;
      key_[at] = key;
      counts_[at] = counts;
      if (2 * to.size > slots_.size()) grow_slots(to);
    }
  }
  step.to = to;
  step.merged = true;
  return true;
}

void Lattice::prepare_worth() {
  worth_.resize(1 + radix_.size());
  for (auto& channel : worth_) channel.assign(states(), 0.0);
}

double Lattice::go_back() {
  const Step& step = steps_.back();
  assert(step.kind == Step::Kind::task);
  const std::size_t size = step.from.size;
  const double* p = &probability_[step.from.begin];
  double contribution = 0;
  for (std::size_t channel = 0; channel < worth_.size(); ++channel) {
    const bool own = channel == kAmountChannel || channel == 1 + step.group;
    worth_before_.assign(size, 0.0);
    for (std::size_t o = 0; o < step.outcomes; ++o) {
      const TaskOutcome& outcome = outcomes_[step.outcomes_begin + o];
      const double added = channel == kAmountChannel ? outcome.amount : outcome.in_use;
      const std::uint32_t* next = step.merged ? &next_[step.next_begin + o * size] : nullptr;
      const bool contributes = own && added != 0;
      double expected = 0;
      for (std::size_t s = 0; s < size; ++s) {
        const double worth = worth_[channel][next != nullptr ? next[s] : o * size + s];
        worth_before_[s] += outcome.probability * worth;
        if (contributes) expected += p[s] * worth;
      }
      if (contributes) contribution += outcome.probability * added * expected;
    }
    worth_[channel].swap(worth_before_);
  }
  next_.resize(step.next_begin);
  outcomes_.resize(step.outcomes_begin);
  drop_layer();
  return contribution;
}

}  // namespace wattweek::power
