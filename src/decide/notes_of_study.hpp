#pragma once
// Finds what there is to note about a study and its results.

#include <vector>

#include "wattweek/calendar/study_fold.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/notes.hpp"

namespace wattweek::decide {

/// All notes: those on places in files first, in the order of the study, then those on
/// candidates. \pre `assessment` is complete but for its notes.
std::vector<Note> notes_of_study(const model::Study& study, const calendar::FoldedStudy& folded,
                                 const Assessment& assessment);

}  // namespace wattweek::decide
