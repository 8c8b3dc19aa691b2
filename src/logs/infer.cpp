#include "infer.hpp"

#include <algorithm>
#include <charconv>

#include "wattweek/diag/printable.hpp"
#include "words.hpp"

namespace wattweek::logs {
namespace {

// Enough to know a column by; the finer questions are put to all rows.
constexpr std::size_t kRowsForFacts = 2'000;
constexpr std::size_t kTexts = 50;
constexpr std::size_t kShownNames = 12;

void count(std::string_view field, ColumnFacts& facts) {
  if (says_no_value(field)) {
    ++facts.no_values;
    return;
  }
  if (looks_like_number(field)) {
    ++facts.numbers;
    facts.epochs += epoch_us(field, '.') || epoch_us(field, ',');
    // A number of eight or more digits may be a date as well.
    if (field.size() < 8 && field.find_first_of("./") == std::string_view::npos) return;
  }
  if (const auto stamp = stamp_of(field)) {
    const bool has_date = has_possible_date(*stamp);
    facts.stamps += has_date && stamp->has_clock;
    facts.dates += has_date && !stamp->has_clock;
    facts.clocks += stamp->form == DateForm::none;
    facts.zoned += stamp->utc_offset_s.has_value();
  } else if (!looks_like_number(field) && facts.texts.size() < kTexts &&
             std::find(facts.texts.begin(), facts.texts.end(), field) == facts.texts.end()) {
    facts.texts.push_back(field);
  }
}

}  // namespace

std::string column_name(const Sample& sample, std::size_t column) {
  if (column < sample.names.size() && !sample.names[column].empty()) {
    return "'" + diag::printable(sample.names[column]) + "'";
  }
  return "column " + std::to_string(column + 1);
}

std::optional<std::size_t> column_named(const Sample& sample, const std::string& name) {
  const auto& names = sample.names;
  if (const auto at = std::find(names.begin(), names.end(), name); at != names.end()) {
    return static_cast<std::size_t>(at - names.begin());
  }
  const auto alike = std::find_if(names.begin(), names.end(),
                                  [&](const std::string& n) { return same_word(n, name); });
  if (alike != names.end()) return static_cast<std::size_t>(alike - names.begin());
  std::size_t number = 0;
  const char* const end = name.data() + name.size();
  const auto [stop, error] = std::from_chars(name.data(), end, number);
  if (error == std::errc{} && stop == end && number >= 1 && number <= sample.columns()) {
    return number - 1;
  }
  return std::nullopt;
}

Refusal no_column(const Sample& sample, std::string_view option, const std::string& name) {
  std::vector<std::size_t> all(sample.columns());
  for (std::size_t c = 0; c < all.size(); ++c) all[c] = c;
  return {std::string(option) + ": there is no column '" + diag::printable(name) + "'; there are " +
          names_of(sample, all)};
}

std::string where_option(const Sample& sample, std::size_t column) {
  const bool has_name = column < sample.names.size() && !sample.names[column].empty();
  return "--where " +
         (has_name ? diag::printable(sample.names[column]) : std::to_string(column + 1)) + "=VALUE";
}

std::string names_of(const Sample& sample, const std::vector<std::size_t>& columns) {
  std::string text;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (i == kShownNames) return text + " and " + std::to_string(columns.size() - i) + " more";
    text += (i > 0 ? ", " : "") + column_name(sample, columns[i]);
  }
  return text;
}

ColumnFacts facts_of(const Sample& sample, std::size_t column) {
  ColumnFacts facts;
  std::string_view first;
  for (std::size_t row = 0; row < std::min(sample.rows(), kRowsForFacts); ++row) {
    const std::string_view field = sample.field(row, column);
    if (field.empty()) continue;
    if (facts.filled++ == 0) first = field;
    if (field != first) facts.constant = false;
    count(field, facts);
  }
  return facts;
}

std::vector<std::string_view> different_fields(const Sample& sample, std::size_t column,
                                               std::size_t most) {
  std::vector<std::string_view> fields;
  for (std::size_t row = 0; row < sample.rows() && fields.size() < most; ++row) {
    const std::string_view field = sample.field(row, column);
    if (says_no_value(field)) continue;
    // The one met last is the likeliest.
    if (std::find(fields.rbegin(), fields.rend(), field) == fields.rend()) fields.push_back(field);
  }
  return fields;
}

std::vector<RowTime> times_of(const Inference& inference) {
  const TimeLayout& time = inference.layout.time;
  const Sample& sample = inference.sample;
  std::vector<RowTime> times;
  times.reserve(sample.rows());
  KnownDate known;
  for (std::size_t row = 0; row < sample.rows(); ++row) {
    const auto clock =
        time.clock_column ? sample.field(row, *time.clock_column) : std::string_view();
    const auto at = time_of(time, sample.field(row, time.column), clock, known);
    if (at) times.push_back(*at);
  }
  return times;
}

}  // namespace wattweek::logs
