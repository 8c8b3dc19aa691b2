#pragma once
// Start here: the user's files in, a valid model or all the mistakes in them out.
//
// Readers take text, never paths; whoever calls says how a file that another one names is
// found (`Surroundings`). A reader never stops at the first mistake (a syntax error excepted,
// since nothing after it can be trusted) and never fills in what it could not read.

#include <chrono>
#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "wattweek/calendar/zone.hpp"
#include "wattweek/calendar/zone_database.hpp"
#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::read {

/// A file's text and its names.
struct SourceText {
  std::string name;      ///< As the user gave it; appears in messages and default names.
  std::string identity;  ///< The same for the same file, however it was named (canonical path).
  std::string text;
};

/// Why a file cannot be read, in words for the user.
struct Unreadable {
  std::string reason;
};

/// What folder of shipped files `shipped:NAME` means.
enum class ShippedKind { profile, tariff };

/// How the outside world is reached; both functions must be set.
struct Surroundings {
  /// The file that `path` names in the file called `from`: relative to that file's folder, or
  /// `shipped:NAME`.
  std::function<std::variant<SourceText, Unreadable>(const std::string& path,
                                                     const std::string& from, ShippedKind kind)>
      load;
  /// The offset changes of a time zone over some months.
  std::function<std::variant<calendar::ZoneRules, calendar::NoZone>(
      const std::string& name, std::chrono::year_month first, int months)>
      zone;
};

/// `value` is set if and only if `problems` is empty; problems are in order of place.
template <class T>
struct Read {
  std::optional<T> value;
  std::vector<diag::Diagnostic> problems;
};

/// A valid study and the offset changes of its zone.
struct StudyInput {
  model::Study study;
  calendar::ZoneRules zone;
};

/// Reads a study and all profiles and the tariff that it names. What is checked beyond each
/// key: the relations between workloads, devices and profiles, and that at every instant of
/// the study a price band holds.
Read<StudyInput> study(const SourceText& source, const Surroundings& surroundings);

/// Reads a study under other tariffs than its own: one input for each, in their order, with all
/// that `study` checks. The study must be whole: its own tariff is checked where it stands in the
/// study itself; where it is a path, that file is not opened.
Read<std::vector<StudyInput>> study_under(const SourceText& source,
                                          const std::vector<SourceText>& tariffs,
                                          const Surroundings& surroundings);

/// Reads a profile by itself.
Read<model::Profile> profile(const SourceText& source);

/// Reads a tariff by itself. That a band holds at every instant is checked over the 28 years
/// from 2000 on (every weekday meets every date) and the years that its dates and holidays
/// name, on days without clock changes.
Read<model::Tariff> tariff(const SourceText& source);

enum class FileKind { study, profile, tariff };

/// What kind of file a text is, judged by its top-level keys; nothing where it has none that
/// tells (the problems then say which keys tell), or where the text is not TOML.
Read<FileKind> kind_of(const SourceText& source);

}  // namespace wattweek::read
