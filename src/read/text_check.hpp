#pragma once
// Is a file a text that may be parsed at all?

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace wattweek::read {

struct TextFault {
  std::size_t offset = 0;
  std::string problem;
};

/// The first thing that makes it no UTF-8 text, or a key of so many parts that the tree would
/// be deeper than the stack; nothing where the text may be parsed.
std::optional<TextFault> text_fault(std::string_view text);

}  // namespace wattweek::read
