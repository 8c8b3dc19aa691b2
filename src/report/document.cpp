#include "document.hpp"

#include <fmt/format.h>

#include "sections.hpp"
#include "sentences.hpp"

namespace wattweek::report {
namespace {

Section comparison(const Shown& s) {
  Section section{fmt::format("Compared with {}", s.study.candidates[s.all.baseline].name), {}};
  for (const decide::ComparisonRow& row : s.all.rows) {
    section.blocks.emplace_back(List{comparison_sentences(s.study, s.all, row)});
  }
  if (s.all.rows.empty()) section.blocks.emplace_back(Paragraph{"There is no other candidate."});
  return section;
}

Section notes(const Shown& s) {
  List list;
  for (const decide::Note& note : s.all.notes) list.items.push_back(note_sentence(note));
  return {"Notes", {list}};
}

}  // namespace

Document document(const model::Study& study, const decide::Assessment& all,
                  const std::vector<decide::Week>& weeks, Scope scope) {
  const Shown s = shown(study, all);
  Document whole{study.title, {overview(s, scope)}};
  const std::string best = scope == Scope::compare ? ranking_sentence(study, all) : "";
  if (!best.empty()) whole.sections.push_back({"", {Paragraph{best}}});
  if (all.uncertainty) whole.sections.push_back(doubt(s));
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    whole.sections.push_back(whereabouts(s, c));
  }
  whole.sections.push_back(timing(s, weeks));
  whole.sections.push_back(margins(s));
  if (scope == Scope::compare) whole.sections.push_back(comparison(s));
  if (!all.notes.empty()) whole.sections.push_back(notes(s));
  whole.sections.push_back({"Bear in mind", {List{limits(study)}}});
  return whole;
}

std::string text(const model::Study& study, const decide::Assessment& all,
                 const std::vector<decide::Week>& weeks, Scope scope, const Style& style) {
  return lay_out_text(document(study, all, weeks, scope), style);
}

std::string markdown(const model::Study& study, const decide::Assessment& all,
                     const std::vector<decide::Week>& weeks, Scope scope) {
  return lay_out_markdown(document(study, all, weeks, scope));
}

std::string month_bills_text(const model::Study& study, const decide::Assessment& all,
                             std::size_t month, const Style& style) {
  return lay_out_text(month_bills(study, all, month), style);
}

std::string month_bills_markdown(const model::Study& study, const decide::Assessment& all,
                                 std::size_t month) {
  return lay_out_markdown(month_bills(study, all, month));
}

}  // namespace wattweek::report
