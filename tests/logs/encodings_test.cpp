// Text in its codes: byte-order marks, UTF-16, Latin-1, line ends; and what is no text.

#include <doctest/doctest.h>

#include <random>

#include "told.hpp"

using namespace wattweek::logs;

namespace {

const std::string kLog = "time;power W\n2024-07-01T00:00:00Z;5\n2024-07-01T00:01:00Z;6\n";
const std::string kReadings = "2024-07-01 00:00:00 5\n2024-07-01 00:01:00 6\n";

std::string with(std::string text, const std::string& line_end) {
  std::string result;
  for (const char c : text) result += c == '\n' ? line_end : std::string(1, c);
  return result;
}

std::string utf16(const std::string& text, bool big_end_first) {
  std::string result;
  for (const char c : text) {
    if (big_end_first) result += '\0';
    result += c;
    if (!big_end_first) result += '\0';
  }
  return result;
}

// A line of 100 MB that nobody holds.
class LongLine : public ByteSource {
 public:
  explicit LongLine(char c) : c_(c) {}
  std::size_t read(std::span<char> bytes) override {
    const std::size_t count = std::min(bytes.size(), left_);
    std::fill_n(bytes.begin(), count, c_);
    left_ -= count;
    return count;
  }

 private:
  char c_;
  std::size_t left_ = 100'000'000;
};

std::string problems_of(const LogFile& file) {
  Kept kept;
  const auto got = read_log(file, {}, kept);
  std::string text;
  for (const auto& problem : std::get<std::vector<wattweek::diag::Diagnostic>>(got)) {
    text += wattweek::diag::to_text(problem) + "\n";
  }
  return text;
}

}  // namespace

TEST_CASE("layout 28: a byte-order mark") {
  CHECK(told("\xef\xbb\xbf" + kLog) == R"(columns: separated by ';' (--delimiter)
time: 'time', with UTC or an offset (--columns)
values: 'power W' (--columns)
kind: power in W (--kind, --unit)
2 rows, 2 used
2024-07-01 00:00:00 5
2024-07-01 00:01:00 6
)");
}

TEST_CASE("layout 28: UTF-16 with and without byte-order mark, either end first") {
  CHECK(readings_of("\xff\xfe" + utf16(kLog, false)) == kReadings);
  CHECK(readings_of("\xfe\xff" + utf16(kLog, true)) == kReadings);
  CHECK(readings_of(utf16(kLog, false)) == kReadings);
  CHECK(readings_of(utf16(kLog, true)) == kReadings);
}

TEST_CASE("UTF-16 with letters beyond ASCII and beyond 16 bits") {
  const std::string heading("\x60\x4f\x3d\xd8\x00\xde;\0", 8);  // a Chinese letter, a face
  const Logged log =
      logged("\xff\xfe" + heading + utf16("power\n1700000000;5\n1700000010;6\n", false));
  CHECK(log.problems == "");
  CHECK(log.report.inferred[1] ==
        "time: '\xe4\xbd\xa0\xf0\x9f\x98\x80', seconds since 1970 "
        "(--columns)");
}

TEST_CASE("UTF-16 with a letter of which one byte is 0") {
  const std::string heading = "\xff\xfe" + utf16("time;", false) + std::string("\x00\x01", 2);
  CHECK(told(heading + utf16("\n1700000000;5\n1700000010;6\n", false),
             {.power_column = "\xc4\x80"}) ==
        R"(columns: separated by ';' (--delimiter)
time: 'time', seconds since 1970 (--columns)
values: 'Ā' (--columns)
kind: power in W, since no unit is given (--kind, --unit)
2 rows, 2 used
2023-11-14 22:13:20 5
2023-11-14 22:13:30 6
)");
}

TEST_CASE("UTF-16 with long lines loses none of them") {
  std::string text = "\xff\xfe";
  for (int i = 0; i < 40; ++i) {
    text += utf16(std::to_string(1'700'000'000 + i) + ";5;" +
                      std::string(static_cast<std::size_t>(65'000 + 7 * i), 'x') + "\n",
                  false);
  }
  CHECK(logged(text).readings.size() == 40);
}

TEST_CASE("layout 28: signs of Latin-1") {
  CHECK(told("Zeit;Z\xe4hlerstand;Preis \x80;Grad \xb0\x43\n2024-07-01T00:00:00Z;5,0;1;20\n"
             "2024-07-01T00:15:00Z;5,1;1;20\n2024-07-01T00:30:00Z;5,3;1;20\n") ==
        R"(columns: separated by ';' (--delimiter)
time: 'Zeit', with UTC or an offset (--columns)
values: 'Zählerstand' (--columns)
numbers: decimal comma (--decimal)
kind: a counter that runs on, in kWh, since no unit is given (--kind, --unit)
3 rows, 3 used
2024-07-01 00:00:00 5000
2024-07-01 00:15:00 5100
2024-07-01 00:30:00 5300
)");
}

TEST_CASE("layout 28: lines that end with CRLF, with CR alone, and a last line without end") {
  CHECK(readings_of(with(kLog, "\r\n")) == kReadings);
  CHECK(readings_of(with(kLog, "\r")) == kReadings);
  CHECK(readings_of(kLog.substr(0, kLog.size() - 1)) == kReadings);
  CHECK(readings_of(with(kLog, "\n\n")) == kReadings);
}

TEST_CASE("an empty log, and one of headings alone") {
  CHECK(told("") == "log.csv:1:1: error: there are no rows in this log\n");
  CHECK(told("\n\n# nothing\n") == "log.csv:1:1: error: there are no rows in this log\n");
  CHECK(told("time;power\n") ==
        "log.csv:1:1: error: no row with a date and a number was found; the first line is "
        "'time;power'; expected columns separated by commas, semicolons, tabs or blanks, or "
        "JSON\n");
}

TEST_CASE("what is no text is told by its first bytes") {
  CHECK(
      told("PK\x03\x04\x14") ==
      "log.csv:1:1: error: this is a spreadsheet or zip archive; save the sheet as CSV, or unpack "
      "it first\n");
  CHECK(told("\xd0\xcf\x11\xe0\xa1\xb1") ==
        "log.csv:1:1: error: this is a spreadsheet of an old kind; save the sheet as CSV first\n");
  CHECK(told("\xfd"
             "7zXZ") ==
        "log.csv:1:1: error: this is compressed by xz; unpack it first, or compress it by gzip\n");
  CHECK(told("BZh91AY") ==
        "log.csv:1:1: error: this is compressed by bzip2; unpack it first, or compress it by "
        "gzip\n");
  CHECK(told("\x28\xb5\x2f\xfd") ==
        "log.csv:1:1: error: this is compressed by zstd; unpack it first, or compress it by "
        "gzip\n");
  CHECK(told("%PDF-1.7") == "log.csv:1:1: error: this is a PDF; a log is text: CSV or JSON\n");
}

TEST_CASE("random bytes are refused") {
  std::mt19937 random(1);
  for (int length : {1, 2, 3, 10, 1000, 100'000}) {
    std::string bytes;
    for (int i = 0; i < length; ++i) bytes += static_cast<char>(random() & 0xff);
    CHECK_FALSE(logged(bytes).problems.empty());
  }
  CHECK(
      told(std::string("time\0power", 10)) ==
      "log.csv:1:1: error: this is no text: it has bytes of value 0; a log is text (CSV or JSON), "
      "or that packed by gzip\n");
}

TEST_CASE("a line of 100 MB is refused, and not held") {
  for (const char c : {'x', '5', ',', ' '}) {
    CHECK(problems_of({"log.csv", 0, [c] { return std::make_unique<LongLine>(c); }}) ==
          "log.csv:1:1: error: this line has more than 1048576 bytes; a row of a log is shorter\n");
  }
}

TEST_CASE("a long line far down is refused with its number") {
  std::string text = kLog;
  for (int i = 0; i < 100'100; ++i) text += fmt::format("2024-07-01T01:00:00Z;{}\n", i % 7);
  CHECK(told(text + std::string(5'000'000, '7') + "\n") ==
        "log.csv:100104:1: error: this line has more than 1048576 bytes; a row of a log is "
        "shorter\n");
}

TEST_CASE("a source that fails says why") {
  class Failing : public TextSource {
   public:
    Failing() : TextSource(kLog) {}
    std::string failure() const override { return "the file changed while it was read"; }
  };
  CHECK(problems_of({"log.csv", 0, [] { return std::make_unique<Failing>(); }}) ==
        "log.csv:4:1: error: the file changed while it was read\n");
}
