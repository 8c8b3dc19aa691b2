// docs/messages.md and docs/command-messages.md against the program and its source: each example is
// told exactly so, each right one is read without a word, and no message is left out.

#include <doctest/doctest.h>

#include <algorithm>

#include "message_entries.hpp"
#include "message_literals.hpp"

namespace wattweek::docs {
namespace {

constexpr int kWrongInput = 2;

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

bool is_note(const std::string& message) { return message.find(": note: ") != message.npos; }

TEST_CASE("messages: each wrong example is told in exactly the words of the page") {
  const std::vector<Entry> entries = message_entries();
  CHECK(entries.size() > 100);
  for (const Entry& entry : entries) {
    CAPTURE(where(entry.example));
    const Said said = said_of(entry, Side::wrong);
    CHECK(said.err == joined(entry.messages));
    if (std::all_of(entry.messages.begin(), entry.messages.end(), is_note)) {
      CHECK(said.exit_code == 0);
    } else {
      CHECK(said.exit_code == kWrongInput);
      CHECK(said.out == "");
    }
  }
}

TEST_CASE("messages: each right example is read without an error and without a note") {
  for (const Entry& entry : message_entries()) {
    CAPTURE(where(entry.example));
    const Said said = said_of(entry, Side::right);
    CHECK(said.err == "");
    CHECK(said.exit_code == 0);
  }
}

// What stands in the same files and is no message: other output, words that are searched for, and
// a refusal that neither a command line nor TOML can provoke.
const std::vector<std::pair<std::string, std::string>> kNoMessages{
    {"src/cli/check.cpp", "{}: ok ({})"},
    {"src/cli/check.cpp", "study: {}, {}, {}"},
    {"src/cli/check.cpp", "watts by hour of the week"},
    {"src/cli/check.cpp", "price band"},
    {"src/cli/console.cpp", "wattweek: reckoning {}, {:.0f} % done"},
    {"src/cli/files.cpp", "holds a zero byte"},
    {"src/cli/new.cpp", "My home"},
    {"src/cli/new.cpp",
     "Assumed, since nothing else was given. Each file says beside the figure how to find your "
     "own:"},
    {"src/cli/new.cpp", "\nNext, see what they say:\n"},
    {"src/cli/new.cpp", "  wattweek compare {}\n\n"},
    {"src/cli/outcome.hpp", "the command line or an input file is wrong"},
    {"src/cli/outcome.hpp", "all else"},
    {"src/cli/report_files.cpp", "the pictures"},
    {"src/cli/shipped_list.cpp", "mean {} W, {} kWh a year"},
    {"src/cli/shipped_list.cpp", ", asleep {}"},
    {"src/cli/shipped_list.cpp", ", off {}"},
    {"src/cli/shipped_list.cpp", "price band"},
    {"src/cli/shipped_list.cpp", "Profiles, for profile = \"shipped:NAME\" in a study:\n"},
    {"src/cli/shipped_list.cpp", "\nTariffs, for tariff = \"shipped:NAME\" in a study:\n"},
    {"src/logs/numbers.cpp", "no data"},
    {"src/logs/stamps.cpp", "T ,t"},
    {"src/read/slips.cpp", "per kwh"},
    {"src/read/syntax_error.cpp", "Error while parsing "},
};

bool is_no_message(const Literal& literal) {
  return std::any_of(kNoMessages.begin(), kNoMessages.end(), [&literal](const auto& each) {
    return each.first == literal.file && each.second == literal.text;
  });
}

std::vector<std::string> all_messages() {
  std::vector<std::string> messages = messages_without_example();
  for (std::string& finding : findings()) messages.push_back(std::move(finding));
  for (const Entry& entry : message_entries()) {
    messages.insert(messages.end(), entry.messages.begin(), entry.messages.end());
  }
  return messages;
}

// Where the literal stands, and what it says.
std::string shown(const Literal& literal) {
  return literal.file + ":" + std::to_string(literal.line) + ": \"" + literal.text + '"';
}

TEST_CASE("messages: all that the source can say stands on the pages") {
  const std::vector<std::string> messages = all_messages();
  const std::vector<Literal> literals = message_literals();
  CHECK(literals.size() > 300);
  std::size_t exceptions = 0;
  for (const Literal& literal : literals) {
    const auto says_it = [&literal](const std::string& message) {
      return says(message, literal.text);
    };
    const bool is_told = std::any_of(messages.begin(), messages.end(), says_it);
    exceptions += is_no_message(literal) ? 1U : 0U;
    CHECK_MESSAGE((is_told || is_no_message(literal)), "on no page: " << shown(literal));
    CHECK_MESSAGE(!(is_told && is_no_message(literal)), "on a page: " << shown(literal));
  }
  CHECK_MESSAGE(exceptions == kNoMessages.size(), "kNoMessages lists what the source has not");
}

// Is the literal more than the beginning that all messages share?
bool is_telling(const Literal& literal) {
  const std::string& text = literal.text;
  return text.find("error: ") == text.npos && std::count(text.begin(), text.end(), ' ') > 1;
}

TEST_CASE("messages: what stands without an example is in the source") {
  const std::vector<Literal> literals = message_literals();
  const std::vector<std::string> messages = messages_without_example();
  CHECK(messages.size() > 5);
  for (const std::string& message : messages) {
    const auto is_said = [&message](const Literal& literal) {
      return is_telling(literal) && says(message, literal.text);
    };
    CHECK_MESSAGE(std::any_of(literals.begin(), literals.end(), is_said), message);
  }
}

TEST_CASE("messages: a source's texts are found, joined, and left out where only searched for") {
  const std::vector<Literal> found = literals("a.cpp", R"(#include "not this.hpp"
// "not this"
f('"', 1'000, "one "
  "two\n", g("three"));
if (holds(text, "not this")) say("\"four\"");
)");
  REQUIRE(found.size() == 3);
  CHECK(shown(found[0]) == "a.cpp:3: \"one two\n\"");
  CHECK(found[1].text == "three");
  CHECK(found[2].text == "\"four\"");
  CHECK(found[2].line == 5);
}

TEST_CASE("messages: a placeholder stands for anything, and all else is in its order") {
  CHECK(says("--years: found 'x', accepted is 1", "--{}: found '{}', accepted is {}"));
  CHECK(says("there are 3", "there are "));
  CHECK(says("an array [ {...} ]", "an array [ {...} ]"));
  CHECK_FALSE(says("--years: accepted is 1, found 'x'", "--{}: found '{}', accepted is {}"));
  CHECK_FALSE(says("nothing", "there are "));
}

TEST_CASE("messages: places are counted from the first line that the page shows") {
  CHECK(moved_up("a.toml:12:3: error: the band at a.toml:9:1", "a.toml", 2) ==
        "a.toml:10:3: error: the band at a.toml:7:1");
  CHECK(moved_up("b.toml:12:3: error: x", "a.toml", 2) == "b.toml:12:3: error: x");
}

}  // namespace
}  // namespace wattweek::docs
