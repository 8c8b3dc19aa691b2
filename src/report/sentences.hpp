#pragma once
// The sentences: what is saved, when a purchase has paid for itself, what the figures do not hold.

#include <string>
#include <vector>

#include "wattweek/report/report.hpp"

namespace wattweek::report {

/// Amounts with the minor digits of their currency, or rounded as people say them.
enum class Amounts { exact, spoken };

/// What a candidate saves against the baseline, a year; when its purchase has paid for itself,
/// never without the verdict of the present costs and the horizon; and from which price on that
/// holds.
std::vector<std::string> comparison_sentences(const model::Study& study,
                                              const decide::Assessment& assessment,
                                              const decide::ComparisonRow& row,
                                              Amounts amounts = Amounts::exact);

/// Which candidate costs least over the horizon, and how much more each other one costs; empty
/// where there is no ranking (see `decide::ranking`) or nothing to rank.
std::string ranking_sentence(const model::Study& study, const decide::Assessment& assessment);

/// Are the candidates like for like? What they are not is in the notes.
bool all_serve_the_same(const decide::Assessment& assessment);

/// A note, with the place or the candidate that it is about, and its code.
std::string note_sentence(const decide::Note& note);

/// What the figures do not hold, and cautions on what they speak of.
std::vector<std::string> limits(const model::Study& study);

}  // namespace wattweek::report
