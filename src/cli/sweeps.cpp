#include "cli/sweeps.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "cli/outcome.hpp"

namespace wattweek::cli {
namespace {

constexpr int kMostPoints = 1'000'000'000;
constexpr double kMostRows = 1e12;
constexpr Limits kValues{0, 1e9, "a number from 0 to 1e9"};

/// FACTOR, LOW, HIGH and POINTS, as they are written.
struct Parts {
  std::string factor;
  std::string low;
  std::string high;
  std::optional<std::string> points;
};

std::optional<Parts> parts_of(const std::string& text) {
  const std::size_t equals = text.find('=');
  const std::size_t dots = equals == text.npos ? text.npos : text.find("..", equals);
  if (dots == text.npos) return std::nullopt;
  Parts parts{text.substr(0, equals), text.substr(equals + 1, dots - equals - 1), "", {}};
  const std::size_t colon = text.find(':', dots);
  parts.high = text.substr(dots + 2, colon == text.npos ? text.npos : colon - dots - 2);
  if (colon != text.npos) parts.points = text.substr(colon + 1);
  return parts;
}

std::variant<decide::Factor, Misuse> factor_of(const model::Study& study, const std::string& name) {
  if (const auto factor = decide::factor_named(study, name)) return *factor;
  const std::vector<std::string> names = decide::factor_names(study);
  return Misuse{fmt::format("--vary: no factor '{}'{}", name,
                            suggestion(name, {names.begin(), names.end()}))};
}

std::optional<Misuse> read_numbers(const Parts& parts, decide::Sweep& sweep) {
  for (const auto& [text, target] :
       {std::pair{&parts.low, &sweep.low}, {&parts.high, &sweep.high}}) {
    const auto value = number("vary", *text, kValues);
    if (const auto* misuse = std::get_if<Misuse>(&value)) return *misuse;
    *target = std::get<double>(value);
  }
  if (sweep.low >= sweep.high) {
    return Misuse{fmt::format("--vary: {}..{} does not rise; accepted is LOW below HIGH", parts.low,
                              parts.high)};
  }
  if (!parts.points) return std::nullopt;
  const auto points = whole_number("vary", *parts.points, 2, kMostPoints);
  if (const auto* misuse = std::get_if<Misuse>(&points)) return *misuse;
  sweep.points = static_cast<std::size_t>(std::get<int>(points));
  return std::nullopt;
}

std::variant<decide::Sweep, Misuse> sweep_of(const model::Study& study, const std::string& text) {
  const auto parts = parts_of(text);
  if (!parts) {
    return Misuse{fmt::format(
        "--vary: found '{}', accepted is FACTOR=LOW..HIGH or FACTOR=LOW..HIGH:POINTS, such as "
        "price=0.5..2:16",
        text)};
  }
  const auto factor = factor_of(study, parts->factor);
  if (const auto* misuse = std::get_if<Misuse>(&factor)) return *misuse;
  decide::Sweep sweep;
  sweep.factor = std::get<decide::Factor>(factor);
  if (auto misuse = read_numbers(*parts, sweep)) return *misuse;
  return sweep;
}

}  // namespace

std::variant<std::vector<decide::Sweep>, Misuse> sweeps_of(const model::Study& study,
                                                           const Arguments& arguments) {
  std::vector<decide::Sweep> sweeps;
  double rows = 1;
  for (const std::string& text : arguments.list("vary")) {
    const auto sweep = sweep_of(study, text);
    if (const auto* misuse = std::get_if<Misuse>(&sweep)) return *misuse;
    sweeps.push_back(std::get<decide::Sweep>(sweep));
    rows *= static_cast<double>(sweeps.back().points);
    const auto same = [&sweeps](const decide::Sweep& other) {
      return other.factor == sweeps.back().factor;
    };
    if (std::any_of(sweeps.begin(), sweeps.end() - 1, same)) {
      return Misuse{fmt::format("--vary: the factor {} is given twice",
                                decide::name_of(study, sweeps.back().factor))};
    }
  }
  if (rows > kMostRows) {
    return Misuse{fmt::format("--vary: {:.0f} rows are too many; accepted are up to {:.0f}", rows,
                              kMostRows)};
  }
  return sweeps;
}

}  // namespace wattweek::cli
