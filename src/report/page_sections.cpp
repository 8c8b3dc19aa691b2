#include "page_sections.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "factor_words.hpp"
#include "page_candidates.hpp"
#include "page_figures.hpp"
#include "range_words.hpp"
#include "sections.hpp"
#include "sentences.hpp"
#include "spoken.hpp"
#include "turn_words.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/report/words.hpp"
#include "week_picture.hpp"

namespace wattweek::report {
namespace {

/// More comparisons than this are not read; the best one's stands first, the others are folded.
constexpr std::size_t kFewComparisons = 3;

void add_comparison(const Shown& s, const decide::ComparisonRow& row,
                    std::vector<PageBlock>& blocks) {
  blocks.emplace_back(
      Subheading{fmt::format("{} against {}", s.study.candidates[row.candidate].name,
                             s.study.candidates[s.all.baseline].name)});
  blocks.emplace_back(List{comparison_sentences(s.study, s.all, row, Amounts::spoken)});
}

/// The one to be read first: of the best of all that are not the baseline, else the first.
std::size_t first_comparison(const Shown& s) {
  const auto ranked = decide::ranking(s.study, s.all);
  if (!ranked) return 0;
  const std::size_t best = ranked->front().candidate == s.all.baseline ? (*ranked)[1].candidate
                                                                       : ranked->front().candidate;
  const auto row = std::find_if(s.all.rows.begin(), s.all.rows.end(),
                                [best](const auto& each) { return each.candidate == best; });
  return static_cast<std::size_t>(row - s.all.rows.begin());
}

void add_comparisons(const Shown& s, PageSection& section) {
  if (s.all.rows.empty()) return;
  const bool all_are_shown = s.all.rows.size() <= kFewComparisons;
  const std::size_t first = first_comparison(s);
  std::vector<PageBlock> others;
  for (std::size_t r = 0; r < s.all.rows.size(); ++r) {
    add_comparison(s, s.all.rows[r], all_are_shown || r == first ? section.blocks : others);
  }
  if (others.empty()) return;
  section.blocks.emplace_back(Folded{
      fmt::format("The same for {}", counted(others.size() / 2, "other")), std::move(others)});
}

/// A file's name as everybody may read it: seen from the study's folder. Where the author keeps
/// that folder is nobody's business.
std::string published_name(const ReportShown& shown, const std::string& name) {
  const std::string& study = shown.inputs.empty() ? name : shown.inputs.front().name;
  const std::string folder = study.substr(0, study.rfind('/') + 1);
  if (!folder.empty() && name.compare(0, folder.size(), folder) == 0) {
    return name.substr(folder.size());
  }
  return name.front() == '/' ? name.substr(name.rfind('/') + 1) : name;
}

constexpr const char* kHowSure = "How sure is it?";

/// What holds the doubt, and where straight lines would mislead.
void add_doubt(const Shown& s, PageSection& section) {
  const decide::Uncertainty& doubt = *s.all.uncertainty;
  if (!section.blocks.empty()) section.blocks.emplace_back(Subheading{kHowSure});
  section.blocks.emplace_back(Paragraph{fmt::format(
      "{} of the files {} known as a range only. In {} trials each of these was drawn "
      "anew from its range, and everything was reckoned; 95 of 100 results lie within the "
      "brackets.",
      counted(doubt.ranges, "figure"), doubt.ranges == 1 ? "is" : "are", doubt.draws)});
  if (doubt.best_two && s.study.candidates.size() > 1) section.blocks.emplace_back(cheapest(s));
  if (!doubt.drivers.empty()) {
    section.blocks.emplace_back(Paragraph{fmt::format(
        "Best to be settled first: {}. It holds {} of the doubt about {}.",
        range_words(s.study, doubt.drivers.front().place), percent_of(doubt.drivers.front().share),
        s.study.candidates.size() > 1 ? "which of the best two costs less" : "the cost")});
    section.blocks.emplace_back(Figures{{drivers_figure(s)}});
  }
  const std::vector<std::string> bent = bends(s);
  if (!bent.empty()) section.blocks.emplace_back(List{bent});
}

void add_turns(const Shown& s, const decide::AllTurns& turns, PageSection& section) {
  const std::vector<decide::Sweep> none;
  const WhatIfShown shown{s.study, s.all, none};
  List changing;
  std::vector<std::string> idle;
  for (const decide::Turns& each : turns.turns) {
    if (each.below || each.above) {
      changing.items.push_back(capitalised(turn_sentence(shown, each, FactorNames::untold)));
    } else {
      idle.push_back(factor_words(s.study, each.factor));
    }
  }
  section.blocks.emplace_back(Subheading{"What else would turn it?"});
  if (!changing.items.empty()) {
    section.blocks.emplace_back(
        Paragraph{"One thing changed alone, all else as it is, and another one costs least:"});
    section.blocks.emplace_back(std::move(changing));
  }
  if (!idle.empty()) {
    section.blocks.emplace_back(Paragraph{
        fmt::format("From nothing to {} times today's, each alone, these do not change which one "
                    "costs least: {}.",
                    rounded(decide::kFarthestFactor, 0), listed(idle))});
  }
}

}  // namespace

PageSection costs_section(const Shown& s) {
  const bool several = s.study.candidates.size() > 1;
  PageSection section{"costs", several ? "What does each one cost?" : "What does it cost?", {}};
  Figures figures{{cost_figure(s)}};
  if (s.all.candidates.front().lifetime) figures.figures.push_back(present_cost_figure(s));
  section.blocks.emplace_back(std::move(figures));
  section.blocks.emplace_back(spoken_candidates(s));
  add_comparisons(s, section);
  return section;
}

PageSection week_section(const Shown& s, const ReportShown& shown) {
  PageSection section{"week", "What does a week look like?", {}};
  section.blocks.emplace_back(
      Paragraph{"Mean watts in each half-hour of the week, by the clock at home, over all weeks. "
                "Each map has shades of its own."});
  Figures figures;
  std::vector<std::string> flat;
  for (std::size_t c = 0; c < shown.weeks.size(); ++c) {
    if (is_flat(shown.weeks[c])) {
      const double watts = shown.weeks[c].mean_w(0, 0);
      flat.push_back(fmt::format("{} draws {} W all week.", s.study.candidates[c].name,
                                 fixed(watts, decimals_for({watts}))));
    } else {
      figures.figures.push_back(week_figure(s, shown.weeks[c], c));
    }
  }
  if (!figures.figures.empty()) section.blocks.emplace_back(std::move(figures));
  if (!flat.empty()) section.blocks.emplace_back(List{std::move(flat)});
  return section;
}

PageSection where_section(const Shown& s) {
  PageSection section{"where", "Where does the energy go?", {}};
  section.blocks.emplace_back(
      Paragraph{"What is always on is what a machine draws though nobody uses it: off, asleep or "
                "idle. What a "
                "use adds comes on top, while it lasts."});
  Figures figures;
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    figures.figures.push_back(where_figure(s, c));
  }
  section.blocks.emplace_back(std::move(figures));
  section.blocks.emplace_back(Subheading{"Which devices draw it"});
  section.blocks.emplace_back(all_devices(s));
  List hours;
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    hours.items.push_back(fmt::format("{}. {}", s.study.candidates[c].name, hours_sentence(s, c)));
  }
  section.blocks.emplace_back(std::move(hours));
  section.blocks.emplace_back(
      Paragraph{"Device-hours count each device by itself: two that idle all day are 48 of them."});
  return section;
}

PageSection when_section(const Shown& s, const ReportShown& shown) {
  PageSection section{"when", "When is it drawn?", {}};
  Figures months;
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    months.figures.push_back(months_figure(s, c));
  }
  section.blocks.emplace_back(
      Subheading{s.study.tariff.bands.size() > 1 ? "By month and price band" : "By month"});
  section.blocks.emplace_back(std::move(months));
  const bool any_load = std::any_of(shown.loads.begin(), shown.loads.end(),
                                    [](const auto& loads) { return !loads.empty(); });
  if (any_load) section.blocks.emplace_back(Figures{{load_figure(s, shown.loads)}});
  return section;
}

PageSection change_section(const Shown& s, const ReportShown& shown) {
  const bool is_ranked = shown.prices && s.study.candidates.size() > 1;
  PageSection section{"change", is_ranked ? "What would change the answer?" : kHowSure, {}};
  if (is_ranked) {
    section.blocks.emplace_back(
        Paragraph{fmt::format("Which one is best is judged by its cost {}.", over_the_horizon(s))});
    Figures figures{{prices_figure(s, *shown.prices)}};
    if (shown.prices->lead) figures.figures.push_back(lead_figure(s, *shown.prices));
    section.blocks.emplace_back(std::move(figures));
    if (shown.turns) add_turns(s, *shown.turns, section);
  }
  if (s.all.uncertainty) add_doubt(s, section);
  return section;
}

PageSection notes_section(const Shown& s, const ReportShown& shown) {
  List list;
  for (decide::Note note : s.all.notes) {
    if (auto* place = std::get_if<diag::Place>(&note.where); place != nullptr && place->file) {
      place->file = std::make_shared<const std::string>(published_name(shown, *place->file));
    }
    list.items.push_back(note_sentence(note));
  }
  return {"notes", "What should be known besides?", {std::move(list)}};
}

PageSection files_section(const ReportShown& shown) {
  PageSection section{"files", "Where can it be checked?", {}};
  section.blocks.emplace_back(
      Paragraph{fmt::format("These are the files that wattweek {} read, in full. Whoever doubts a "
                            "figure can change it there and reckon anew.",
                            shown.version)});
  for (const InputFile& file : shown.inputs) {
    section.blocks.emplace_back(Verbatim{published_name(shown, file.name), file.text});
  }
  return section;
}

}  // namespace wattweek::report
