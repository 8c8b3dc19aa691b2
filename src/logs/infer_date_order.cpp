// Whether 05/12/2011 is in May or in December.

#include <algorithm>
#include <array>
#include <limits>

#include "infer.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

constexpr std::array<DateOrder, 3> kOrders = {DateOrder::dmy, DateOrder::mdy, DateOrder::ymd};

std::string_view name_of(DateOrder order) {
  switch (order) {
    case DateOrder::dmy:
      return "day first";
    case DateOrder::mdy:
      return "month first";
    case DateOrder::ymd:
      return "year first";
  }
  return {};
}

std::string_view option_of(DateOrder order) {
  return order == DateOrder::dmy ? "dmy" : order == DateOrder::mdy ? "mdy" : "ymd";
}

// How well the dates go on, if read in an order.
struct Run {
  DateOrder order = DateOrder::dmy;
  std::size_t impossible = 0;
  std::size_t turns = 0;  ///< Changes between going on and going back.
  Microseconds way = 0;   ///< Steps back and forth together.
  std::size_t steps = 0;
  std::size_t short_steps = 0;
};

Run run_of(Inference& inference, DateOrder order) {
  inference.layout.time.order = order;
  const std::vector<RowTime> times = times_of(inference);
  Run run{order, inference.sample.rows() - times.size()};
  bool went_on = true;
  for (std::size_t i = 1; i < times.size(); ++i) {
    const Microseconds step = times[i].us - times[i - 1].us;
    if (step != 0 && i > 1) run.turns += (step > 0) != went_on;
    if (step != 0) went_on = step > 0;
    run.way += std::abs(step);
    run.steps += step != 0;
    run.short_steps += step != 0 && std::abs(step) < kDay / 2;
  }
  return run;
}

Stamp first_numbers(const Inference& inference) {
  const Sample& sample = inference.sample;
  for (std::size_t row = 0; row < sample.rows(); ++row) {
    const auto stamp = stamp_of(sample.field(row, inference.layout.time.column));
    if (stamp && stamp->form != DateForm::none) return *stamp;
  }
  return {};
}

// The orders under which the fewest dates are impossible.
std::vector<Run> possible(Inference& inference, const Stamp& first) {
  std::vector<Run> runs;
  for (const DateOrder order : kOrders) {
    if (order == DateOrder::ymd && !first.short_year) continue;
    runs.push_back(run_of(inference, order));
  }
  std::size_t fewest = std::numeric_limits<std::size_t>::max();
  for (const Run& run : runs) fewest = std::min(fewest, run.impossible);
  std::erase_if(runs, [&](const Run& run) { return run.impossible > fewest; });
  return runs;
}

// Rows go on under one order and to and fro under the other; or the days follow each other under
// one and are months apart under the other. A row for each day may be one for each month.
bool goes_on_better(const Run& a, const Run& b) {
  if (a.short_steps * 2 < a.steps) return false;
  if (a.turns != b.turns) return a.turns < b.turns;
  return a.way * 4 < b.way;
}

std::optional<DateOrder> that_goes_on(const std::vector<Run>& runs) {
  for (const Run& run : runs) {
    const bool best = std::all_of(runs.begin(), runs.end(), [&](const Run& other) {
      return other.order == run.order || goes_on_better(run, other);
    });
    if (best) return run.order;
  }
  return std::nullopt;
}

// A date as 2011.12.05 in the file's name that is the first row's under one order alone.
std::optional<DateOrder> that_is_in_name(const Inference& inference, const Stamp& first,
                                         const std::vector<Run>& runs) {
  const std::string_view name = inference.file_name;
  std::optional<DateOrder> found;
  for (const Run& run : runs) {
    const auto at = local_us(first, run.order);
    for (std::size_t i = 0; at && i + 8 <= name.size(); ++i) {
      for (const std::size_t length : {std::size_t{10}, std::size_t{8}}) {
        const auto date = stamp_of(name.substr(i, length));
        if (!date || date->form != DateForm::year_first || date->has_clock) continue;
        if (local_us(*date, DateOrder::ymd) != *at - first.clock_us) continue;
        if (found && *found != run.order) return std::nullopt;
        found = run.order;
      }
    }
  }
  return found;
}

Refusal two_readings(const Inference& inference, const std::vector<Run>& runs) {
  const std::size_t column = inference.layout.time.column;
  std::string message =
      "the date '" + diag::printable(inference.sample.field(0, column)) + "' may be ";
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (i > 0) message += i + 1 == runs.size() ? " or " : ", ";
    message += name_of(runs[i].order);
  }
  message += "; say which by ";
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (i > 0) message += i + 1 == runs.size() ? " or " : ", ";
    message += "--date-order ";
    message += option_of(runs[i].order);
  }
  return {message, 0, column};
}

}  // namespace

Step infer_date_order(Inference& inference) {
  const Stamp first = first_numbers(inference);
  TimeLayout& time = inference.layout.time;
  if (time.epoch || first.form != DateForm::numbers) return std::nullopt;
  if (inference.options.date_order) {
    time.order = *inference.options.date_order;
    return std::nullopt;
  }
  const std::vector<Run> runs = possible(inference, first);
  std::optional<DateOrder> order;
  std::string why = "since no other order fits";
  if (runs.size() == 1) {
    order = runs.front().order;
  } else if ((order = that_goes_on(runs))) {
    why = "since the rows then follow each other";
  } else if ((order = that_is_in_name(inference, first, runs))) {
    why = "as in the file's name";
  } else if (first.dots && !first.short_year) {
    order = DateOrder::dmy;
    why = "as is usual with dots";
  }
  if (!order) return two_readings(inference, runs);
  time.order = *order;
  inference.said.push_back("dates: " + std::string(name_of(*order)) + ", " + why +
                           " (--date-order)");
  return std::nullopt;
}

}  // namespace wattweek::logs
