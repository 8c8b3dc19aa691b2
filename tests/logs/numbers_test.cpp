// Numbers as logs write them, one by one.

#include "logs/numbers.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <random>
#include <string>

using namespace wattweek::logs;

namespace {

constexpr NumberStyle kPoint = {'.', false};
constexpr NumberStyle kPointGroups = {'.', true};
constexpr NumberStyle kComma = {',', false};
constexpr NumberStyle kCommaGroups = {',', true};
constexpr NumberStyle kNone = {kNoMark, false};

// "decimal", "thousands", "either" or "none", for '.' and for ','.
std::string weighed(const std::string& field) {
  std::string text;
  for (const char mark : {'.', ','}) {
    MarkEvidence evidence;
    weigh(field, mark, evidence);
    text += evidence.decimal     ? "decimal "
            : evidence.thousands ? "thousands "
            : evidence.either    ? "either "
                                 : "none ";
  }
  return text;
}

// Digits in groups of three, with these marks.
std::string written(long whole, int hundredths, const std::string& group, char decimal) {
  std::string digits = std::to_string(whole);
  for (int at = static_cast<int>(digits.size()) - 3; at > 0; at -= 3) {
    digits.insert(static_cast<std::size_t>(at), group);
  }
  return fmt::format("{}{}{:02}", digits, decimal, hundredths);
}

}  // namespace

TEST_CASE("a number is read under its style alone") {
  CHECK(number_of("12.5", kPoint)->value == 12.5);
  CHECK(number_of("12,5", kComma)->value == 12.5);
  CHECK_FALSE(number_of("12,5", kPoint));
  CHECK_FALSE(number_of("12.5", kComma));
  CHECK_FALSE(number_of("12.5", kNone));
  CHECK(number_of("12", kNone)->value == 12);
  CHECK(number_of("1,234.5", kPointGroups)->value == 1234.5);
  CHECK_FALSE(number_of("1,234.5", kPoint));
  CHECK(number_of("1.234,5", kCommaGroups)->value == 1234.5);
}

TEST_CASE("thousands marks stand before three digits and nowhere else") {
  CHECK(number_of("1,234,567", kPointGroups)->value == 1'234'567);
  for (const char* const field : {"1,23", "1,2345", ",123", "1,,234", "1.5,234", "1,234,", "1,"}) {
    CAPTURE(field);
    CHECK_FALSE(number_of(field, kPointGroups));
  }
}

TEST_CASE("what is no number") {
  for (const char* const field :
       {"", "-", "+", ".", "-.", "e5", "inf", "nan", "infinity", "0x10", "1e", "1e+", "--1", "1-",
        "12 V", "12 kW h", "1e999", "1 2", "twelve"}) {
    CAPTURE(field);
    CHECK_FALSE(number_of(field, kPoint));
    CHECK_FALSE(looks_like_number(field));
  }
  CHECK_FALSE(number_of(std::string(65, '1'), kPoint));
}

TEST_CASE("numbers of chance are read back from however they are written") {
  std::mt19937 random(7);
  for (int i = 0; i < 20'000; ++i) {
    const auto whole = static_cast<long>(random() % 10'000'000) >> (random() % 24);
    const int hundredths = static_cast<int>(random() % 100);
    const double value = static_cast<double>(whole * 100 + hundredths) / 100;
    CHECK(number_of(written(whole, hundredths, "", '.'), kPoint)->value == value);
    CHECK(number_of(written(whole, hundredths, ",", '.'), kPointGroups)->value == value);
    CHECK(number_of(written(whole, hundredths, ".", ','), kCommaGroups)->value == value);
    CHECK(number_of(written(whole, hundredths, "'", '.'), kPoint)->value == value);
    CHECK(number_of(written(whole, hundredths, "\xe2\x80\xaf", ','), kComma)->value == value);
    CHECK(number_of("-" + written(whole, hundredths, "", ','), kComma)->value == -value);
  }
}

TEST_CASE("units behind numbers, upper and lower case alike") {
  CHECK(number_of("12.5 kW", kPoint)->unit == Unit::kw);
  CHECK(number_of("12.5kwh", kPoint)->unit == Unit::kwh);
  CHECK(number_of("12.5 WH", kPoint)->unit == Unit::wh);
  CHECK(number_of("12.5 Watt", kPoint)->unit == Unit::w);
  CHECK_FALSE(number_of("12.5", kPoint)->unit);
}

TEST_CASE("what a mark can be in a number") {
  CHECK(weighed("1,234") == "none either ");
  CHECK(weighed("1.234") == "either none ");
  CHECK(weighed("123.456") == "either none ");
  CHECK(weighed("0.234") == "decimal none ");
  CHECK(weighed("00.234") == "decimal none ");
  CHECK(weighed(".234") == "decimal none ");
  CHECK(weighed("1234.567") == "decimal none ");
  CHECK(weighed("1,23") == "none decimal ");
  CHECK(weighed("1,2345") == "none decimal ");
  CHECK(weighed("-1.234") == "either none ");
  CHECK(weighed("1.234.567") == "thousands none ");
  CHECK(weighed("1.234,5") == "thousands decimal ");
  CHECK(weighed("1,234.5") == "decimal thousands ");
  CHECK(weighed("1'234.567") == "decimal none ");
  CHECK(weighed("1 234") == "none none ");
  CHECK(weighed("1.234 kWh") == "either none ");
  CHECK(weighed("1.5e3") == "decimal none ");
}

TEST_CASE("words for no value, upper and lower case alike") {
  for (const char* const word :
       {"", "-", "--", "?", "unavailable", "Unknown", "NONE", "null", "NaN", "N/A"}) {
    CAPTURE(word);
    CHECK(says_no_value(word));
  }
  CHECK_FALSE(says_no_value("0"));
  CHECK_FALSE(says_no_value("off"));
}
