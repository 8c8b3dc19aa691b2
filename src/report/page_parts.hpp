#pragma once
// What a report page is made of, before it is laid out: questions, sentences, pictures with their
// numbers, tables, files. The page and the Markdown lay out the same parts. Names in it are as the
// user wrote them; the layouts make them safe.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "document.hpp"
#include "wattweek/chart/bars.hpp"
#include "wattweek/chart/lines.hpp"
#include "wattweek/chart/load.hpp"
#include "wattweek/chart/months.hpp"
#include "wattweek/chart/week.hpp"
#include "wattweek/report/page.hpp"

namespace wattweek::report {

struct NamedTable {
  std::string id;  ///< Letters, digits, `-` and `_`: another for each of a page.
  std::string caption;
  Table table;
};

/// A picture, what it shows in words, and its numbers.
struct Figure {
  std::string name;         ///< As `NamedTable::id`; the name of its file, too.
  std::string title;        ///< The question that it answers: over the picture that stands alone.
  std::string caption;      ///< The same in a page, where the heading above says the rest.
  std::string alternative;  ///< What is to be seen: for those who cannot.
  std::string reading;      ///< How to read it; may be empty.
  std::variant<chart::Bars, chart::StackedMonths, chart::WeekMap, chart::Lines, chart::LoadDuration>
      picture;  ///< Its frame is filled in when it is drawn.
  Table numbers;
};

/// Pictures to be seen side by side, where there is room.
struct Figures {
  std::vector<Figure> figures;
};

/// A file, in full.
struct Verbatim {
  std::string name;
  std::string text;
};

/// What the blocks after it are about.
struct Subheading {
  std::string text;
};

struct Folded;
using PageBlock = std::variant<Paragraph, List, Subheading, NamedTable, Figures, Verbatim, Folded>;

/// What only some readers want: one click away.
struct Folded {
  std::string summary;
  std::vector<PageBlock> blocks;
};

struct PageSection {
  std::string id;
  std::string heading;
  std::vector<PageBlock> blocks;
};

struct Page {
  std::string title;
  std::vector<std::string> answer;  ///< Sentences.
  std::vector<PageSection> sections;
  /// All names that the user chose, for those among them that are written from right to left.
  std::vector<std::string> names;
};

/// Draws a figure: to stand alone, or within a page that has the style sheet and the heading.
enum class Drawn { alone, in_page };
std::string drawn(const Figure& figure, Drawn how);

/// The whole page.
Page page(const ReportShown& shown);

std::string lay_out_page(const Page& page);

/// Pictures are named as `FOLDER/NAME.svg`; without a folder, left out.
std::string lay_out_page_in_markdown(const Page& page, const std::optional<std::string>& folder);

}  // namespace wattweek::report
