#pragma once
// The sections of a report page, in the order of the reader's questions.

#include "page_parts.hpp"
#include "shown.hpp"
#include "wattweek/report/page.hpp"

namespace wattweek::report {

/// The candidates side by side, and what one saves against the baseline.
PageSection costs_section(const Shown& s);

/// The week of each candidate.
PageSection week_section(const Shown& s, const ReportShown& shown);

/// Always on, workloads, devices.
PageSection where_section(const Shown& s);

/// Months, price bands, loads.
PageSection when_section(const Shown& s, const ReportShown& shown);

/// Prices, what turns the answer, what holds the doubt. \pre There is a criterion, or a doubt.
PageSection change_section(const Shown& s, const ReportShown& shown);

/// The contract, and the paper bill of a month.
PageSection bill_section(const Shown& s, const ReportShown& shown);

/// The method, what was assumed, the sources of the watts, cautions.
PageSection method_section(const Shown& s, const ReportShown& shown);

/// Every note. \pre There are notes.
PageSection notes_section(const Shown& s, const ReportShown& shown);

/// The files, in full.
PageSection files_section(const ReportShown& shown);

}  // namespace wattweek::report
