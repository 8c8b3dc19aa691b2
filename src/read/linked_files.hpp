#pragma once
// The files that a study names.

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "tariff_reader.hpp"
#include "value.hpp"
#include "wattweek/model/profile.hpp"

namespace wattweek::read {

class LinkedFiles {
 public:
  explicit LinkedFiles(const Surroundings& surroundings) : surroundings_(&surroundings) {}

  /// The profile that a path names, null where it has mistakes. Paths to the same file give the
  /// same profile, and its mistakes once.
  std::shared_ptr<const model::Profile> profile(const Value& path);

  /// The tariff that a path names, nothing where it has mistakes.
  std::optional<TariffDraft> tariff(const Value& path, const model::Holidays& study_holidays);

  /// The tariff of a text that has been found already.
  std::optional<TariffDraft> tariff(const SourceText& source,
                                    const model::Holidays& study_holidays);

  /// The mistakes inside the linked files, in the order in which they were named.
  const std::vector<diag::Diagnostic>& problems() const { return problems_; }

 private:
  std::optional<SourceText> load(const Value& path, ShippedKind kind);
  std::shared_ptr<const model::Profile> read_profile_text(const SourceText& source);

  const Surroundings* surroundings_;
  std::map<std::string, std::shared_ptr<const model::Profile>> profiles_;  // by identity
  std::vector<diag::Diagnostic> problems_;
};

}  // namespace wattweek::read
