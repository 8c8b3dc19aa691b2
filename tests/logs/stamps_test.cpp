// Time stamps, one by one.

#include "logs/stamps.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <array>
#include <chrono>
#include <random>
#include <string>

using namespace wattweek::logs;

namespace {

// A moment of chance, and how the standard library counts it.
struct Moment {
  int year, month, day, hour, minute, second;

  Microseconds us() const {
    using namespace std::chrono;
    const sys_days date = std::chrono::year(year) / month / day;
    return date.time_since_epoch().count() * kDay + ((hour * 60 + minute) * 60 + second) * kSecond;
  }
};

Moment moment_of(std::mt19937& random) {
  const auto up_to = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  return {up_to(2000, 2098), up_to(1, 12), up_to(1, 28), up_to(0, 23), up_to(0, 59), up_to(0, 59)};
}

Microseconds read(const std::string& text, DateOrder order) {
  CAPTURE(text);
  const auto stamp = stamp_of(text);
  REQUIRE(stamp);
  REQUIRE(stamp->has_clock);
  const auto at = local_us(*stamp, order);
  REQUIRE(at);
  return *at - stamp->utc_offset_s.value_or(0) * kSecond;
}

constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                 "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

}  // namespace

TEST_CASE("moments of chance are read back from however they are written") {
  std::mt19937 random(3);
  for (int i = 0; i < 5'000; ++i) {
    const Moment m = moment_of(random);
    const std::string clock = fmt::format("{:02}:{:02}:{:02}", m.hour, m.minute, m.second);
    const std::string month = kMonths[static_cast<std::size_t>(m.month - 1)];
    const Microseconds us = m.us();
    const auto ymd = DateOrder::ymd, dmy = DateOrder::dmy, mdy = DateOrder::mdy;
    CHECK(read(fmt::format("{}-{:02}-{:02}T{}", m.year, m.month, m.day, clock), ymd) == us);
    CHECK(read(fmt::format("{}/{}/{} {}", m.year, m.month, m.day, clock), ymd) == us);
    CHECK(read(fmt::format("{:02}.{:02}.{} {}", m.day, m.month, m.year, clock), dmy) == us);
    CHECK(read(fmt::format("{}/{}/{:02} {}", m.month, m.day, m.year % 100, clock), mdy) == us);
    CHECK(read(fmt::format("{:02}-{:02}-{:02} {}", m.year % 100, m.month, m.day, clock), ymd) ==
          us);
    CHECK(read(fmt::format("{:02}{}{} {}", m.day, month, m.year, clock), ymd) == us);
    CHECK(read(fmt::format("{} {}, {} {}", month, m.day, m.year, clock), ymd) == us);
    CHECK(read(fmt::format("{}{:02}{:02}T{:02}{:02}{:02}", m.year, m.month, m.day, m.hour, m.minute,
                           m.second),
               ymd) == us);
    CHECK(read(fmt::format("{}-{:02}-{:02}, {}:{:02}:{:02} {}", m.year, m.month, m.day,
                           (m.hour + 11) % 12 + 1, m.minute, m.second, m.hour < 12 ? "AM" : "pm"),
               ymd) == us);
    CHECK(read(fmt::format("{}-{:02}-{:02}T{}.25+05:45", m.year, m.month, m.day, clock), ymd) ==
          us + kSecond / 4 - (5 * 60 + 45) * 60 * kSecond);
  }
}

TEST_CASE("what is no time stamp") {
  for (const char* const text : {"",
                                 "12.5",
                                 "2024",
                                 "2024-10",
                                 "27.10",
                                 "2024-10-27T",
                                 "2024-10-27T2",
                                 "2024-10-27 25:00",
                                 "2024-10-27 24:01",
                                 "2024-10-27 12:60",
                                 "2024-10-27 12:00:60",
                                 "2024-10-27 12:00 XY",
                                 "2024-10/27 12:00",
                                 "2024-10-27 12:00 +1",
                                 "2024-10-27 12:00+25:00",
                                 "2024-10-27 13:00 PM",
                                 "2024-10-27 00:30 AM",
                                 "27 Brumaire 2024 12:00",
                                 "1:2:3:4",
                                 "12:00 of clock",
                                 "2024-10-27x12:00"}) {
    CAPTURE(text);
    const auto stamp = stamp_of(text);
    const bool is_time = stamp && stamp->has_clock;
    CHECK_FALSE(is_time);
  }
}

TEST_CASE("dates that there are not") {
  for (const char* const text : {"2023-02-29 12:00", "2024-13-01 12:00", "2024-00-10 12:00",
                                 "2024-04-31 12:00", "1969-04-30 12:00", "2099-01-01 00:00"}) {
    CAPTURE(text);
    REQUIRE(stamp_of(text));
    CHECK_FALSE(local_us(*stamp_of(text), DateOrder::ymd));
    CHECK_FALSE(has_possible_date(*stamp_of(text)));
  }
  CHECK(local_us(*stamp_of("2024-02-29 24:00"), DateOrder::ymd) ==
        local_us(*stamp_of("2024-03-01 00:00"), DateOrder::ymd));
}

TEST_CASE("a clock time alone has no date") {
  const auto stamp = stamp_of("00:15");
  REQUIRE(stamp);
  CHECK(stamp->form == DateForm::none);
  CHECK(stamp->clock_us == 900 * kSecond);
}

TEST_CASE("epochs are told by their size") {
  CHECK(epoch_us("1700000000", '.') == 1'700'000'000'000'000);
  CHECK(epoch_us("1700000000.5", '.') == 1'700'000'000'500'000);
  CHECK(epoch_us("1700000000,5", ',') == 1'700'000'000'500'000);
  CHECK(epoch_us("1700000000123", '.') == 1'700'000'000'123'000);
  CHECK(epoch_us("1700000000123456", '.') == 1'700'000'000'123'456);
  CHECK(epoch_us("1700000000123456789", '.') == 1'700'000'000'123'456);
  CHECK(epoch_us("1700000000.1234567", '.') == 1'700'000'000'123'456);
  for (const char* const text : {"", "0", "-1700000000", "45000100", "17000000000", "1700000000x",
                                 "1700000000.5x", "99999999999999999999"}) {
    CAPTURE(text);
    CHECK_FALSE(epoch_us(text, '.'));
  }
  CHECK(epoch_unit("1700000000.5") == "seconds");
  CHECK(epoch_unit("1700000000123") == "milliseconds");
  CHECK(epoch_unit("946684800000") == "milliseconds");
  CHECK(epoch_unit("1700000000123456") == "microseconds");
  CHECK(epoch_unit("1700000000123456789") == "nanoseconds");
}
