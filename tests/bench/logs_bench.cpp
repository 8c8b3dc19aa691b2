// How fast logs of the usual layouts are read, in bytes of decoded text.

#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <zlib.h>

#include <algorithm>
#include <memory>
#include <random>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone_database.hpp"
#include "wattweek/logs/read_log.hpp"

namespace {

using namespace wattweek;
using namespace wattweek::logs;

// Long enough that the 100,000 rows from which the layout is inferred do not count for most.
constexpr int kRows = 1'000'000;

class Text : public ByteSource {
 public:
  explicit Text(const std::string& text) : text_(text) {}
  std::size_t read(std::span<char> bytes) override {
    const std::size_t count = std::min(bytes.size(), text_.size() - at_);
    std::copy_n(text_.begin() + static_cast<std::ptrdiff_t>(at_), count, bytes.begin());
    at_ += count;
    return count;
  }

 private:
  const std::string& text_;
  std::size_t at_ = 0;
};

struct Sum : ReadingSink {
  double sum = 0;
  void begin(const Meaning& /*meaning*/) override { sum = 0; }
  void take(std::span<const Reading> readings) override {
    for (const Reading& reading : readings) sum += reading.value;
  }
};

// A clock that goes on by so many seconds from row to row, from 1 January 2024.
struct Clock {
  int days = 0, h = 0, m = 0, s = 0;

  void go_on(int seconds) {
    s += seconds;
    for (; s >= 60; s -= 60) ++m;
    for (; m >= 60; m -= 60) ++h;
    for (; h >= 24; h -= 24) ++days;
  }
  int month() const { return days / 28 % 12 + 1; }
  int day() const { return days % 28 + 1; }
  int year() const { return 2024 + days / 336; }
  std::string time() const { return fmt::format("{:02}:{:02}:{:02}", h, m, s); }
};

template <class Row>
std::string rows_of(const std::string& headings, int step_s, Row&& row) {
  std::mt19937 random(1);
  std::string text = headings;
  Clock clock;
  for (int i = 0; i < kRows; ++i) {
    text += row(clock, static_cast<double>(random() % 10'000) / 10, i);
    clock.go_on(step_s);
  }
  return text;
}

std::string iso(const Clock& c, char between) {
  return fmt::format("{}-{:02}-{:02}{}{}", c.year(), c.month(), c.day(), between, c.time());
}

std::string packed(const std::string& text) {
  std::string result(text.size() + 1000, '\0');
  z_stream stream{};
  deflateInit2(&stream, 6, Z_DEFLATED, 16 + MAX_WBITS, 8, Z_DEFAULT_STRATEGY);
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
  stream.avail_in = static_cast<uInt>(text.size());
  stream.next_out = reinterpret_cast<Bytef*>(result.data());
  stream.avail_out = static_cast<uInt>(result.size());
  deflate(&stream, Z_FINISH);
  result.resize(result.size() - stream.avail_out);
  deflateEnd(&stream);
  return result;
}

std::string utf16(const std::string& text) {
  std::string result = "\xff\xfe";
  for (const char c : text) result += std::string{c, '\0'};
  return result;
}

LogOptions berlin(LogOptions options = {}) {
  static const auto zone = std::get<calendar::ZoneRules>(calendar::zone_rules(
      "Europe/Berlin", std::chrono::year(1970) / std::chrono::January, 131 * 12));
  options.zone = zone;
  return options;
}

void read(benchmark::State& state, const std::string& text, const LogOptions& options,
          std::size_t decoded_bytes) {
  const LogFile file{"log.csv", text.size(), [&] { return std::make_unique<Text>(text); }};
  for (auto _ : state) {
    Sum sum;
    const auto got = read_log(file, options, sum);
    if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&got)) {
      state.SkipWithError(diag::to_text(problems->front()).c_str());
      return;
    }
    benchmark::DoNotOptimize(sum.sum);
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(decoded_bytes));
}

std::string naive_minutes() {
  return rows_of("time,power\n", 60, [](const Clock& c, double w, int) {
    return fmt::format("{},{}\n", iso(c, ' ').substr(0, 16), w);
  });
}

std::string naive_seconds() {
  return rows_of("time,power\n", 1, [](const Clock& c, double w, int) {
    return fmt::format("{},{}\n", iso(c, 'T'), w);
  });
}

std::string day_first() {
  return rows_of("", 1, [](const Clock& c, double w, int) {
    return fmt::format("{:02}/{:02}/{} {};{};{}\r\n", c.day(), c.month(), c.year(), c.time(), w, w);
  });
}

std::string epochs() {
  return rows_of("", 1, [](const Clock&, double w, int i) {
    return fmt::format("{} {}\n", 1'700'000'000 + i, w);
  });
}

std::string milliseconds() {
  return rows_of("", 1, [](const Clock&, double w, int i) {
    return fmt::format("{},{}\n", 1'700'000'000'123LL + 1000LL * i, w);
  });
}

std::string two_fields() {
  return rows_of("Date;Time;Power_kW;Reactive_kvar;Voltage;Intensity\n", 60,
                 [](const Clock& c, double w, int i) {
                   return fmt::format("{}/{}/{};{};{:.3f};0.128;23{}.150;1.400\n", c.day(),
                                      c.month(), c.year(), c.time(), w / 1000, i % 10);
                 });
}

std::string wide() {
  return rows_of("time,voltage V,current mA,power W,factor,temperature,state\n", 1,
                 [](const Clock& c, double w, int i) {
                   return fmt::format("{},229.{},{},{},0.97,31.5,OK\n", iso(c, ' '), i % 10,
                                      180 + i % 7, w);
                 });
}

std::string change_only() {
  return rows_of("entity_id,state,last_changed\n", 7, [](const Clock& c, double w, int i) {
    const std::string state = i % 50 == 7 ? "unavailable" : fmt::format("{}", w);
    return fmt::format("plug_3,{},{}.123456+00:00\n", state, iso(c, 'T'));
  });
}

std::string two_devices() {
  return rows_of("device,time,power\n", 5, [](const Clock& c, double w, int i) {
    return fmt::format("plug_{},{}Z,{}\n", i % 2, iso(c, 'T'), w);
  });
}

std::string counter() {
  return rows_of("\"time\",\"total kWh\",\"status\"\n", 60, [](const Clock& c, double, int i) {
    return fmt::format("\"{}Z\",\"{:.3f}\",\"OK\"\n", iso(c, 'T'), 75 + i * 0.001);
  });
}

std::string thousands() {
  return rows_of("Zeit;Leistung W\n", 1, [](const Clock& c, double w, int) {
    return fmt::format("{:02}.{:02}.{} {};1.{:03},{}\n", c.day(), c.month(), c.year(), c.time(),
                       static_cast<int>(w), static_cast<int>(w) % 10);
  });
}

std::string twelve_hours() {
  return rows_of("time\tpower\n", 60, [](const Clock& c, double w, int) {
    return fmt::format("{}/{}/{}, {}:{:02}:{:02} {}\t{}\n", c.month(), c.day(), c.year(),
                       (c.h + 11) % 12 + 1, c.m, c.s, c.h < 12 ? "AM" : "PM", w);
  });
}

std::string newest_first() {
  std::string text = "time,power\n";
  for (int i = kRows; i-- > 0;)
    text += fmt::format("2024-{:02}-{:02} {:02}:{:02}:{:02},{}\n", i / 86400 / 28 % 12 + 1,
                        i / 86400 % 28 + 1, i / 3600 % 24, i / 60 % 60, i % 60, i % 77);
  return text;
}

std::string json_objects() {
  return rows_of("[\n", 5,
                 [](const Clock& c, double w, int i) {
                   return fmt::format(
                       "{}{{\"entity\": \"plug_3\", \"state\": \"{}\", "
                       "\"attributes\": {{\"unit\": \"W\"}}, \"time\": \"{}Z\"}}",
                       i > 0 ? ",\n" : "", w, iso(c, 'T'));
                 }) +
         "\n]\n";
}

std::string json_arrays() {
  std::string times = rows_of("{\"time\": [0", 1, [](const Clock&, double, int i) {
    return fmt::format(", {}", 1'700'000'000 + i);
  });
  return times +
         rows_of("], \"power\": [0", 1,
                 [](const Clock&, double w, int) { return fmt::format(", {}", w); }) +
         "]}";
}

// A layout: how its text is made, and what the user says about it. Texts are made when their turn
// comes, since together they are large.
struct LayoutCase {
  const char* name;
  std::string (*text)();
  LogOptions options{};
  std::string (*code)(const std::string&) = nullptr;  // Of the file; null: as it is.
};

void read_layout(benchmark::State& state, const LayoutCase& layout) {
  const std::string text = layout.text();
  const std::string bytes = layout.code != nullptr ? layout.code(text) : text;
  read(state, bytes, layout.options, text.size());
}

bool register_all() {
  const std::vector<LayoutCase> layouts = {
      {"naive minutes", naive_minutes, berlin()},
      {"naive seconds", naive_seconds, berlin()},
      {"day first", day_first, berlin({.date_order = DateOrder::dmy})},
      {"epochs", epochs},
      {"epoch milliseconds", milliseconds},
      {"date and time in two fields", two_fields, berlin()},
      {"wide rows", wide, berlin()},
      {"change-only", change_only},
      {"one of two devices", two_devices, {.where = {{"device", "plug_1"}}}},
      {"counter in quotes", counter},
      {"decimal comma, thousands", thousands, berlin()},
      {"twelve hours", twelve_hours, berlin()},
      {"newest first", newest_first, berlin()},
      {"json objects", json_objects},
      {"json arrays", json_arrays},
      {"gzip", naive_seconds, berlin(), packed},
      {"utf-16", naive_minutes, berlin(), utf16},
  };
  for (const LayoutCase& layout : layouts) {
    const std::string name = std::string("log/") + layout.name;
    benchmark::RegisterBenchmark(name.c_str(), [layout](benchmark::State& state) {
      read_layout(state, layout);
    })->Unit(benchmark::kMillisecond);
  }
  return true;
}

const bool kRegistered = register_all();

}  // namespace
