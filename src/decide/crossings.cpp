#include "crossings.hpp"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <optional>

#include "wattweek/decide/lifetime.hpp"

namespace wattweek::decide {

namespace {

constexpr std::uintmax_t kMostSteps = 200;

// Two neighbouring differences are followed into the gap between them where they could meet 0
// there.
constexpr double kNear = 2;

// Beyond this fraction of the larger amount a difference is more than what rounding leaves.
constexpr double kRounding = 1e-13;

/// All candidates along the sweep: their criteria at the values that are looked at first.
struct Along {
  const CriteriaAt& criteria_at;
  const std::vector<double>& values;
  std::vector<std::vector<double>> criteria;
};

// Two candidates along the sweep.
class PairAlong {
 public:
  PairAlong(const Along& along, std::size_t first, std::size_t second)
      : criteria_at_(along.criteria_at), values_(along.values), first_(first), second_(second) {
    for (const std::vector<double>& criteria : along.criteria) {
      differences_.push_back(criteria[first_] - criteria[second_]);
      signs_.push_back(sign(criteria));
    }
  }

  std::vector<Crossing> crossings() {
    std::size_t i = 0;
    while (i < values_.size()) {
      if (signs_[i] == 0) {
        i = take_run_of_equality(i);
        continue;
      }
      if (i + 1 < values_.size() && signs_[i + 1] == -signs_[i])
        add_root(values_[i], values_[i + 1]);
      look_for_a_dip(i);
      ++i;
    }
    std::sort(found_.begin(), found_.end());
    std::vector<Crossing> all;
    for (std::size_t c = 0; c < found_.size(); ++c) {
      all.push_back({first_, second_, found_[c], cheaper_below(c)});
    }
    return all;
  }

 private:
  int sign(const std::vector<double>& criteria) const {
    if (nearly_equal(criteria[first_], criteria[second_])) return 0;
    return criteria[first_] < criteria[second_] ? -1 : 1;
  }

  // Half-way to the crossing before, or where there is nothing below, to the one above, on which
  // side it is the other way round.
  std::optional<std::size_t> cheaper_below(std::size_t crossing) const {
    const double at = found_[crossing];
    const double before = crossing == 0 ? values_.front() : found_[crossing - 1];
    const double after = crossing + 1 == found_.size() ? values_.back() : found_[crossing + 1];
    int below = before < at ? sign(criteria_at_(before + (at - before) / 2)) : 0;
    if (below == 0 && at < after) below = -sign(criteria_at_(at + (after - at) / 2));
    if (below == 0) return std::nullopt;
    return below < 0 ? first_ : second_;
  }

  double difference(double value) const {
    const std::vector<double>& criteria = criteria_at_(value);
    return criteria[first_] - criteria[second_];
  }

  bool is_equal(double value) const {
    const std::vector<double>& criteria = criteria_at_(value);
    const double larger = std::max(std::fabs(criteria[first_]), std::fabs(criteria[second_]));
    return std::fabs(criteria[first_] - criteria[second_]) <= kRounding * larger;
  }

  // Equality at one value is a crossing where the sign changes there; over an interval likewise,
  // at its lower end. At an end of the sweep nobody knows the sign beyond, and it counts.
  std::size_t take_run_of_equality(std::size_t begin) {
    std::size_t end = begin;
    while (end < values_.size() && signs_[end] == 0) ++end;
    const bool reaches_the_end = end == values_.size();
    if (begin == 0) {
      if (reaches_the_end || is_equal(values_.front()) || !is_opposite(0, end)) {
        found_.push_back(values_.front());
      } else {
        add_root(values_.front(), values_[end]);
      }
    } else if (reaches_the_end || signs_[begin - 1] == -signs_[end]) {
      const std::size_t equal = first_of_equal_interval(begin, end);
      if (equal < end) {
        found_.push_back(lower_end(values_[equal - 1], values_[equal]));
      } else if (!reaches_the_end || is_opposite(begin - 1, end - 1)) {
        add_root(values_[begin - 1], values_[std::min(end, values_.size() - 1)]);
      } else {
        found_.push_back(lowest_zero(values_[begin - 1], values_.back()));
      }
    }
    return end;
  }

  bool is_opposite(std::size_t i, std::size_t j) const {
    return (differences_[i] < 0) != (differences_[j] < 0);
  }

  // Where a run of values that are nearly equal turns equal but for rounding, at two values or
  // more; the run's end where it never does: then the curves cross at a small angle.
  std::size_t first_of_equal_interval(std::size_t begin, std::size_t end) const {
    for (std::size_t i = begin; i + 1 < end; ++i) {
      if (is_equal(values_[i]) && is_equal(values_[i + 1])) return i;
    }
    return end;
  }

  // Equality begins between `from`, where there is none, and `to`.
  double lower_end(double from, double to) const {
    return lowest(from, to, [this](double value) { return is_equal(value); });
  }

  // An interval of equality between two values that were looked at; a root that is a point stays.
  double lowest_zero(double from, double at) const {
    return lowest(from, at, [this](double value) { return difference(value) == 0; });
  }

  template <class Holds>
  static double lowest(double from, double to, Holds holds) {
    if (!holds(to)) return to;
    for (int step = 0; step < 100; ++step) {
      const double middle = from + (to - from) / 2;
      if (middle <= from || middle >= to) break;
      (holds(middle) ? to : from) = middle;
    }
    return to;
  }

  void add_root(double from, double to) {
    const auto close = [](double a, double b) {
      return std::fabs(a - b) <= 1e-14 * std::max(1.0, std::fabs(a));
    };
    const double at_from = difference(from);
    const double at_to = difference(to);
    if (at_from == 0 || at_to == 0 || (at_from < 0) == (at_to < 0)) {
      found_.push_back(at_to == 0 ? lowest_zero(from, to) : from);
      return;
    }
    std::uintmax_t steps = kMostSteps;
    const auto [low, high] = boost::math::tools::toms748_solve(
        [this](double value) { return difference(value); }, from, to, at_from, at_to, close, steps);
    const double root = std::fabs(difference(low)) <= std::fabs(difference(high)) ? low : high;
    found_.push_back(lowest_zero(from, root));
  }

  // The difference is nearer to 0 here than on both sides: between the values it may reach it.
  void look_for_a_dip(std::size_t i) {
    const std::size_t before = i == 0 ? i : i - 1;
    const std::size_t after = std::min(i + 1, values_.size() - 1);
    const int sign = signs_[i];
    if (signs_[before] != sign || signs_[after] != sign) return;
    const double here = std::fabs(differences_[i]);
    const double falls = std::fabs(differences_[before]) - here;
    const double rises = std::fabs(differences_[after]) - here;
    const bool is_lowest = falls >= 0 && (rises > 0 || after == i);
    if (!is_lowest || here > kNear * std::max(falls, rises)) return;
    std::uintmax_t steps = kMostSteps;
    const double lowest_at = boost::math::tools::brent_find_minima(
                                 [this, sign](double value) { return sign * difference(value); },
                                 values_[before], values_[after], 40, steps)
                                 .first;
    // What is equal but for the last digits only touches.
    if (this->sign(criteria_at_(lowest_at)) != -sign) return;
    add_root(values_[before], lowest_at);
    add_root(lowest_at, values_[after]);
  }

  const CriteriaAt& criteria_at_;
  const std::vector<double>& values_;
  std::size_t first_;
  std::size_t second_;
  std::vector<double> differences_;
  std::vector<int> signs_;
  std::vector<double> found_;
};

}  // namespace

std::vector<Crossing> find_crossings(const CriteriaAt& criteria_at,
                                     const std::vector<double>& values,
                                     std::optional<std::size_t> of) {
  Along along{criteria_at, values, {}};
  for (const double value : values) along.criteria.push_back(criteria_at(value));
  const std::size_t candidates = along.criteria.front().size();
  std::vector<Crossing> all;
  for (std::size_t first = 0; first < candidates; ++first) {
    for (std::size_t second = first + 1; second < candidates; ++second) {
      if (of && first != *of && second != *of) continue;
      const std::vector<Crossing> more = PairAlong(along, first, second).crossings();
      all.insert(all.end(), more.begin(), more.end());
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Crossing& a, const Crossing& b) { return a.at < b.at; });
  return all;
}

}  // namespace wattweek::decide
