#pragma once
// Texts through the reader, without a disk.

#include <string>

#include "random_study.hpp"
#include "wattweek/decide/assessment.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::oracle {

/// Reads a study whose other files are those of `text`, its zone from the system's database.
read::Read<read::StudyInput> read_text(const StudyText& text);

/// Reads a study that must be right; throws `std::logic_error` with what is wrong with it, and
/// its text.
read::StudyInput read_valid(const StudyText& text);

/// Reads and assesses a study of which both must succeed; throws as `read_valid` does.
decide::Assessment assess_valid(const StudyText& text);

}  // namespace wattweek::oracle
