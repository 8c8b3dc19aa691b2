#include "edited_study.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "../support/study_text.hpp"
#include "doubt.hpp"

namespace wattweek::tests {

using decide::Assessment;
using decide::CandidateResult;
using decide::Sweep;
using decide::Totals;

const std::string kEditedStudy = R"(
time_zone = "Europe/Dublin"
start = 2027-01-01
[household]
kwh_per_year = 1500
includes = "rack"
[finance]
years = 4
discount_rate = 0.03
price_rise = 0.02
[tariff]
currency = "EUR"
tax = 0.09
standing_per_day = 0.40
minimum_per_month = 38.5
band = [ { name = "night", price = 0.16, hours = "23:00-08:00" }, { name = "day", price = 0.32 } ]
block = [ { up_to = 100, price = 0.02 }, { price = 0.07 } ]
[[workload]]
id = "films"
use = [ { hours = "19:00-23:00", units = 4, share = 0.4, pattern = "independent" }, { days = "sat,sun", hours = "14:00-18:00", minutes = 90 } ]
[[workload]]
id = "photos"
use = [ { hours = "08:00-22:00", share = [0.5, 0.9] } ]
[[workload]]
id = "cameras"
use = [ {} ]
[[candidate]]
id = "rack"
purchase = 60
[[candidate.device]]
watts = { idle = 50, busy = 120, curve = "concave", max = 110 }
groups = { disks = 9 }
[candidate.device.increments]
films = { first = 6, each = 4, group = "disks" }
photos = { load = 0.4 }
cameras = { each = 2, group = "disks" }
[[candidate]]
id = "palm"
purchase = [400, 440]
later = [ { year = 2, cost = 30 } ]
resale = 50
[[candidate.device]]
watts = { idle = 9, sleep = 2, max = 21 }
rest = [ { hours = "03:00-05:00", state = "sleep" } ]
increments = { films = 3.1, photos = { table = [2, 3] }, cameras = 1 }
[[candidate.device]]
runs = []
assists = ["films"]
watts = { idle = [4, 6] }
increments = { films = { first = 1.5 } }
[[candidate]]
id = "tower"
purchase = 180
[[candidate.device]]
watts = { at_load = [16, 25, 33, 40], max = 38 }
increments = { films = { load = 0.2 }, photos = 3, cameras = { load = 0.1 } }
)";

std::string without_line(const std::string& text, const std::string& start) {
  const std::size_t begin = text.find(start);
  REQUIRE(begin != std::string::npos);
  return text.substr(0, begin) + text.substr(text.find('\n', begin) + 1);
}

std::string with_household(const std::string& text, double factor) {
  const Reckoned as_written = reckon(kEditedStudy);
  std::string months;
  for (const units::Energy kwh : as_written.result.without.household) {
    months += digits(units::in_kilowatt_hours(kwh) * factor) + ", ";
  }
  return replaced(without_line(text, "includes = \"rack\""), "kwh_per_year = 1500",
                  "kwh_per_month = [" + months + "]");
}

std::string price(double factor, std::string text) {
  text = replaced(text, "price = 0.16", "price = " + digits(0.16 * factor));
  text = replaced(text, "price = 0.32", "price = " + digits(0.32 * factor));
  text = replaced(text, "price = 0.02", "price = " + digits(0.02 * factor));
  return replaced(text, "price = 0.07", "price = " + digits(0.07 * factor));
}

std::string films(double factor, std::string text) {
  const double share = 90.0 / 240;
  text = replaced(text, "share = 0.4,", "share = " + digits(std::min(1.0, 0.4 * factor)) + ",");
  return replaced(text, "minutes = 90", "share = " + digits(std::min(1.0, share * factor)));
}

std::string use(double factor, std::string text) {
  text = films(factor, text);
  text = replaced(text, "share = [0.5, 0.9]",
                  "share = " + range(std::min(1.0, 0.5 * factor), std::min(1.0, 0.9 * factor)));
  return replaced(text, "use = [ {} ]",
                  "use = [ { share = " + digits(std::min(1.0, factor)) + " } ]");
}

std::string purchase(double rack, double palm, double tower, std::string text) {
  text = replaced(text, "purchase = 60", "purchase = " + digits(60 * rack));
  text = replaced(text, "purchase = [400, 440]", "purchase = " + range(400 * palm, 440 * palm));
  return replaced(text, "purchase = 180", "purchase = " + digits(180 * tower));
}

std::string idle_of_rack(double factor, std::string text) {
  const double idle = 50 * factor;
  text = replaced(text, "idle = 50", "idle = " + digits(idle));
  text = replaced(text, "busy = 120", "busy = " + digits(std::max(120.0, idle)));
  return replaced(text, "max = 110", "max = " + digits(std::max(110.0, idle)));
}

std::string idle_of_palm(double factor, std::string text) {
  text = replaced(text, "idle = 9", "idle = " + digits(9 * factor));
  text = replaced(text, "max = 21", "max = " + digits(std::max(21.0, 9 * factor)));
  return replaced(text, "idle = [4, 6]", "idle = " + range(4 * factor, 6 * factor));
}

bool close(double a, double b) {
  return std::fabs(a - b) <= 1e-9 * std::max(std::fabs(a), std::fabs(b)) + 1e-12;
}

std::vector<Totals> totals_of(const Assessment& assessment) {
  std::vector<Totals> totals;
  for (const CandidateResult& candidate : assessment.candidates) {
    totals.push_back({units::in_kilowatt_hours(candidate.energy),
                      units::in_currency(candidate.cost.cost),
                      candidate.lifetime ? candidate.lifetime->present_cost : 0});
  }
  return totals;
}

std::string difference(const std::vector<Totals>& got, const std::vector<Totals>& want) {
  if (got.size() != want.size()) return "size";
  for (std::size_t c = 0; c < got.size(); ++c) {
    const auto words = [c](const char* figure, double a, double b) {
      return std::string(figure) + " of candidate " + std::to_string(c) + ": " + digits(a) +
             " for " + digits(b);
    };
    if (!close(got[c].energy_kwh, want[c].energy_kwh)) {
      return words("energy", got[c].energy_kwh, want[c].energy_kwh);
    }
    if (!close(got[c].cost, want[c].cost)) return words("cost", got[c].cost, want[c].cost);
    if (!close(got[c].present_cost, want[c].present_cost)) {
      return words("present cost", got[c].present_cost, want[c].present_cost);
    }
  }
  return "";
}

Sweep sweep(const model::Study& study, const std::string& name, double low, double high,
            std::size_t points) {
  const auto factor = decide::factor_named(study, name);
  REQUIRE(factor);
  return {*factor, low, high, points};
}

Grid::Grid(decide::WhatIf& what_if) : rows(what_if.rows()) {
  REQUIRE(what_if.prepare().empty());
  REQUIRE(what_if.reckon(0, rows, all).empty());
  candidates = all.totals.size() / rows;
}

std::vector<Totals> Grid::row(std::size_t r) const {
  const auto begin = all.totals.begin() + static_cast<std::ptrdiff_t>(r * candidates);
  return {begin, begin + static_cast<std::ptrdiff_t>(candidates)};
}

}  // namespace wattweek::tests
