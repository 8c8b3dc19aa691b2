#include "row_reader.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

std::string_view field_at(const Fields& fields, std::size_t column) {
  return column < fields.size() ? fields[column] : std::string_view();
}

std::string quoted(std::string_view text) { return "'" + diag::printable(text) + "'"; }

// A full time, but not one of the layout: of another order, or with a zone where the others have
// none.
bool is_other_time(const TimeLayout& layout, std::string_view date) {
  if (layout.epoch) {
    const auto stamp = stamp_of(date);
    return stamp && stamp->has_clock && stamp->form != DateForm::none;
  }
  if (epoch_us(date, '.')) return true;
  const auto stamp = stamp_of(date);
  return stamp && has_possible_date(*stamp) && (stamp->has_clock || layout.clock_column);
}

}  // namespace

RowReader::RowReader(const Layout& layout, const calendar::ZoneRules* zone,
                     const LocalClock::Hours& written_once)
    : layout_(layout), style_(layout.style), factor_(factor_of(layout.unit)) {
  if (zone != nullptr) clock_.emplace(*zone, layout.newest_first, written_once);
}

std::optional<Reading> RowReader::read(const Fields& fields, std::uint64_t line) {
  if (layout_.where && field_at(fields, layout_.where->first) != layout_.where->second) {
    if (!layout_.where_is_all || is_of_other_device(fields, line)) return std::nullopt;
  }
  ++rows_;
  const auto time = row_time(fields, line);
  if (!time) return std::nullopt;
  const auto at = moment(*time);
  if (!at) {
    drop("no-such-hour", line);
    return std::nullopt;
  }
  const double value = value_of(field_at(fields, layout_.value_column), line);
  if (contradiction_) return std::nullopt;
  return Reading{*at, value};
}

std::optional<RowTime> RowReader::row_time(const Fields& fields, std::uint64_t line) {
  const TimeLayout& layout = layout_.time;
  const std::string_view date = field_at(fields, layout.column);
  const auto clock =
      layout.clock_column ? field_at(fields, *layout.clock_column) : std::string_view();
  const auto time = time_of(layout, date, clock, known_date_);
  if (time) return time;
  if (is_other_time(layout, date)) {
    contradict(line, "the time " + quoted(date) + " is not of the kind that the rows before have" +
                         (layout.epoch ? "" : "; see --date-order"));
  } else {
    drop(repeats_headings(fields) ? "repeated-heading" : "no-time", line);
  }
  return std::nullopt;
}

std::optional<Microseconds> RowReader::moment(const RowTime& time) {
  return time.is_utc ? std::optional(time.us) : clock_->at(time.us);
}

double RowReader::value_of(std::string_view field, std::uint64_t line) {
  auto number = number_of(field, style_);
  if (!number && style_.decimal == kNoMark) number = first_with_mark(field, line);
  if (number) {
    if (!number->unit) return usable(number->value, factor_, line);
    if (is_power(*number->unit) == is_power(layout_.unit)) {
      return usable(number->value, factor_of(*number->unit), line);
    }
    contradict(line, "the number " + quoted(field) + " has a unit of " +
                         (is_power(*number->unit) ? "power, the rows before have energy"
                                                  : "energy, the rows before have power") +
                         "; expected one of them throughout");
  } else if (looks_like_number(field)) {
    contradict(line, "the number " + quoted(field) +
                         " is not written as those of the rows before; see --decimal");
  } else {
    drop("no-value", line);
  }
  return kNone;
}

// The first number that is not whole shows what the decimal mark is.
std::optional<Number> RowReader::first_with_mark(std::string_view field, std::uint64_t line) {
  if (!looks_like_number(field)) return std::nullopt;
  MarkEvidence point, comma;
  weigh(field, '.', point);
  weigh(field, ',', comma);
  if (point.either || comma.either) {
    contradict(line, "the number " + quoted(field) +
                         " may be thousands or a fraction; say what the decimal mark is by "
                         "--decimal . or --decimal ,");
    return std::nullopt;
  }
  const bool is_point = point.decimal || comma.thousands;
  style_ = is_point ? NumberStyle{'.', comma.thousands} : NumberStyle{',', point.thousands};
  return number_of(field, style_);
}

// Rows that say nothing of a device, and headings repeated, are of none.
bool RowReader::is_of_other_device(const Fields& fields, std::uint64_t line) {
  const auto& [column, value] = *layout_.where;
  const std::string_view other = field_at(fields, column);
  if (says_no_value(other) || repeats_headings(fields)) return false;
  const bool has_name = column < layout_.names.size() && !layout_.names[column].empty();
  const std::string name =
      has_name ? diag::printable(layout_.names[column]) : std::to_string(column + 1);
  contradict(line, "'" + name + "' has " + quoted(other) + ", the rows before have " +
                       quoted(value) + "; say which to keep by --where " + name + "=VALUE");
  return true;
}

double RowReader::usable(double value, double factor, std::uint64_t line) {
  const double scaled = value * factor;
  if (scaled < 0) {
    drop("negative", line);
    return kNone;
  }
  if (layout_.meaning.kind == Kind::power && scaled > kHighestReading_w) {
    drop("too-high", line);
    return kNone;
  }
  return scaled;
}

bool RowReader::repeats_headings(const Fields& fields) const {
  return !layout_.names.empty() && fields.size() == layout_.names.size() &&
         std::equal(fields.begin(), fields.end(), layout_.names.begin());
}

void RowReader::drop(std::string_view reason, std::uint64_t line) {
  const auto same = std::find_if(dropped_.begin(), dropped_.end(),
                                 [&](const Dropped& d) { return d.reason == reason; });
  if (same != dropped_.end()) {
    ++same->rows;
  } else {
    dropped_.push_back({std::string(reason), 1, line});
  }
}

void RowReader::contradict(std::uint64_t line, std::string message) {
  if (!contradiction_) contradiction_ = Contradiction{line, std::move(message)};
}

}  // namespace wattweek::logs
