#include "wattweek/logs/activity_rows.hpp"

#include <algorithm>
#include <array>

#include "fields.hpp"
#include "lines.hpp"
#include "local_clock.hpp"
#include "numbers.hpp"
#include "stamps.hpp"
#include "text_source.hpp"
#include "wattweek/diag/printable.hpp"
#include "words.hpp"

namespace wattweek::logs {
namespace {

using Problems = std::vector<diag::Diagnostic>;

constexpr std::size_t kMostProblems = 50;
constexpr double kMostUnits = 1e6;

std::string quoted(std::string_view text) { return "'" + diag::printable(text) + "'"; }

// Where the headings stand.
struct Columns {
  std::size_t workload = 0;
  std::size_t start = 0;
  std::size_t end = 0;
  std::optional<std::size_t> units{};
};

class ActivityReader {
 public:
  ActivityReader(const LogFile& file, const ActivityOptions& options)
      : file_(file), options_(options), name_(std::make_shared<const std::string>(file.name)) {
    if (options.zone) clock_.emplace(*options.zone, false);
  }

  std::variant<std::vector<ActivityRow>, Problems> read() {
    auto text = open_text(file_);
    if (const auto* reason = std::get_if<std::string>(&text)) {
      report(1, 1, *reason);
      return problems_;
    }
    LineBlocks blocks(std::move(std::get<std::unique_ptr<ByteSource>>(text)));
    for (auto block = blocks.next(); !block.empty(); block = blocks.next()) {
      while (!block.empty() && problems_.size() < kMostProblems) read_line(take_line(block));
    }
    if (!blocks.failure().empty()) report(line_, 1, blocks.failure());
    if (problems_.empty() && !columns_) report(1, 1, "expected the headings workload,start,end");
    if (problems_.empty() && rows_.empty()) report(1, 1, "there are no rows in this file");
    if (!problems_.empty()) return problems_;
    return std::move(rows_);
  }

 private:
  void read_line(std::string_view line) {
    const std::uint64_t number = line_++;
    if (is_silent(line)) return;
    text_ = line;
    if (columns_) {
      split(line, delimiter_, fields_);
      read_row(number);
    } else if (!seen_headings_) {
      read_headings(number);
    }
  }

  void read_headings(std::uint64_t line) {
    seen_headings_ = true;
    for (const char delimiter : {',', ';', '\t'}) {
      split(text_, delimiter, fields_);
      delimiter_ = delimiter;
      const auto workload = heading("workload"), start = heading("start"), end = heading("end");
      if (workload && start && end) {
        columns_ = Columns{*workload, *start, *end, heading("units")};
        return;
      }
    }
    report(line, 1,
           "expected the headings workload,start,end or workload,start,end,units, found " +
               quoted(text_));
  }

  std::optional<std::size_t> heading(std::string_view name) const {
    const auto at = std::find_if(fields_.begin(), fields_.end(),
                                 [&](std::string_view field) { return same_word(field, name); });
    if (at == fields_.end()) return std::nullopt;
    return static_cast<std::size_t>(at - fields_.begin());
  }

  void read_row(std::uint64_t line) {
    ActivityRow row;
    row.workload = std::string(field(columns_->workload));
    const auto start = time_at(columns_->start, "start", line);
    const auto end = time_at(columns_->end, "end", line);
    if (row.workload.empty()) report(line, 1, "workload: expected its id, found nothing");
    if (!units_at(row.units, line) || !start || !end || row.workload.empty()) return;
    row.start_us = *start;
    row.end_us = *end;
    if (row.end_us <= row.start_us) {
      report(line, column_of(columns_->end),
             "end: " + quoted(field(columns_->end)) + " is not after the start " +
                 quoted(field(columns_->start)) + "; expected a later time");
      return;
    }
    rows_.push_back(std::move(row));
  }

  bool units_at(double& units, std::uint64_t line) {
    if (!columns_->units || field(*columns_->units).empty()) return true;
    const std::string_view text = field(*columns_->units);
    const auto number = number_of(text, {});
    if (number && !number->unit && number->value >= 0 && number->value <= kMostUnits) {
      units = number->value;
      return true;
    }
    report(line, column_of(*columns_->units),
           "units: expected a number from 0 to 1000000, found " + quoted(text));
    return false;
  }

  std::optional<Microseconds> time_at(std::size_t column, std::string_view name,
                                      std::uint64_t line) {
    const std::string_view text = field(column);
    const auto reject = [&](const std::string& why) {
      report(line, column_of(column), std::string(name) + ": " + why);
      return std::nullopt;
    };
    if (const auto epoch = epoch_us(text, '.')) return epoch;
    const auto stamp = stamp_of(text);
    if (!stamp || !stamp->has_clock || stamp->form == DateForm::none) {
      return reject("expected a date and time such as 2027-01-31T18:30, found " + quoted(text));
    }
    if (stamp->form == DateForm::numbers && !options_.date_order) {
      return reject(quoted(text) + " may be day first or month first; say which by --date-order");
    }
    const auto local = local_us(*stamp, options_.date_order.value_or(DateOrder::dmy));
    if (!local) return reject("there is no such date: " + quoted(text));
    if (stamp->utc_offset_s) return *local - *stamp->utc_offset_s * kSecond;
    if (!clock_)
      return reject(quoted(text) + " names no zone; say where the clock hangs by --zone");
    const auto at = clock_->at(*local);
    if (!at) return reject("the clocks skipped " + quoted(text));
    return at;
  }

  std::string_view field(std::size_t column) const {
    return column < fields_.size() ? fields_[column] : std::string_view();
  }

  int column_of(std::size_t column) const {
    if (column >= fields_.size()) return static_cast<int>(text_.size()) + 1;
    return static_cast<int>(fields_[column].data() - text_.data()) + 1;
  }

  void report(std::uint64_t line, int column, std::string message) {
    problems_.push_back({{name_, static_cast<int>(line), column}, std::move(message)});
  }

  const LogFile& file_;
  const ActivityOptions& options_;
  std::shared_ptr<const std::string> name_;
  std::optional<LocalClock> clock_;
  Problems problems_;
  std::vector<ActivityRow> rows_;
  std::optional<Columns> columns_;
  bool seen_headings_ = false;
  char delimiter_ = ',';
  std::uint64_t line_ = 1;
  std::string_view text_;
  Fields fields_;
};

}  // namespace

std::variant<std::vector<ActivityRow>, std::vector<diag::Diagnostic>> read_activity(
    const LogFile& file, const ActivityOptions& options) {
  return ActivityReader(file, options).read();
}

}  // namespace wattweek::logs
