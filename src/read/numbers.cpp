#include "numbers.hpp"

#include <cmath>

namespace wattweek::read {

namespace {

// From here on a share was rather meant in percent.
constexpr double kLeastPercentage = 2;

bool within(double number, Bounds bounds) {
  switch (bounds) {
    case Bounds::any:
      return true;
    case Bounds::not_negative:
      return number >= 0;
    case Bounds::positive:
      return number > 0;
    case Bounds::fraction:
      return number >= 0 && number <= 1;
    case Bounds::rate:
      return number > -1;
  }
  return false;
}

std::string_view bounds_in_words(Bounds bounds) {
  switch (bounds) {
    case Bounds::any:
      return "";
    case Bounds::not_negative:
      return ", not below 0";
    case Bounds::positive:
      return ", above 0";
    case Bounds::fraction:
      return " from 0 to 1";
    case Bounds::rate:
      return ", above -1";
  }
  return "";
}

std::string_view unit_in_words(Unit unit) {
  switch (unit) {
    case Unit::none:
      return "";
    case Unit::watts:
      return ", in W";
    case Unit::kwh:
      return ", in kWh";
    case Unit::money:
      return ", in the tariff's currency";
    case Unit::price:
      return ", in currency per kWh";
    case Unit::fraction:
      return ", as a fraction (0.05 is 5 %)";
    case Unit::minutes:
      return ", in minutes";
    case Unit::kg_per_kwh:
      return ", in kg per kWh";
  }
  return "";
}

std::string in_words(std::string_view form, NumberRule rule) {
  return std::string(form) + std::string(bounds_in_words(rule.bounds)) +
         std::string(unit_in_words(rule.unit));
}

// An integer or a float, as the nearest double.
std::optional<double> plain_number(const toml::node& node) {
  if (const auto integer = node.value_exact<std::int64_t>()) return static_cast<double>(*integer);
  return node.value_exact<double>();
}

std::string hint_for(const Value& value, NumberRule rule) {
  if (const toml::value<std::string>* text = value.node().as_string()) {
    return number_advice(text->get(), rule.unit).value_or("");
  }
  const auto number = plain_number(value.node());
  if (!number || !std::isfinite(*number)) return "";
  if (rule.bounds == Bounds::fraction && *number >= kLeastPercentage && *number <= 100) {
    return percent_advice(value.typed());
  }
  return std::abs(*number) > kLargest ? "no number may be above 1e12" : "";
}

// A number that keeps the rule; what else it is has been reported as `accepted` tells.
std::optional<double> checked(const Value& value, NumberRule rule, const std::string& accepted) {
  if (const auto number = plain_number(value.node())) {
    const bool fits = std::isfinite(*number) && std::abs(*number) <= kLargest;
    if (fits && within(*number, rule.bounds)) return *number + 0.0;  // no -0
  }
  value.refuse(accepted, hint_for(value, rule));
  return std::nullopt;
}

// [13,5, 14,5] is what a range with decimal commas looks like.
std::string count_problem(std::size_t count) {
  std::string problem = "a range has two numbers, not " + std::to_string(count);
  if (count == 3 || count == 4) problem += "; a decimal number has a point, not a comma";
  return problem;
}

}  // namespace

std::string accepted_range(NumberRule rule) {
  return in_words("a number or a range [low, high]", rule);
}

std::string accepted_number(NumberRule rule) { return in_words("a single number", rule); }

std::optional<units::Range<double>> read_range(const Value& value, NumberRule rule) {
  const std::string accepted = accepted_range(rule);
  if (!value.node().is_array()) {
    const auto number = checked(value, rule, accepted);
    return number ? std::optional(units::Range<double>(*number)) : std::nullopt;
  }
  const std::vector<Value> ends = value.elements();
  if (ends.size() != 2) {
    value.refuse(accepted, count_problem(ends.size()));
    return std::nullopt;
  }
  const auto low = checked(ends[0], rule, accepted);
  const auto high = checked(ends[1], rule, accepted);
  if (!low || !high) return std::nullopt;
  if (*low > *high) {
    value.complain("the range is upside down; write [" + ends[1].typed() + ", " + ends[0].typed() +
                   "]");
    return std::nullopt;
  }
  return units::Range<double>(*low, *high);
}

std::optional<double> read_number(const Value& value, NumberRule rule) {
  return checked(value, rule, accepted_number(rule));
}

std::optional<int> read_whole(const Value& value, const WholeRule& rule) {
  const auto number = value.node().value_exact<std::int64_t>();
  if (number && *number >= rule.least && *number <= rule.most) return static_cast<int>(*number);
  const toml::value<std::string>* text = value.node().as_string();
  value.refuse("a whole number from " + std::to_string(rule.least) + " to " +
                   std::to_string(rule.most) + std::string(rule.meaning),
               text == nullptr ? "" : number_advice(text->get(), Unit::none).value_or(""));
  return std::nullopt;
}

std::optional<std::vector<double>> read_series(const Value& value, SeriesRule series,
                                               NumberRule rule) {
  const std::vector<Value> entries = value.elements();
  if (entries.size() != series.count) {
    value.refuse(
        in_words(std::to_string(series.count) + " numbers, " + std::string(series.order), rule),
        value.node().is_array() ? "there are " + std::to_string(entries.size()) : "");
    return std::nullopt;
  }
  std::vector<double> numbers;
  for (const Value& entry : entries) {
    if (const auto number = read_number(entry, rule)) numbers.push_back(*number);
  }
  if (numbers.size() != entries.size()) return std::nullopt;
  return numbers;
}

std::optional<std::vector<double>> read_rising(const Value& value, std::size_t least,
                                               NumberRule rule) {
  const std::string accepted =
      "an array of at least " + std::to_string(least) + (least == 1 ? " number" : " numbers") +
      std::string(bounds_in_words(rule.bounds)) + std::string(unit_in_words(rule.unit)) +
      ", none below the one before";
  const std::vector<Value> entries = value.elements();
  if (!value.node().is_array() || entries.size() < least) {
    value.refuse(accepted);
    return std::nullopt;
  }
  std::vector<double> numbers;
  for (const Value& entry : entries) {
    const auto number = read_number(entry, rule);
    if (!number) continue;
    if (!numbers.empty() && *number < numbers.back()) {
      entry.complain("falls below the entry before; expected " + accepted);
    }
    numbers.push_back(*number);
  }
  if (numbers.size() != entries.size()) return std::nullopt;
  return numbers;
}

}  // namespace wattweek::read
