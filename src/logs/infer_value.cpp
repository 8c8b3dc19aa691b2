// Which column holds the watts, or the kWh.

#include <algorithm>
#include <cmath>

#include "headings.hpp"
#include "infer.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

constexpr std::size_t kRowsToCompare = 2'000;

struct Candidate {
  std::size_t column = 0;
  Heading heading{};
  ColumnFacts facts{};
};

using Candidates = std::vector<Candidate>;

template <class Condition>
void keep_if_any(Candidates& candidates, Condition&& condition) {
  if (std::any_of(candidates.begin(), candidates.end(), condition)) {
    std::erase_if(candidates, [&](const Candidate& c) { return !condition(c); });
  }
}

bool holds_numbers(const ColumnFacts& facts) {
  const std::size_t said = facts.filled - facts.no_values;
  return said > 0 && facts.numbers * 10 >= said * 6;
}

Candidates candidates_of(const Inference& inference) {
  const Sample& sample = inference.sample;
  const TimeLayout& time = inference.layout.time;
  Candidates found;
  for (std::size_t c = 0; c < sample.columns(); ++c) {
    if (c == time.column || c == time.clock_column) continue;
    if (inference.layout.where && c == inference.layout.where->first) continue;
    Candidate candidate{c, {}, facts_of(sample, c)};
    if (c < sample.names.size()) candidate.heading = heading_of(sample.names[c]);
    const ColumnFacts& facts = candidate.facts;
    if (!holds_numbers(facts) || facts.stamps > 0 || facts.epochs * 2 > facts.filled) continue;
    if (candidate.heading.quantity == Quantity::other || candidate.heading.is_series) continue;
    found.push_back(std::move(candidate));
  }
  return found;
}

// The numbers of a column as they are if the point is the decimal mark; enough to compare columns.
std::vector<double> numbers_in(const Sample& sample, std::size_t column) {
  std::vector<double> numbers;
  for (std::size_t row = 0; row < std::min(sample.rows(), kRowsToCompare); ++row) {
    auto number = number_of(sample.field(row, column), {'.', false});
    if (!number) number = number_of(sample.field(row, column), {',', true});
    numbers.push_back(number ? number->value : std::nan(""));
  }
  return numbers;
}

// 1, 2, 3: numbers of rows.
bool counts_rows(const std::vector<double>& numbers) {
  if (numbers.size() < 3) return false;
  for (std::size_t i = 1; i < numbers.size(); ++i) {
    if (numbers[i] != numbers[i - 1] + 1) return false;
  }
  return true;
}

// Whether all lie between two limits, and not far from each other: volts and hertz of the mains.
bool stays_within(const std::vector<double>& numbers, double least, double most, double spread) {
  double low = most, high = least;
  for (const double number : numbers) {
    if (std::isnan(number)) continue;
    if (number < least || number > most) return false;
    low = std::min(low, number);
    high = std::max(high, number);
  }
  return low <= high && high <= low * spread;
}

bool is_volts(const std::vector<double>& numbers) {
  return stays_within(numbers, 200, 260, 1.2) || stays_within(numbers, 95, 135, 1.2);
}

bool is_hertz(const std::vector<double>& numbers) {
  return stays_within(numbers, 49, 51, 1.03) || stays_within(numbers, 59, 61, 1.03);
}

// The one column that is so goes; where several are, it is not known which.
template <class Condition>
void drop_the_one(Candidates& candidates, Condition&& condition) {
  const auto one = std::find_if(candidates.begin(), candidates.end(), condition);
  if (one != candidates.end() && std::none_of(one + 1, candidates.end(), condition)) {
    candidates.erase(one);
  }
}

// Two columns that tell of the same watts, as means over a short and a long time do.
bool agree(const std::vector<double>& a, const std::vector<double>& b) {
  double sum_a = 0, sum_b = 0, apart = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (std::isnan(a[i]) || std::isnan(b[i])) continue;
    sum_a += a[i];
    sum_b += b[i];
    apart += std::abs(a[i] - b[i]);
  }
  return std::abs(sum_a - sum_b) <= 0.2 * std::max(sum_a, sum_b) && apart <= 0.5 * sum_a;
}

// Where no heading tells: what is plainly no power goes.
void drop_bystanders(const Sample& sample, Candidates& candidates) {
  keep_if_any(candidates,
              [&](const Candidate& c) { return !counts_rows(numbers_in(sample, c.column)); });
  if (candidates.size() > 1) {
    keep_if_any(candidates, [](const Candidate& c) { return !c.facts.constant; });
  }
  if (candidates.size() < 3) return;
  drop_the_one(candidates,
               [&](const Candidate& c) { return is_volts(numbers_in(sample, c.column)); });
  drop_the_one(candidates,
               [&](const Candidate& c) { return is_hertz(numbers_in(sample, c.column)); });
}

void prefer_by_heading(const Inference& inference, Candidates& candidates) {
  const auto is = [](Quantity quantity) {
    return [quantity](const Candidate& c) { return c.heading.quantity == quantity; };
  };
  const auto is_any_energy = [](const Candidate& c) {
    return c.heading.quantity == Quantity::energy || c.heading.quantity == Quantity::counter;
  };
  keep_if_any(candidates, [](const Candidate& c) { return !c.heading.is_out; });
  const LogOptions& options = inference.options;
  const bool wants_energy =
      (options.kind && options.kind != Kind::power) || (options.unit && !is_power(*options.unit));
  if (wants_energy) keep_if_any(candidates, is_any_energy);
  if (options.kind == Kind::counter) keep_if_any(candidates, is(Quantity::counter));
  keep_if_any(candidates, is(Quantity::power));
  keep_if_any(candidates, is_any_energy);
}

Refusal no_value(const Inference& inference) {
  return {"no column holds watts or kWh in most of its rows; there are " + [&] {
    std::vector<std::size_t> all(inference.sample.columns());
    for (std::size_t c = 0; c < all.size(); ++c) all[c] = c;
    return names_of(inference.sample, all);
  }() + "; say which one does by --columns time=NAME,power=NAME or energy=NAME"};
}

Refusal several(const Inference& inference, const Candidates& candidates) {
  std::vector<std::size_t> columns;
  for (const Candidate& candidate : candidates) columns.push_back(candidate.column);
  return {"several columns may hold what was measured: " + names_of(inference.sample, columns) +
              "; say which one by --columns time=NAME,power=NAME or energy=NAME",
          0, columns[1]};
}

std::variant<std::size_t, Refusal> named(const Inference& inference, std::string_view option,
                                         const std::string& name) {
  const auto column = column_named(inference.sample, name);
  if (!column) return no_column(inference.sample, option, name);
  if (holds_numbers(facts_of(inference.sample, *column))) return *column;
  return Refusal{std::string(option) + ": " + column_name(inference.sample, *column) +
                     " holds no numbers, but such as '" +
                     diag::printable(inference.sample.field(0, *column)) + "'",
                 0, *column};
}

std::variant<std::size_t, Refusal> chosen(const Inference& inference) {
  const LogOptions& options = inference.options;
  if (options.power_column) return named(inference, "--columns power", *options.power_column);
  if (options.energy_column) return named(inference, "--columns energy", *options.energy_column);
  Candidates candidates = candidates_of(inference);
  if (candidates.empty()) return no_value(inference);
  prefer_by_heading(inference, candidates);
  const bool told = candidates.front().heading.quantity != Quantity::unsaid;
  if (!told) drop_bystanders(inference.sample, candidates);
  if (candidates.size() == 1) return candidates.front().column;
  const Sample& sample = inference.sample;
  const std::vector<double> first = numbers_in(sample, candidates.front().column);
  const bool all_agree =
      !told && std::all_of(candidates.begin() + 1, candidates.end(), [&](const Candidate& c) {
        return agree(first, numbers_in(sample, c.column));
      });
  if (all_agree) return candidates.front().column;
  return several(inference, candidates);
}

}  // namespace

Step infer_value(Inference& inference) {
  const auto choice = chosen(inference);
  if (const auto* refusal = std::get_if<Refusal>(&choice)) return *refusal;
  inference.layout.value_column = std::get<std::size_t>(choice);
  inference.said.push_back(
      "values: " + column_name(inference.sample, std::get<std::size_t>(choice)) + " (--columns)");
  return std::nullopt;
}

}  // namespace wattweek::logs
