// The page as HTML 5, by the WHATWG's HTML living standard: sections 4.3 (headings and sections),
// 4.9 (tables) and 4.11.1 (details).

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "page_parts.hpp"
#include "page_style.hpp"
#include "wattweek/diag/markup.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// Writes the parts of one page.
class PageWriter {
 public:
  /// Names that may be written from right to left are kept in their place within a sentence.
  explicit PageWriter(const std::vector<std::string>& names) {
    for (const std::string& name : names) {
      if (!is_ascii(name)) isolated_.push_back(diag::markup_text(name));
    }
    std::stable_sort(
        isolated_.begin(), isolated_.end(),
        [](const std::string& a, const std::string& b) { return a.size() > b.size(); });
  }

  void write(const Page& page);
  std::string take() { return std::move(out_); }

 private:
  template <class... Arguments>
  void add(fmt::format_string<Arguments...> format, Arguments&&... arguments) {
    fmt::format_to(std::back_inserter(out_), format, std::forward<Arguments>(arguments)...);
  }

  std::string text(std::string_view words) const;
  void write_head(const Page& page);
  void write_questions(const Page& page);
  void write(const PageSection& section);
  void write(const Paragraph& paragraph) { add("<p>{}</p>\n", text(paragraph.text)); }
  void write(const Subheading& heading) { add("<h3>{}</h3>\n", text(heading.text)); }
  void write(const List& list);
  void write(const NamedTable& named);
  void write(const Figures& figures);
  void write(const Figure& figure);
  void write(const Verbatim& file);
  void write(const Folded& folded);
  void write(const Table& table);
  void write(const std::vector<PageBlock>& blocks) {
    for (const PageBlock& block : blocks) {
      std::visit([this](const auto& kind) { write(kind); }, block);
    }
  }

  std::string out_;
  std::vector<std::string> isolated_;  ///< Markup of names; the longest first.
};

std::string PageWriter::text(std::string_view words) const {
  std::string markup = diag::markup_text(words);
  if (isolated_.empty()) return markup;
  std::string out;
  for (std::size_t at = 0; at < markup.size();) {
    const auto name =
        std::find_if(isolated_.begin(), isolated_.end(), [&](const std::string& candidate) {
          return markup.compare(at, candidate.size(), candidate) == 0;
        });
    if (name == isolated_.end()) {
      out += markup[at++];
    } else {
      out += "<bdi>" + *name + "</bdi>";
      at += name->size();
    }
  }
  return out;
}

void PageWriter::write_head(const Page& page) {
  // Nothing is fetched and nothing is run, whatever a name may hold.
  add("{}<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
      "style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<meta name=\"color-scheme\" content=\"light dark\">\n"
      "<title>{}: what it costs</title>\n<style>\n{}</style>\n</head>\n",
      kPageBegins, diag::markup_text(page.title), page_style());
}

void PageWriter::write_questions(const Page& page) {
  add("<nav aria-label=\"Questions\">\n<ul>\n");
  for (const PageSection& section : page.sections) {
    add("<li><a href=\"#{}\">{}</a></li>\n", section.id, text(section.heading));
  }
  add("</ul>\n</nav>\n");
}

void PageWriter::write(const PageSection& section) {
  add("<section id=\"{}\">\n<h2>{}</h2>\n", section.id, text(section.heading));
  write(section.blocks);
  add("</section>\n");
}

void PageWriter::write(const List& list) {
  add("<ul>\n");
  for (const std::string& item : list.items) add("<li>{}</li>\n", text(item));
  add("</ul>\n");
}

// Tables are wider than a telephone: each scrolls by itself, by keys too.
void PageWriter::write(const NamedTable& named) {
  add("<div class=\"wide\" tabindex=\"0\">\n<table id=\"{}\">\n<caption>{}</caption>\n", named.id,
      text(named.caption));
  write(named.table);
  add("</table>\n</div>\n");
}

// The first column names its row. Figures stand to the right by the style sheet.
void PageWriter::write(const Table& table) {
  add("<thead>\n<tr>");
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const Column& column = table.columns[c];
    const bool is_left = c > 0 && column.align == Align::left;
    if (column.header.empty()) {
      add("<td></td>");
    } else {
      add("<th scope=\"col\"{}>{}</th>", is_left ? " class=\"words\"" : "", text(column.header));
    }
  }
  add("</tr>\n</thead>\n<tbody>\n");
  for (const auto& row : table.rows) {
    add("<tr><th scope=\"row\">{}</th>", text(row.front()));
    for (std::size_t c = 1; c < row.size(); ++c) {
      const bool is_left = table.columns[c].align == Align::left;
      add("<td{}>{}</td>", is_left ? " class=\"words\"" : "", text(row[c]));
    }
    add("</tr>\n");
  }
  add("</tbody>\n");
}

void PageWriter::write(const Figures& figures) {
  const bool side_by_side = figures.figures.size() > 1;
  if (side_by_side) add("<div class=\"side-by-side\">\n");
  for (const Figure& figure : figures.figures) write(figure);
  if (side_by_side) add("</div>\n");
}

void PageWriter::write(const Figure& figure) {
  add("<figure id=\"{}\">\n<figcaption>{}</figcaption>\n{}", figure.name, text(figure.caption),
      drawn(figure, Drawn::in_page));
  if (!figure.reading.empty()) add("<p class=\"reading\">{}</p>\n", text(figure.reading));
  add("<details>\n<summary>The numbers</summary>\n");
  write(NamedTable{"table-" + figure.name, figure.title, figure.numbers});
  add("</details>\n</figure>\n");
}

// Line by line, so that tabs and line ends stay what they are and all else is made safe.
void PageWriter::write(const Verbatim& file) {
  std::string markup;
  std::size_t begin = 0;
  while (begin < file.text.size()) {
    const std::size_t end = std::min(file.text.find_first_of("\t\n", begin), file.text.size());
    std::string_view piece(file.text.data() + begin, end - begin);
    const bool at_line_end = end < file.text.size() && file.text[end] == '\n';
    if (at_line_end && !piece.empty() && piece.back() == '\r') piece.remove_suffix(1);
    markup += diag::markup_text(piece);
    if (end < file.text.size()) markup += file.text[end];
    begin = end + 1;
  }
  auto lines = static_cast<std::size_t>(std::count(file.text.begin(), file.text.end(), '\n'));
  if (!file.text.empty() && file.text.back() != '\n') ++lines;
  add("<details>\n<summary>{} ({})</summary>\n<pre tabindex=\"0\">{}</pre>\n</details>\n",
      text(file.name), counted(lines, "line"), markup);
}

void PageWriter::write(const Folded& folded) {
  add("<details>\n<summary>{}</summary>\n", text(folded.summary));
  write(folded.blocks);
  add("</details>\n");
}

void PageWriter::write(const Page& page) {
  write_head(page);
  add("<body>\n<main>\n<h1>{}</h1>\n<div class=\"answer\">\n", text(page.title));
  for (const std::string& sentence : page.answer) write(Paragraph{sentence});
  add("</div>\n");
  write_questions(page);
  add("<p class=\"on-paper\">What is folded on the screen is not printed: open it first.</p>\n");
  for (const PageSection& section : page.sections) write(section);
  add("</main>\n</body>\n</html>\n");
}

}  // namespace

std::string lay_out_page(const Page& page) {
  PageWriter writer(page.names);
  writer.write(page);
  return writer.take();
}

}  // namespace wattweek::report
