#include <algorithm>
#include <cstddef>

#include "document.hpp"
#include "wattweek/diag/printable.hpp"
#include "wattweek/report/wrap.hpp"

namespace wattweek::report {
namespace {

using diag::column_count;
using diag::printable;

constexpr std::size_t kGap = 2;          // Blanks between two columns.
constexpr std::size_t kLeastName = 14;   // A column of names narrower than this reads badly ...
constexpr std::size_t kLeastWords = 18;  // ... and so does a column of other words.

std::string blanks(std::size_t count) { return std::string(count, ' '); }

void append_line(std::string& out, std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  out += line + '\n';
}

/// One empty line, unless there is one already.
void append_gap(std::string& out) {
  if (out.size() >= 2 && out.compare(out.size() - 2, 2, "\n\n") != 0) out += '\n';
}

void append_wrapped(std::string& out, const std::string& text, std::size_t columns,
                    const std::string& first) {
  out += hanging(first, printable(text), columns);
}

/// Cells broken into lines, and the widths of the columns.
class Grid {
 public:
  Grid(const Table& table, std::size_t columns) : table_(table), widths_(table.columns.size()) {
    std::vector<std::string> header;
    for (std::size_t i = 0; i < widths_.size(); ++i) header.push_back(table.columns[i].header);
    fit(header, columns);
  }

  bool fits() const { return fits_; }

  std::string text() const {
    std::string out;
    append_row(out, header_, true);
    for (const auto& row : table_.rows) append_row(out, split(row), false);
    return out;
  }

 private:
  using Lines = std::vector<std::string>;

  /// Figures never break, their headers do so at blanks; the first column has what is left. Where
  /// that is too little, other columns of words break too.
  void fit(const std::vector<std::string>& header, std::size_t columns) {
    const std::size_t longest = widest_cell(0);
    const std::size_t least = std::min(longest, kLeastName);
    std::size_t others = width_of_others(header, false);
    if (others + least > columns) others = width_of_others(header, true);
    fits_ = others + least <= columns;
    widths_[0] = fits_ ? std::min(longest, columns - others) : longest;
    for (std::size_t i = 0; i < widths_.size(); ++i) {
      header_.push_back(wrapped(header[i], std::max<std::size_t>(widths_[i], 1)));
    }
  }

  std::size_t widest_cell(std::size_t column) const {
    std::size_t widest = 0;
    for (const auto& row : table_.rows) {
      widest = std::max(widest, column_count(printable(row[column])));
    }
    return widest;
  }

  /// Sets the widths of all columns but the first; their sum, with gaps.
  std::size_t width_of_others(const std::vector<std::string>& header, bool break_words) {
    std::size_t sum = 0;
    for (std::size_t i = 1; i < widths_.size(); ++i) {
      const bool breaks = break_words && table_.columns[i].align == Align::left;
      const std::size_t cells = breaks ? std::min(widest_cell(i), kLeastWords) : widest_cell(i);
      widths_[i] = std::max(header_width(header[i]), cells);
      sum += widths_[i] + kGap;
    }
    return sum;
  }

  /// The least width at which a header takes no more than two lines and no word of it is cut.
  static std::size_t header_width(const std::string& header) {
    std::size_t width = 1;
    for (; width < column_count(header); ++width) {
      const Lines lines = wrapped(header, width);
      if (lines.size() == 1 || (lines.size() == 2 && lines[0] + ' ' + lines[1] == header)) break;
    }
    return width;
  }

  std::vector<Lines> split(const std::vector<std::string>& row) const {
    std::vector<Lines> cells;
    for (std::size_t i = 0; i < row.size(); ++i) {
      cells.push_back(wrapped(printable(row[i]), std::max<std::size_t>(widths_[i], 1)));
    }
    return cells;
  }

  /// A row's figures stand beside the end of a long name, its words begin there and go on below.
  /// Headers all end on one line.
  void append_row(std::string& out, const std::vector<Lines>& cells, bool is_header) const {
    std::size_t above = 0;  // Lines before the one on which the figures stand.
    std::size_t below = 0;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      std::size_t& more = goes_on_below(i, is_header) ? below : above;
      more = std::max(more, cells[i].size() - 1);
    }
    for (std::size_t line = 0; line <= above + below; ++line) {
      std::string whole;
      for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::size_t first = goes_on_below(i, is_header) ? above : above + 1 - cells[i].size();
        const bool is_in = line >= first && line < first + cells[i].size();
        if (i > 0) whole += blanks(kGap);
        whole += padded(is_in ? cells[i][line - first] : "", i);
      }
      append_line(out, whole);
    }
  }

  bool goes_on_below(std::size_t column, bool is_header) const {
    return !is_header && column > 0 && table_.columns[column].align == Align::left;
  }

  std::string padded(const std::string& text, std::size_t column) const {
    const std::string pad = blanks(widths_[column] - std::min(widths_[column], column_count(text)));
    return table_.columns[column].align == Align::left ? text + pad : pad + text;
  }

  const Table& table_;
  std::vector<std::size_t> widths_;
  std::vector<Lines> header_;
  bool fits_ = false;
};

/// For a window too narrow for the table: each row as a list of its figures.
std::string stacked(const Table& table, std::size_t columns) {
  std::string out;
  for (const auto& row : table.rows) {
    if (!row[0].empty()) append_wrapped(out, row[0], columns, "");
    for (std::size_t i = 1; i < row.size(); ++i) {
      if (!row[i].empty())
        append_wrapped(out, table.columns[i].header + ": " + row[i], columns, "  ");
    }
  }
  return out;
}

void append(std::string& out, const Table& table, std::size_t columns) {
  const Grid grid(table, columns);
  append_gap(out);
  out += grid.fits() ? grid.text() : stacked(table, columns);
  append_gap(out);
}

void append(std::string& out, const Paragraph& paragraph, std::size_t columns) {
  append_wrapped(out, paragraph.text, columns, "");
}

void append(std::string& out, const List& list, std::size_t columns) {
  for (const std::string& item : list.items) append_wrapped(out, item, columns, "- ");
}

void append(std::string& out, const Picture& picture, std::size_t columns) {
  const auto fits = [columns](const std::vector<std::string>& lines) {
    return std::all_of(lines.begin(), lines.end(),
                       [columns](const std::string& line) { return line.size() <= columns; });
  };
  append_gap(out);
  append_wrapped(out, picture.title, columns, "");
  if (!fits(picture.narrow)) return append_wrapped(out, "(no room for it here)", columns, "");
  for (const std::string& line : fits(picture.wide) ? picture.wide : picture.narrow) {
    append_line(out, line);
  }
  append_wrapped(out, picture.legend, columns, "");
  append_gap(out);
}

/// Headings stand out by an empty line before them, and in bold where the terminal has it.
void append_heading(std::string& out, const std::string& heading, const Style& style,
                    std::size_t columns) {
  if (style.emphasis) out += "\x1b[1m";
  append_wrapped(out, heading, columns, "");
  if (style.emphasis) out.insert(out.size() - 1, "\x1b[0m");
}

}  // namespace

std::string lay_out_text(const Document& document, const Style& style) {
  const auto width = static_cast<std::size_t>(std::max(style.columns, 20));
  std::string out;
  if (!document.title.empty()) append_heading(out, document.title, style, width);
  for (const Section& section : document.sections) {
    if (!section.heading.empty()) {
      append_gap(out);
      append_heading(out, section.heading, style, width);
    }
    const Block* before = nullptr;
    for (const Block& block : section.blocks) {
      const bool lists = before != nullptr && before->index() == block.index();
      if (lists && std::holds_alternative<List>(block)) append_gap(out);
      std::visit([&](const auto& kind) { append(out, kind, width); }, block);
      before = &block;
    }
  }
  return out;
}

}  // namespace wattweek::report
