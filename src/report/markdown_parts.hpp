#pragma once
// Parts of a document in Markdown, each with an empty line after it.

#include <string>
#include <string_view>

#include "document.hpp"

namespace wattweek::report {

/// Text in which no character means anything to Markdown or HTML.
std::string plain_markdown(std::string_view text);

void append_markdown(std::string& out, const Table& table);
void append_markdown(std::string& out, const Paragraph& paragraph);
void append_markdown(std::string& out, const List& list);
void append_markdown(std::string& out, const Picture& picture);

}  // namespace wattweek::report
