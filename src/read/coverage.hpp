#pragma once
// Is there a price at every instant?

#include <optional>

#include "tariff_reader.hpp"
#include "wattweek/calendar/tariff_time.hpp"
#include "wattweek/calendar/zone.hpp"
#include "wattweek/diag/diagnostic.hpp"

namespace wattweek::read {

/// The first local time in the months that no band covers, as a problem at the bands.
std::optional<diag::Diagnostic> gap_in(const TariffDraft& draft, calendar::Months months,
                                       const calendar::ZoneRules& zone);

/// The same for a tariff by itself, over `calendar::years_to_try`. Where every window of it has
/// dates, only over the whole months from the first of these to the last.
std::optional<diag::Diagnostic> gap_anytime(const TariffDraft& draft);

}  // namespace wattweek::read
