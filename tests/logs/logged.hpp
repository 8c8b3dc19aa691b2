#pragma once
// Logs as texts, read, and what came out.

#include <cmath>
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone_database.hpp"
#include "wattweek/logs/read_log.hpp"

namespace wattweek::logs {

/// Bytes of a text.
class TextSource : public ByteSource {
 public:
  explicit TextSource(std::string text) : text_(std::move(text)) {}

  std::size_t read(std::span<char> bytes) override {
    const std::size_t count = std::min(bytes.size(), text_.size() - at_);
    text_.copy(bytes.data(), count, at_);
    at_ += count;
    return count;
  }

 private:
  std::string text_;
  std::size_t at_ = 0;
};

/// Keeps all readings.
struct Kept : ReadingSink {
  Meaning meaning;
  std::vector<Reading> readings;

  void begin(const Meaning& m) override {
    meaning = m;
    readings.clear();
  }
  void take(std::span<const Reading> more) override {
    readings.insert(readings.end(), more.begin(), more.end());
  }
};

inline calendar::ZoneRules zone_of(const std::string& name) {
  return std::get<calendar::ZoneRules>(
      calendar::zone_rules(name, std::chrono::year(1970) / std::chrono::January, 131 * 12));
}

/// A log that was read, or why it was not.
struct Logged {
  std::vector<Reading> readings;
  LogReport report;
  std::string problems;  ///< `FILE:LINE:COLUMN: error: MESSAGE`, a line each.
};

inline Logged logged(const std::string& text, const LogOptions& options = {},
                     const std::string& name = "log.csv") {
  const LogFile file{name, text.size(), [text] { return std::make_unique<TextSource>(text); }};
  Kept kept;
  auto got = read_log(file, options, kept);
  Logged result;
  if (auto* report = std::get_if<LogReport>(&got)) {
    result.report = std::move(*report);
    result.readings = std::move(kept.readings);
  } else {
    for (const auto& problem : std::get<std::vector<diag::Diagnostic>>(got)) {
      result.problems += diag::to_text(problem) + "\n";
    }
  }
  return result;
}

}  // namespace wattweek::logs
