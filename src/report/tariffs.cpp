#include <fmt/format.h>

#include <algorithm>

#include "sections.hpp"
#include "sentences.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

// Of more contracts than this only the number is said in a sentence.
constexpr std::size_t kMostNamed = 3;

/// What there is to show, and how finely.
struct Side {
  const std::vector<decide::UnderTariff>& all;
  const decide::SeveralTariffs& several;
  Shown first;
  bool has_letters = false;  ///< Columns are headed A, B, C, since ids are too long.

  const std::vector<model::Candidate>& candidates() const { return first.study.candidates; }
  const std::string& currency(std::size_t t) const { return all[t].study.tariff.currency; }

  /// What stands for a candidate in the table.
  std::string label(std::size_t c) const {
    return has_letters ? std::string(1, static_cast<char>('A' + c)) : candidates()[c].id;
  }
};

std::string horizon(const Side& side) {
  return counted(static_cast<std::size_t>(*side.several.years), "year");
}

/// Would a table headed by ids be too wide? It is judged with names of contracts cut short.
bool needs_letters(const Side& side, std::size_t columns) {
  constexpr std::size_t kGap = 2;
  constexpr std::size_t kNames = 14;
  constexpr std::size_t kCurrency = 3;
  constexpr std::size_t kLetters = 26;
  std::size_t width = kNames + kGap + kCurrency;
  std::size_t longest = 0;
  for (std::size_t c = 0; c < side.candidates().size(); ++c) {
    std::size_t widest = side.candidates()[c].id.size();
    longest = std::max(longest, widest);
    for (std::size_t t = 0; t < side.all.size(); ++t) {
      widest = std::max(widest, amount(side.several.rows[t].criteria[c], side.currency(t)).size());
    }
    width += kGap + widest;
  }
  return width + kGap + longest > columns && side.candidates().size() <= kLetters;
}

/// What the figures of the table are.
std::string what(const Side& side) {
  if (side.several.years) {
    return fmt::format(
        "Cost over {} of each candidate under each contract: purchase, electricity and later costs "
        "less resale, each at its present value.",
        horizon(side));
  }
  if (!side.several.yardstick.is_year_alone) {
    return fmt::format(
        "What each candidate adds to the electricity bill over {}, under each contract.",
        counted(static_cast<std::size_t>(side.first.study.months), "month"));
  }
  return "What each candidate adds to a year's electricity bill, under each contract. The "
         "currencies differ, so purchases and other costs over the years are left out.";
}

Table table(const Side& side) {
  Table table{{{"", Align::left}, {"in", Align::left}}, {}};
  for (std::size_t c = 0; c < side.candidates().size(); ++c) {
    table.columns.push_back({side.label(c), Align::right});
  }
  table.columns.push_back({"best", Align::left});
  for (std::size_t t = 0; t < side.all.size(); ++t) {
    const decide::TariffRow& row = side.several.rows[t];
    std::vector<std::string> cells = {row.tariff, side.currency(t)};
    for (const double criterion : row.criteria) {
      cells.push_back(amount(criterion, side.currency(t)));
    }
    cells.push_back(side.label(row.best) + (row.is_shared ? " (equal)" : ""));
    table.rows.push_back(std::move(cells));
  }
  return table;
}

/// Who the columns are. The energy is the same under all contracts.
List legend(const Side& side) {
  List list;
  for (std::size_t c = 0; c < side.candidates().size(); ++c) {
    const model::Candidate& candidate = side.candidates()[c];
    const decide::CandidateResult& result = side.first.all.candidates[c];
    std::string who = (side.has_letters ? side.label(c) + ", " : "") + candidate.id + ": ";
    if (candidate.name != candidate.id) who += candidate.name + ", ";
    if (c == side.first.study.baseline) who += "the baseline, ";
    if (result.lower_bound) who += "at least ";
    list.items.push_back(fmt::format("{}{} kWh{}", who,
                                     side.first.kwh(units::in_kilowatt_hours(result.energy)),
                                     side.first.is_year() ? " a year" : ""));
  }
  return list;
}

/// The contracts under which each candidate is best.
std::vector<std::vector<std::size_t>> wins(const Side& side) {
  std::vector<std::vector<std::size_t>> by_candidate(side.candidates().size());
  for (std::size_t t = 0; t < side.several.rows.size(); ++t) {
    by_candidate[side.several.rows[t].best].push_back(t);
  }
  return by_candidate;
}

/// `Flat (by 3.10 EUR) and Steps (by 12.00 USD)`; of many only their number.
std::string contracts(const Side& side, const std::vector<std::size_t>& which, std::size_t mostly) {
  if (which.size() > kMostNamed) return fmt::format("{} others", which.size());
  std::vector<std::string> names;
  for (const std::size_t t : which) {
    const decide::TariffRow& row = side.several.rows[t];
    const double ahead = row.criteria[mostly] - row.criteria[row.best];
    names.push_back(fmt::format("{} (by {})", row.tariff, money(ahead, side.currency(t))));
  }
  return listed(names);
}

/// `both contracts`, `all 3 contracts`, `2 of 3 contracts`.
std::string how_many(std::size_t some, std::size_t all) {
  if (some < all) return fmt::format("{} of {} contracts", some, all);
  return all == 2 ? "both contracts" : fmt::format("all {} contracts", all);
}

std::string over_what(const Side& side) {
  if (side.several.years) return fmt::format("Over {}, all at present value", horizon(side));
  if (side.several.yardstick.is_year_alone) return "By the year's electricity alone";
  return "Over " + counted(static_cast<std::size_t>(side.first.study.months), "month");
}

/// Which candidate is best under most contracts, and under which another one.
std::string verdict(const Side& side) {
  const auto by_candidate = wins(side);
  const auto fewer = [](const auto& a, const auto& b) { return a.size() < b.size(); };
  const auto most = std::max_element(by_candidate.begin(), by_candidate.end(), fewer);
  const auto mostly = static_cast<std::size_t>(most - by_candidate.begin());
  std::string text =
      fmt::format("{}, {} costs least under {}", over_what(side), side.candidates()[mostly].name,
                  how_many(most->size(), side.all.size()));
  for (std::size_t c = 0; c < by_candidate.size(); ++c) {
    if (c == mostly || by_candidate[c].empty()) continue;
    text += fmt::format("; under {} it is {}", contracts(side, by_candidate[c], mostly),
                        side.candidates()[c].name);
  }
  return text + ".";
}

/// What keeps the verdict from being the whole truth.
std::string reservations(const Side& side) {
  const auto& rows = side.several.rows;
  const bool any_shared = std::any_of(rows.begin(), rows.end(),
                                      [](const decide::TariffRow& row) { return row.is_shared; });
  std::string text;
  if (any_shared) text += " Of equal ones the first in the study is named.";
  if (!all_serve_the_same(side.first.all)) text += " They do not serve the same: see the notes.";
  return text;
}

/// A note, and the contracts under which it holds.
struct SharedNote {
  std::string sentence;
  std::vector<std::size_t> tariffs;
};

std::vector<SharedNote> shared_notes(const Side& side) {
  std::vector<SharedNote> notes;
  for (std::size_t t = 0; t < side.all.size(); ++t) {
    for (const decide::Note& note : side.all[t].assessment.notes) {
      const std::string sentence = note_sentence(note);
      auto known = std::find_if(notes.begin(), notes.end(), [&sentence](const SharedNote& each) {
        return each.sentence == sentence;
      });
      if (known == notes.end()) known = notes.insert(known, {sentence, {}});
      if (known->tariffs.empty() || known->tariffs.back() != t) known->tariffs.push_back(t);
    }
  }
  return notes;
}

/// Notes that hold under all contracts as they are, the others with the contracts' names.
Section notes(const Side& side) {
  List list;
  for (const SharedNote& note : shared_notes(side)) {
    std::vector<std::string> names;
    for (const std::size_t t : note.tariffs) names.push_back(side.several.rows[t].tariff);
    const bool holds_always = names.size() == side.all.size();
    list.items.push_back((holds_always ? "" : fmt::format("Under {}: ", listed(names))) +
                         note.sentence);
  }
  return {"Notes", {list}};
}

Side side_of(const std::vector<decide::UnderTariff>& all, const decide::SeveralTariffs& several) {
  return {all, several, shown(all.front().study, all.front().assessment)};
}

Document document(const Side& side) {
  Section section{"", {Paragraph{period(side.first)}, Paragraph{what(side)}, table(side)}};
  if (side.candidates().size() > 1) {
    section.blocks.emplace_back(Paragraph{verdict(side) + reservations(side)});
  }
  section.blocks.emplace_back(legend(side));
  Document whole{side.first.study.title, {section}};
  Section noted = notes(side);
  if (!std::get<List>(noted.blocks.front()).items.empty()) whole.sections.push_back(noted);
  whole.sections.push_back({"Bear in mind", {List{limits(side.first.study)}}});
  return whole;
}

}  // namespace

std::string tariffs_text(const std::vector<decide::UnderTariff>& all,
                         const decide::SeveralTariffs& several, const Style& style) {
  Side side = side_of(all, several);
  side.has_letters = needs_letters(side, static_cast<std::size_t>(std::max(style.columns, 1)));
  return lay_out_text(document(side), style);
}

std::string tariffs_markdown(const std::vector<decide::UnderTariff>& all,
                             const decide::SeveralTariffs& several) {
  return lay_out_markdown(document(side_of(all, several)));
}

}  // namespace wattweek::report
