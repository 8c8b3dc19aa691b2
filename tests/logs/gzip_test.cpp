// Logs that are packed by gzip (RFC 1952).

#include <doctest/doctest.h>

#include "told.hpp"

using namespace wattweek::logs;

namespace {

template <std::size_t N>
std::string bytes(const char (&literal)[N]) {
  return {literal, N - 1};
}

// "time,power" and four rows of 1 July 2024, 5 to 8 W, as python3's gzip packs them.
const std::string kPacked = bytes(
    "\x1f\x8b\x08\x00\x00\x00\x00\x00\x02\x03\x2b\xc9\xcc\x4d\xd5\x29\xc8\x2f\x4f\x2d\xe2\x32"
    "\x32\x30\x32\xd1\x35\x30\xd7\x35\x30\x0c\x31\x30\xb0\x02\xa3\x28\x1d\x53\x74\x61\x43\xb0"
    "\xb0\x19\xba\xb0\x11\x58\xd8\x1c\x5d\xd8\x18\x2c\x6c\xc1\x05\x00\x30\xbb\xe9\x55\x67\x00"
    "\x00\x00");
// The same in two members, the cut in the middle of a row.
const std::string kTwoMembers = bytes(
    "\x1f\x8b\x08\x00\x00\x00\x00\x00\x02\x03\x2b\xc9\xcc\x4d\xd5\x29\xc8\x2f\x4f\x2d\xe2\x32"
    "\x32\x30\x32\xd1\x35\x30\xd7\x35\x30\x0c\x31\x30\xb0\x02\xa3\x28\x1d\x53\xa8\x30\x00\x56"
    "\xf4\xf6\x75\x28\x00\x00\x00\x1f\x8b\x08\x00\x00\x00\x00\x00\x02\x03\x33\xd7\x35\x30\x0c"
    "\x31\x30\xb0\x32\x30\xb4\x32\x30\x88\xd2\x31\xe3\x32\x32\x30\x32\xd1\x35\x30\x87\x09\x1b"
    "\x81\x85\xcd\xd1\x85\x8d\xc1\xc2\x16\x5c\x00\x8b\xcb\xb8\x54\x3f\x00\x00\x00");

const std::string kReadings =
    "2024-07-01 00:00:00 5\n2024-07-01 00:01:00 6\n2024-07-01 00:02:00 7\n"
    "2024-07-01 00:03:00 8\n";

}  // namespace

TEST_CASE("a log packed by gzip is unpacked") {
  CHECK(told(kPacked, {}, "log.csv.gz") == R"(columns: separated by ',' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
4 rows, 4 used
2024-07-01 00:00:00 5
2024-07-01 00:01:00 6
2024-07-01 00:02:00 7
2024-07-01 00:03:00 8
)");
}

TEST_CASE("several gzip members are one log") { CHECK(readings_of(kTwoMembers) == kReadings); }

TEST_CASE("gzip data that end early are told, wherever they end") {
  for (std::size_t kept = 2; kept < kPacked.size(); ++kept) {
    CAPTURE(kept);
    const std::string problems = logged(kPacked.substr(0, kept)).problems;
    CHECK(problems.find("error: its gzip data end too early") != std::string::npos);
  }
}

TEST_CASE("gzip data that are damaged are told") {
  std::string damaged = kPacked;
  damaged[30] = static_cast<char>(damaged[30] ^ 0x55);
  CHECK(logged(damaged).problems.find("error: its gzip data are damaged") != std::string::npos);
  std::string wrong_sum = kPacked;
  wrong_sum[wrong_sum.size() - 8] = static_cast<char>(wrong_sum[wrong_sum.size() - 8] ^ 1);
  CHECK(logged(wrong_sum).problems.find("error: its gzip data are damaged") != std::string::npos);
}

TEST_CASE("bytes that are no member behind the last one are told") {
  CHECK(logged(kPacked + "rubbish").problems.find("error: its gzip data are damaged") !=
        std::string::npos);
}

TEST_CASE("zeros behind the last member are padding") {
  CHECK(readings_of(kPacked + std::string(512, '\0')) == kReadings);
}
