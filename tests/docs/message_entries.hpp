#pragma once
// The pages of messages. An entry is one or more messages as they are printed, each in backticks
// on a line of its own, and below them a ```diff block: lines with `-` are wrong, lines with `+`
// right, all others belong to both. A `$` begins a command; else the block is a file, named as in
// the message. What it lacks is added around it, unless the block says ```diff whole.

#include <string>
#include <vector>

#include "markdown.hpp"

namespace wattweek::docs {

struct Entry {
  std::vector<std::string> messages;
  Block example;
};

/// All entries of the pages, in order; fails the test where a message has no example.
std::vector<Entry> message_entries();

/// The messages of the pages' tables, which have no example.
std::vector<std::string> messages_without_example();

/// What is no message: what the pages list as found about a log.
std::vector<std::string> findings();

enum class Side { wrong, right };

/// What the program leaves behind, command by command: the same exit code of all, else -1.
struct Said {
  int exit_code = 0;
  std::string out;
  std::string err;  ///< Places in the entry's file counted as in the block.
};

/// Runs one side of an entry.
Said said_of(const Entry& entry, Side side);

/// Counts the lines that places in a file name from behind the first `lines` lines.
std::string moved_up(const std::string& text, const std::string& file, int lines);

}  // namespace wattweek::docs
