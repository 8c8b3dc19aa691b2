#pragma once
// The words of messages as they stand in the source: all text between quotes in the files that make
// messages.

#include <string>
#include <string_view>
#include <vector>

namespace wattweek::docs {

struct Literal {
  std::string file;  ///< From the root of the source tree.
  int line = 0;
  std::string text;
};

/// The texts between quotes of a C++ source, those that stand side by side joined to one. Without
/// comments, names of included files and what a text is only searched for.
std::vector<Literal> literals(const std::string& file, std::string_view source);

/// The literals of at least two words in src that become messages, or parts of them.
std::vector<Literal> message_literals();

/// Does the message say the literal? A `{}` of the formatting library stands for anything.
bool says(std::string_view message, std::string_view literal);

}  // namespace wattweek::docs
