// Whether rows of several devices, or of several kinds, stand among each other.

#include <algorithm>
#include <array>

#include "headings.hpp"
#include "infer.hpp"
#include "wattweek/diag/printable.hpp"
#include "words.hpp"

namespace wattweek::logs {
namespace {

constexpr std::size_t kShownValues = 8;
constexpr std::size_t kMostKinds = 50;

using Values = std::vector<std::string_view>;

// Words for how a device, or a reading, is: they tell no rows of different kinds apart.
bool is_state(std::string_view value) {
  constexpr std::array<std::string_view, 20> kStates = {
      "on",   "off",      "ok",      "true",      "false",  "yes",    "no",
      "idle", "active",   "standby", "open",      "closed", "valid",  "good",
      "bad",  "measured", "warn",    "estimated", "actual", "warning"};
  return std::any_of(kStates.begin(), kStates.end(),
                     [&](std::string_view state) { return same_word(value, state); });
}

bool is_named_series(const Sample& sample, std::size_t column) {
  return column < sample.names.size() && heading_of(sample.names[column]).is_series;
}

// Numbers of rows and other marks of one row each are many from the beginning.
bool are_of_single_rows(const Sample& sample, std::size_t column, const Values& values) {
  if (values.size() < kMostKinds) return false;
  std::size_t rows = 0;
  for (; rows < sample.rows() && sample.field(rows, column) != values.back(); ++rows) {
  }
  return rows < 2 * kMostKinds;
}

// A column of names, or of numbers under a heading for them, each in several rows.
bool tells_apart(const Sample& sample, std::size_t column, const ColumnFacts& facts,
                 const Values& values) {
  if (values.size() < 2 || sample.rows() < 2 * values.size()) return false;
  if (are_of_single_rows(sample, column, values)) return false;
  if (is_named_series(sample, column)) return facts.stamps == 0;
  const bool holds_names = facts.texts.size() > 1 && facts.numbers * 2 <= facts.filled;
  return sample.names.empty() && holds_names &&
         !std::all_of(values.begin(), values.end(), is_state);
}

// Half of the rows or more have the time of the row before: several rows belong to one time.
bool times_repeat(const Inference& inference) {
  std::vector<Microseconds> times;
  for (const RowTime& time : times_of(inference)) times.push_back(time.us);
  std::sort(times.begin(), times.end());
  const auto distinct =
      static_cast<std::size_t>(std::unique(times.begin(), times.end()) - times.begin());
  return distinct * 3 <= times.size() * 2;
}

std::string shown(const Values& values) {
  std::string text;
  for (std::size_t i = 0; i < values.size() && i < kShownValues; ++i) {
    text += (i > 0 ? ", " : "") + diag::printable(values[i]);
  }
  return values.size() > kShownValues ? text + ", ..." : text;
}

void keep(Inference& inference, std::size_t column, const std::string& value) {
  inference.layout.where = {column, value};
  inference.layout.where_is_all = false;
  const Sample& all = inference.sample;
  Sample kept = all.filtered([&](std::size_t row) { return all.field(row, column) == value; });
  inference.sample = std::move(kept);
}

// All rows so far are of one device: one of another may come yet.
void stay(Inference& inference, std::size_t column, std::string_view value) {
  if (inference.layout.where) return;
  inference.layout.where = {column, std::string(value)};
  inference.layout.where_is_all = true;
}

Step keep_where_asked(Inference& inference) {
  const auto& [name, value] = *inference.options.where;
  const auto column = column_named(inference.sample, name);
  if (!column) return no_column(inference.sample, "--where", name);
  const Values values = different_fields(inference.sample, *column, kMostKinds);
  const std::size_t rows = inference.sample.rows();
  keep(inference, *column, value);
  if (inference.sample.rows() > 0) return std::nullopt;
  return Refusal{"--where: none of the first " + std::to_string(rows) + " rows has '" +
                 diag::printable(value) + "' in " + column_name(inference.sample, *column) +
                 "; there are " + shown(values)};
}

// The one of several kinds of rows that is named "power".
std::optional<std::string> named_power(const Values& values) {
  Values names;
  for (const std::string_view text : values) {
    if (heading_of(text).quantity == Quantity::power) names.push_back(text);
  }
  return names.size() == 1 ? std::optional(std::string(names.front())) : std::nullopt;
}

}  // namespace

Step infer_where(Inference& inference) {
  if (inference.options.where) return keep_where_asked(inference);
  const Sample& sample = inference.sample;
  for (std::size_t c = 0; c < sample.columns(); ++c) {
    if (c == inference.layout.time.column) continue;
    const ColumnFacts facts = facts_of(sample, c);
    if (facts.numbers * 2 > facts.filled && !is_named_series(sample, c)) continue;
    const Values values = different_fields(sample, c, kMostKinds);
    if (values.size() == 1 && is_named_series(sample, c)) stay(inference, c, values.front());
    const bool apart = tells_apart(sample, c, facts, values) ||
                       (facts.texts.size() > 1 && facts.numbers == 0 && times_repeat(inference));
    if (!apart) continue;
    if (const auto power = named_power(values)) {
      inference.said.push_back("rows: those with '" + diag::printable(*power) + "' in " +
                               column_name(sample, c) + " (" + where_option(sample, c) + ")");
      keep(inference, c, *power);
      return std::nullopt;
    }
    return Refusal{"rows of several kinds stand among each other: " + column_name(sample, c) +
                       " has " + shown(values) + "; say which to keep by " +
                       where_option(sample, c),
                   0, c};
  }
  return std::nullopt;
}

}  // namespace wattweek::logs
