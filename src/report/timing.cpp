#include <fmt/format.h>

#include <algorithm>

#include "sections.hpp"
#include "sums.hpp"
#include "week_picture.hpp"

namespace wattweek::report {
namespace {

/// More candidates than this make a table too wide to be read: the next ones get their own.
constexpr std::size_t kSideBySide = 3;

/// Candidates from `first` to before `last`.
struct Group {
  std::size_t first;
  std::size_t last;
};

std::vector<Group> groups(std::size_t candidates) {
  std::vector<Group> all;
  for (std::size_t c = 0; c < candidates; c += kSideBySide) {
    all.push_back({c, std::min(c + kSideBySide, candidates)});
  }
  return all;
}

std::vector<Column> columns(const Shown& s, const Group& group) {
  std::vector<Column> columns;
  for (std::size_t c = group.first; c < group.last; ++c) {
    columns.push_back({s.study.candidates[c].id + " kWh"});
    columns.push_back({s.study.candidates[c].id + " " + s.currency()});
  }
  return columns;
}

Table with_columns(std::vector<Column> first, const Shown& s, const Group& group) {
  for (Column& column : columns(s, group)) first.push_back(std::move(column));
  return {std::move(first), {}};
}

Table bands_table(const Shown& s, const Group& group) {
  Table table = with_columns({{"price band", Align::left}, {"hours"}}, s, group);
  for (std::size_t b = 0; b < s.study.tariff.bands.size(); ++b) {
    auto& row = table.rows.emplace_back();
    row = {s.study.tariff.bands[b].name, rounded(s.all.band_hours[b], 1)};
    for (std::size_t c = group.first; c < group.last; ++c) {
      row.push_back(s.kwh(band_kwh(s.all, s.all.candidates[c], b)));
      row.push_back(s.cost(s.all.candidates[c].cost.by_band[b]));
    }
  }
  return table;
}

Table months_table(const Shown& s, const Group& group) {
  Table table = with_columns({{"month", Align::left}}, s, group);
  for (std::size_t m = 0; m < s.all.months.size(); ++m) {
    auto& row = table.rows.emplace_back();
    row.push_back(calendar::to_text(s.all.months[m].month));
    for (std::size_t c = group.first; c < group.last; ++c) {
      row.push_back(s.kwh(month_kwh(s.all, s.all.candidates[c], m)));
      row.push_back(s.cost(s.all.candidates[c].cost.by_period[m]));
    }
  }
  return table;
}

void add_week(Section& section, const std::string& name, const decide::Week& week) {
  if (is_flat(week)) {
    const double watts = week.mean_w(0, 0);
    section.blocks.emplace_back(Paragraph{
        fmt::format("{} draws {} W all week.", name, fixed(watts, decimals_for({watts})))});
    return;
  }
  section.blocks.emplace_back(week_picture(week, name + ", mean watts by the clock of the week:"));
}

}  // namespace

Section timing(const Shown& s, const std::vector<decide::Week>& weeks) {
  Section section{"When", {}};
  const std::vector<Group> all = groups(s.study.candidates.size());
  if (s.study.tariff.bands.size() > 1) {
    for (const Group& group : all) section.blocks.emplace_back(bands_table(s, group));
  }
  for (const Group& group : all) section.blocks.emplace_back(months_table(s, group));
  for (std::size_t c = 0; c < weeks.size(); ++c) {
    add_week(section, s.study.candidates[c].name, weeks[c]);
  }
  return section;
}

}  // namespace wattweek::report
