#include <fmt/format.h>

#include <algorithm>

#include "document.hpp"
#include "factor_words.hpp"
#include "numbers.hpp"
#include "wattweek/report/what_if.hpp"

namespace wattweek::report {
namespace {

// More crossings than this are not read.
constexpr std::size_t kMostCrossings = 12;

/// What the best is best by: `6-year cost`, without a horizon `cost`.
std::string criterion(const WhatIfShown& shown) {
  const auto& lifetime = shown.assessment.candidates.front().lifetime;
  return lifetime ? fmt::format("{}-year cost", lifetime->years)
                  : fmt::format("cost of {} months", shown.study.months);
}

double criterion_of(const WhatIfShown& shown, const decide::Totals& totals) {
  const bool has_horizon = shown.assessment.candidates.front().lifetime.has_value();
  return has_horizon ? totals.present_cost : totals.cost;
}

std::string sweep_words(const WhatIfShown& shown, const decide::Sweep& sweep) {
  return fmt::format("{} ({}) from {} to {} times today's", factor_words(shown.study, sweep.factor),
                     name_of(shown.study, sweep.factor), exact(sweep.low), exact(sweep.high));
}

std::string by_what(const WhatIfShown& shown) {
  const bool has_horizon = shown.assessment.candidates.front().lifetime.has_value();
  return fmt::format("The best has the lowest {}{}.", criterion(shown),
                     has_horizon ? ", all at present value" : "");
}

/// A letter for each candidate: the first of its id that is not taken, else the next of all
/// letters.
std::string letters(const model::Study& study) {
  std::string taken;
  for (const model::Candidate& candidate : study.candidates) {
    std::string choice =
        candidate.id + "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
    const auto free = std::find_if(choice.begin(), choice.end(),
                                   [&taken](char c) { return taken.find(c) == taken.npos; });
    taken += free == choice.end() ? '?' : *free;
  }
  return taken;
}

std::string legend(const model::Study& study) {
  const std::string marks = letters(study);
  std::string text;
  for (std::size_t c = 0; c < marks.size(); ++c) {
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", marks[c], study.candidates[c].name);
  }
  return text;
}

/// A value at each end and in the middle, below a line of so many characters.
std::string scale(const decide::Sweep& sweep, std::size_t columns) {
  const std::string low = exact(sweep.low);
  const std::string middle = rounded((sweep.low + sweep.high) / 2, 3);
  const std::string high = exact(sweep.high);
  if (low.size() + middle.size() + high.size() + 2 > columns) return low + " to " + high;
  std::string line(columns, ' ');
  line.replace(0, low.size(), low);
  line.replace(columns / 2 - middle.size() / 2, middle.size(), middle);
  line.replace(columns - high.size(), high.size(), high);
  return line;
}

Picture line_picture(const WhatIfShown& shown, const decide::Rows& line) {
  const std::string marks = letters(shown.study);
  std::string text;
  for (const std::uint32_t best : line.best) text += marks[best];
  const std::vector<std::string> lines = {text, scale(shown.sweeps.front(), text.size())};
  return {"The best along the way:", legend(shown.study), lines, lines};
}

/// Evenly chosen rows, the first and the last among them.
std::vector<std::size_t> shown_rows(std::size_t points) {
  const std::size_t count = std::min(points, kMostShownRows);
  std::vector<std::size_t> rows;
  for (std::size_t i = 0; i < count; ++i) rows.push_back(i * (points - 1) / (count - 1));
  return rows;
}

Table rows_table(const WhatIfShown& shown, const decide::Rows& rows) {
  const std::vector<model::Candidate>& all = shown.study.candidates;
  Table table{{{name_of(shown.study, shown.sweeps.front().factor), Align::right}}, {}};
  for (const model::Candidate& candidate : all) {
    table.columns.push_back(
        {fmt::format("{} {}", candidate.id, shown.study.tariff.currency), Align::right});
  }
  table.columns.push_back({"best", Align::left});
  for (const std::size_t row : shown_rows(rows.best.size())) {
    table.rows.push_back({rounded(shown.sweeps.front().at(row), 6) + " times"});
    for (std::size_t c = 0; c < all.size(); ++c) {
      table.rows.back().push_back(amount(criterion_of(shown, rows.totals[row * all.size() + c]),
                                         shown.study.tariff.currency));
    }
    table.rows.back().push_back(all[rows.best[row]].id);
  }
  return table;
}

/// `Below 0.936 times today's - 0.1633 EUR (night), ... - A costs less than B, above that more.`
std::string crossing_sentence(const WhatIfShown& shown, const decide::Crossing& crossing) {
  const std::string first = shown.study.candidates[crossing.first].name;
  const std::string second = shown.study.candidates[crossing.second].name;
  const decide::Factor& factor = shown.sweeps.front().factor;
  const std::string meaning = meaning_of(shown, factor, crossing.at);
  const std::string at = fmt::format("{} times today's{}", rounded(crossing.at, 3),
                                     meaning.empty() ? "," : " - " + meaning + " -");
  if (!crossing.cheaper_below) {
    return fmt::format("{} and {} cost the same all the way.", first, second);
  }
  const bool is_first = *crossing.cheaper_below == crossing.first;
  return fmt::format("Below {} {} costs less than {}, above that more.", at,
                     is_first ? first : second, is_first ? second : first);
}

Block crossings_block(const WhatIfShown& shown, const std::vector<decide::Crossing>& crossings) {
  if (crossings.empty()) return Paragraph{"No two of them swap places on the way."};
  List list;
  for (std::size_t i = 0; i < std::min(crossings.size(), kMostCrossings); ++i) {
    list.items.push_back(crossing_sentence(shown, crossings[i]));
  }
  if (crossings.size() > kMostCrossings) {
    list.items.push_back(
        fmt::format("{} more; json has them all.", crossings.size() - kMostCrossings));
  }
  return list;
}

}  // namespace

std::size_t what_if_columns(const Style& style) {
  return static_cast<std::size_t>(std::clamp(style.columns - 20, 20, 60));
}

std::string what_if_text(const WhatIfShown& shown, const decide::Rows& rows,
                         const decide::Rows& line, const std::vector<decide::Crossing>& crossings,
                         const Style& style) {
  Document document{shown.study.title + ": what if", {}};
  Section overview{"",
                   {Paragraph{fmt::format("What if {}?", sweep_words(shown, shown.sweeps.front()))},
                    Paragraph{by_what(shown)}, rows_table(shown, rows)}};
  if (rows.best.size() > kMostShownRows) {
    overview.blocks.emplace_back(
        Paragraph{fmt::format("{} of {} points are shown; csv and json have them all.",
                              kMostShownRows, rows.best.size())});
  }
  document.sections = {
      overview,
      {"Where the best changes", {line_picture(shown, line), crossings_block(shown, crossings)}}};
  return lay_out_text(document, style);
}

std::string what_if_map(const WhatIfShown& shown, const decide::Rows& map, std::size_t lines,
                        const Style& style) {
  const std::string marks = letters(shown.study);
  const std::size_t columns = map.best.size() / lines;
  decide::Sweep down = shown.sweeps[0];
  down.points = lines;
  std::vector<std::string> picture;
  std::size_t widest = 0;
  for (std::size_t l = 0; l < lines; ++l) widest = std::max(widest, rounded(down.at(l), 3).size());
  for (std::size_t l = 0; l < lines; ++l) {
    std::string& line =
        picture.emplace_back(fmt::format("{:>{}} ", rounded(down.at(l), 3), widest));
    for (std::size_t i = 0; i < columns; ++i) line += marks[map.best[l * columns + i]];
  }
  picture.push_back(std::string(widest + 1, ' ') + scale(shown.sweeps[1], columns));
  const Paragraph what{fmt::format("What if {}, downwards, and {}, to the right?",
                                   sweep_words(shown, shown.sweeps[0]),
                                   sweep_words(shown, shown.sweeps[1]))};
  return lay_out_text({shown.study.title + ": what if",
                       {{"", {what, Paragraph{by_what(shown)}}},
                        {"Where the best changes",
                         {Picture{"The best of each:", legend(shown.study), picture, picture},
                          Paragraph{"csv and json have the figures."}}}}},
                      style);
}

}  // namespace wattweek::report
