#pragma once
// Is there a price at every instant?

#include <chrono>
#include <optional>

#include "tariff_reader.hpp"
#include "wattweek/calendar/zone.hpp"
#include "wattweek/diag/diagnostic.hpp"

namespace wattweek::read {

/// Some calendar months.
struct Months {
  std::chrono::year_month first;
  int count = 12;
};

/// The first local time in the months that no band covers, as a problem at the bands.
std::optional<diag::Diagnostic> gap_in(const TariffDraft& draft, Months months,
                                       const calendar::ZoneRules& zone);

/// The same for a tariff by itself, on days without clock changes: over the 28 years from 2000
/// on (every weekday meets every date) and the years at the ends of its spans of dates and of
/// its holidays. Where every window of it has dates, only from the first of these to the last.
std::optional<diag::Diagnostic> gap_anytime(const TariffDraft& draft);

}  // namespace wattweek::read
