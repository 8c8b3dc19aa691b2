// Whether rows of several devices, or of several kinds, stand among each other.

#include <algorithm>

#include "headings.hpp"
#include "infer.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

constexpr std::size_t kShownValues = 8;

// A column of names, each in many rows, that tells rows apart.
bool tells_apart(const Sample& sample, std::size_t column, const ColumnFacts& facts) {
  if (facts.texts.size() < 2 || facts.numbers * 2 > facts.filled) return false;
  if (facts.filled < 2 * facts.texts.size()) return false;
  return column >= sample.names.size() || heading_of(sample.names[column]).is_series;
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

std::string shown(const std::vector<std::string_view>& values) {
  std::string text;
  for (std::size_t i = 0; i < values.size() && i < kShownValues; ++i) {
    text += (i > 0 ? ", " : "") + diag::printable(values[i]);
  }
  return values.size() > kShownValues ? text + ", ..." : text;
}

void keep(Inference& inference, std::size_t column, const std::string& value) {
  inference.layout.where = {column, value};
  const Sample& all = inference.sample;
  Sample kept = all.filtered([&](std::size_t row) { return all.field(row, column) == value; });
  inference.sample = std::move(kept);
}

Step keep_where_asked(Inference& inference) {
  const auto& [name, value] = *inference.options.where;
  const auto column = column_named(inference.sample, name);
  if (!column) return no_column(inference.sample, "--where", name);
  const ColumnFacts facts = facts_of(inference.sample, *column);
  keep(inference, *column, value);
  if (inference.sample.rows() > 0) return std::nullopt;
  return Refusal{"--where: no row of the first 100000 has '" + diag::printable(value) + "' in " +
                 column_name(inference.sample, *column) + "; there are " + shown(facts.texts)};
}

// The one of several kinds of rows that is named "power".
std::optional<std::string> named_power(const ColumnFacts& facts) {
  std::vector<std::string_view> names;
  for (const std::string_view text : facts.texts) {
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
    const bool apart = tells_apart(sample, c, facts);
    if (!apart && !(facts.texts.size() > 1 && facts.numbers == 0 && times_repeat(inference))) {
      continue;
    }
    if (const auto power = named_power(facts)) {
      inference.said.push_back("rows: those with '" + *power + "' in " + column_name(sample, c) +
                               " (--where COLUMN=VALUE)");
      keep(inference, c, *power);
      return std::nullopt;
    }
    return Refusal{"rows of several kinds stand among each other: " + column_name(sample, c) +
                       " has " + shown(facts.texts) + "; say which to keep by --where COLUMN=VALUE",
                   0, c};
  }
  return std::nullopt;
}

}  // namespace wattweek::logs
