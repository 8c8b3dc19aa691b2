#pragma once
// A tariff: the electricity contract as it is written.

#include <optional>
#include <string>

#include "table.hpp"
#include "wattweek/model/tariff.hpp"
#include "windows.hpp"

namespace wattweek::read {

struct TariffDraft {
  model::Tariff tariff;
  diag::Place bands_place;  ///< Of the first band, or of the tariff where there is none.
};

/// Valid if nothing was reported; that a band holds at every instant is not checked here.
/// `study_holidays` count where the tariff lists none of its own.
TariffDraft read_tariff(const Table& table, const std::string& default_name,
                        const model::Holidays& study_holidays);

/// A tariff file.
TariffDraft read_tariff_file(File& file, const toml::table& root,
                             const model::Holidays& study_holidays);

}  // namespace wattweek::read
