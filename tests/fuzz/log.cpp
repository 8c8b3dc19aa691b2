// Whatever the bytes, a log is read or its problems are told, never both and never a crash; its
// readings come in time order, and watts are such as a plug can read.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <memory>
#include <string>

#include "wattweek/calendar/zone_database.hpp"
#include "wattweek/logs/read_log.hpp"

namespace {

using namespace wattweek;
using namespace wattweek::logs;

// Gives the bytes in pieces, as a pipe would.
class Pieces : public ByteSource {
 public:
  Pieces(const std::string& text, std::size_t most) : text_(text), most_(most) {}

  std::size_t read(std::span<char> bytes) override {
    const std::size_t count = std::min({bytes.size(), text_.size() - at_, most_});
    text_.copy(bytes.data(), count, at_);
    at_ += count;
    return count;
  }

 private:
  const std::string& text_;
  std::size_t most_;
  std::size_t at_ = 0;
};

class Judge : public ReadingSink {
 public:
  std::size_t used = 0;

  void begin(const Meaning& meaning) override {
    kind_ = meaning.kind;
    last_us_ = std::numeric_limits<Microseconds>::min();
    used = 0;
  }

  void take(std::span<const Reading> readings) override {
    for (const Reading& reading : readings) {
      if (reading.at_us <= last_us_) std::abort();
      last_us_ = reading.at_us;
      if (std::isnan(reading.value)) continue;
      ++used;
      if (!(reading.value >= 0)) std::abort();
      if (kind_ == Kind::power && reading.value > kHighestReading_w) std::abort();
    }
  }

 private:
  Kind kind_ = Kind::power;
  Microseconds last_us_ = 0;
};

// What the user says, out of one byte.
LogOptions options_of(std::uint8_t byte) {
  static const auto zone = std::get<calendar::ZoneRules>(calendar::zone_rules(
      "Europe/Berlin", std::chrono::year(1970) / std::chrono::January, 131 * 12));
  LogOptions options;
  options.zone = zone;
  if ((byte & 1) != 0) options.kind = static_cast<Kind>(byte / 2 % 3);
  if ((byte & 8) != 0) options.date_order = DateOrder::dmy;
  if ((byte & 16) != 0) options.decimal = ',';
  if ((byte & 32) != 0) options.stamps = Stamps::end;
  if ((byte & 64) != 0) options.unit = (byte & 1) != 0 && byte / 2 % 3 > 0 ? Unit::wh : Unit::kw;
  if ((byte & 128) != 0) options.where = {"2", "a"};
  return options;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 2) return 0;
  const std::string text(data + 2, data + size);
  const std::size_t piece = data[1] == 0 ? text.size() + 1 : data[1];
  const LogFile file{"log.csv", text.size(), [&] { return std::make_unique<Pieces>(text, piece); }};
  Judge judge;
  const auto got = read_log(file, options_of(data[0]), judge);
  if (const auto* report = std::get_if<LogReport>(&got)) {
    if (report->used != judge.used || report->used > report->rows) std::abort();
  } else {
    const auto& problems = std::get<std::vector<diag::Diagnostic>>(got);
    if (problems.empty()) std::abort();
    for (const diag::Diagnostic& problem : problems) (void)diag::to_text(problem);
  }
  return 0;
}
