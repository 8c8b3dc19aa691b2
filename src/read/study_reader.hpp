#pragma once
// A study: everything that it says itself, and the files that it names.

#include <optional>
#include <string>
#include <vector>

#include "linked_files.hpp"
#include "table.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::read {

/// Reads the whole of one study; valid if nothing was reported in it or in the linked files.
class StudyReader {
 public:
  StudyReader(const Table& root, const Surroundings& surroundings, LinkedFiles& linked)
      : root_(root), surroundings_(surroundings), linked_(linked) {}

  StudyInput read();

  /// The study under each of these tariffs in place of its own; see `study_under`.
  std::vector<StudyInput> read_under(const std::vector<SourceText>& tariffs);

 private:
  /// Is the tariff's file opened, where the study names one?
  enum class Opens { yes, no };

  void read_time();
  void read_start();
  void read_months();
  void read_zone();
  void read_tariff_of_study(Opens opens);
  void read_what_is_compared();
  void read_all(Opens opens);
  void check_prices();

  const Table& root_;
  const Surroundings& surroundings_;
  LinkedFiles& linked_;
  StudyInput input_;
  std::optional<std::chrono::year_month> start_;  // nothing where it could not be read,
  std::optional<int> months_;                     // as with the others
  bool has_zone_ = false;
  std::optional<TariffDraft> tariff_;
};

}  // namespace wattweek::read
