#pragma once
// The months of a fold as a bill sees them.

#include <vector>

#include "wattweek/billing/bill.hpp"
#include "wattweek/calendar/fold.hpp"

namespace wattweek::decide {

std::vector<billing::BillingPeriod> billing_periods(const calendar::Fold& folded);

}  // namespace wattweek::decide
