// What is no text, or an odd one.
#include "support.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;

namespace {

std::string profile_problems(const std::string& text) { return shown(read_profile(text).problems); }

}  // namespace

TEST_CASE("a file that is no UTF-8 text is refused at the first byte that shows it") {
  CHECK(profile_problems(std::string("[watts]\nidle = 1\0\n", 18)) ==
        "box.toml:2:9: error: not a text file: it holds a NUL byte; expected TOML text in UTF-8");
  CHECK(profile_problems("# \xC3\xA4\nname = \"Sm\xE5holding\"\n") ==
        "box.toml:2:11: error: not UTF-8 text from here on; expected TOML text: save it as UTF-8");
  CHECK(profile_problems(std::string("\xFF\xFE[\0w\0", 6)) ==
        "box.toml:1:1: error: the text is UTF-16; expected UTF-8: save it as UTF-8");
  CHECK(profile_problems("\x7F"
                         "ELF") ==
        "box.toml:1:1: error: expected KEY = VALUE, [TABLE] or [[TABLE]], or a comment after #");
}

TEST_CASE("every kind of malformed UTF-8 is found") {
  for (const std::string bytes : {"\x80", "\xC0\x80", "\xC3", "\xE0\x80\x80", "\xED\xA0\x80",
                                  "\xE2\x82", "\xF0\x80\x80\x80", "\xF4\x90\x80\x80", "\xF5"}) {
    CHECK(profile_problems("#" + bytes) ==
          "box.toml:1:2: error: not UTF-8 text from here on; expected TOML text: save it as UTF-8");
  }
  CHECK(profile_problems(
            "# \xED\x9F\xBF \xEE\x80\x80 \xF0\x90\x80\x80 \xF4\x8F\xBF\xBF\n[watts]\nidle = 1") ==
        "");
}

TEST_CASE("a byte order mark and line ends of two characters change nothing") {
  CHECK(profile_problems("\xEF\xBB\xBF[watts]\r\nidle = 10\r\n") == "");
  CHECK(profile_problems("\xEF\xBB\xBF[watts]\r\nidle = -1\r\n") ==
        "box.toml:2:8: error: watts.idle = -1: expected a number or a range [low, high], not "
        "below 0, in W");
}

TEST_CASE("a column counts characters, not bytes") {
  CHECK(profile_problems("name = \"größer\" # ü\nwatts = { off = 1, \"ü\" = 2, idle = 3 }\n") ==
        "box.toml:2:20: error: unknown key watts.ü: expected off, sleep, idle, busy, max, curve, "
        "at_load or week");
}

TEST_CASE("an empty file is told what it lacks") {
  CHECK(profile_problems("") ==
        "box.toml:1:1: error: watts.idle is missing: expected a table [watts] with idle = WATTS");
  CHECK(shown(read_tariff("").problems) ==
        "day.toml:1:1: error: band is missing: expected at least one [[band]] with name and price\n"
        "day.toml:1:1: error: currency is missing: expected the three capital letters of a "
        "currency (ISO 4217) in quotes, such as \"EUR\"");
}

TEST_CASE("a long value is shown by its beginning, and one of several lines by its first") {
  CHECK(profile_problems("[watts]\nidle = \"" + std::string(100, 'x') + "\"\n") ==
        "box.toml:2:8: error: watts.idle = \"" + std::string(59, 'x') +
            "...: expected a number or a range [low, high], not below 0, in W");
  CHECK(profile_problems("[watts]\nidle = [\n1,\n2,\n3]\n") ==
        "box.toml:2:8: error: watts.idle = [...: expected a number or a range [low, high], not "
        "below 0, in W; a range has two numbers, not 3; a decimal number has a point, not a comma");
}

TEST_CASE("a key of many parts is refused before it can exhaust the stack") {
  std::string key = "a";
  for (int i = 0; i < 100'000; ++i) key += ".a";
  const std::string problem = "error: a key of more than 16 parts; no key here has more than 5";
  CHECK(profile_problems("[" + key + "]\n") == "box.toml:1:35: " + problem);
  CHECK(profile_problems("# 'quotes \"\n" + key + " = 1\n") == "box.toml:2:34: " + problem);
  CHECK(profile_problems("x = { " + key + " = 1 }\n") == "box.toml:1:40: " + problem);
}

TEST_CASE("dots in texts, comments and numbers are no parts of a key") {
  const std::string dots(100, '.');
  CHECK(profile_problems(
            "name = \"" + dots + "\" # " + dots +
            "\n[watts]\nat_load = [0.1, 0.2, 0.3, 0.4, "
            "0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8]\n") == "");
  CHECK(profile_problems("name = '" + dots + "'\n[watts]\nidle = 1\n") == "");
  CHECK(profile_problems("name = \"\"\"" + dots + "\\\"\"\"\"\n[watts]\nidle = 1\n") == "");
}

TEST_CASE("brackets without end are refused") {
  CHECK(profile_problems("x = " + std::string(100'000, '[')) ==
        "box.toml:1:261: error: brackets are nested too deeply");
}

TEST_CASE("control characters in a file never reach the terminal") {
  CHECK(profile_problems("\"\\u001B[31m\" = 1\n[watts]\nidle = 1\n") ==
        "box.toml:1:1: error: unknown key \\x1B[31m: expected name, capacity, meter, watts, groups "
        "or increments");
}
