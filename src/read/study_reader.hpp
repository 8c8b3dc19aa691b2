#pragma once
// A study: everything that it says itself, and the files that it names.

#include <optional>
#include <string>

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

 private:
  void read_time();
  void read_start();
  void read_months();
  void read_zone();
  void read_tariff_of_study();
  void read_what_is_compared();
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
