// The report in Markdown: tables as in GitHub Flavored Markdown, spec 0.29, section 4.10; fenced
// code as in CommonMark 0.30, section 4.5.

#include <algorithm>

#include "markdown_parts.hpp"
#include "page_parts.hpp"

namespace wattweek::report {
namespace {

/// Writes blocks; pictures are named in the folder, if there is one.
class MarkdownWriter {
 public:
  explicit MarkdownWriter(const std::optional<std::string>& folder) : folder_(folder) {}

  void write(const std::vector<PageBlock>& blocks) {
    for (const PageBlock& block : blocks) {
      std::visit([this](const auto& kind) { write(kind); }, block);
    }
  }
  void heading(std::string_view marks, std::string_view text) {
    out_.append(marks).append(" ").append(plain_markdown(text)).append("\n\n");
  }
  void write(const Paragraph& paragraph) { append_markdown(out_, paragraph); }
  std::string take() {
    out_.pop_back();  // The last block's empty line.
    return std::move(out_);
  }

 private:
  void write(const List& list) { append_markdown(out_, list); }
  void write(const Subheading& subheading) { heading("###", subheading.text); }
  void write(const NamedTable& named) {
    append_markdown(out_, Paragraph{named.caption + ":"});
    append_markdown(out_, named.table);
  }
  void write(const Figures& figures) {
    for (const Figure& figure : figures.figures) write(figure);
  }
  void write(const Figure& figure);
  void write(const Verbatim& file);
  void write(const Folded& folded) {
    heading("###", folded.summary);
    write(folded.blocks);
  }

  const std::optional<std::string>& folder_;
  std::string out_{kMarkdownBegins};
};

void MarkdownWriter::write(const Figure& figure) {
  append_markdown(out_, Paragraph{figure.title});
  if (folder_) {
    out_ += "![" + plain_markdown(figure.alternative) + "](" + *folder_ + "/" + figure.name +
            ".svg)\n\n";
  }
  if (!figure.reading.empty()) append_markdown(out_, Paragraph{figure.reading});
  append_markdown(out_, figure.numbers);
}

// A fence longer than any in the file, so that the file cannot end it.
void MarkdownWriter::write(const Verbatim& file) {
  std::size_t longest = 2;
  std::size_t run = 0;
  for (const char c : file.text) {
    run = c == '`' ? run + 1 : 0;
    longest = std::max(longest, run);
  }
  const std::string fence(longest + 1, '`');
  append_markdown(out_, Paragraph{file.name + ":"});
  out_ += fence + "toml\n" + file.text;
  if (!file.text.empty() && file.text.back() != '\n') out_ += '\n';
  out_ += fence + "\n\n";
}

}  // namespace

std::string lay_out_page_in_markdown(const Page& page, const std::optional<std::string>& folder) {
  MarkdownWriter writer(folder);
  writer.heading("#", page.title);
  for (const std::string& sentence : page.answer) writer.write(Paragraph{sentence});
  for (const PageSection& section : page.sections) {
    writer.heading("##", section.heading);
    writer.write(section.blocks);
  }
  return writer.take();
}

}  // namespace wattweek::report
