#pragma once

#include <string>

namespace wattweek::tests {

/// A study with every key that may hold a range inline, each as one, but for an increment's `load`.
inline const std::string kAllRanges = R"(
time_zone = "Etc/UTC"
start = 2027-01-01
[household]
kwh_per_year = [3000, 3600]
[carbon]
kg_per_kwh = [0.2, 0.4]
[finance]
years = 3
discount_rate = [0.01, 0.03]
price_rise = [0.0, 0.02]
[tariff]
currency = "EUR"
tax = [0.05, 0.15]
standing_per_day = [0.2, 0.4]
standing_per_month = [1, 3]
minimum_per_month = [10, 12]
band = [ { name = "night", price = [0.10, 0.20], hours = "22:00-06:00" }, { name = "day", price = [0.3, 0.5] } ]
block = [ { up_to = 100, price = [0.01, 0.03] }, { price = [0.02, 0.06] } ]
[[workload]]
id = "films"
compute = [2, 4]
use = [ { hours = "20:00-22:00", share = [0.2, 0.6] }, { hours = "10:00-12:00", minutes = [30, 60] } ]
[[workload]]
id = "music"
use = [ { share = 0.5 } ]
[[workload]]
id = "mail"
use = [ { share = 0.5 } ]
[[meter]]
id = "plug"
scale = [0.98, 1.02]
[[candidate]]
id = "palm"
purchase = [200, 300]
resale = [20, 40]
later = [ { year = 1, cost = 5 }, { year = 2, cost = [30, 50] } ]
[[candidate.device]]
runs = []
meter = "plug"
watts = { idle = [3, 5] }
[[candidate.device]]
capacity = [50, 60]
meter = "plug"
rest = [ { hours = "03:00-04:00", state = "sleep" } ]
watts = { off = [0.1, 0.3], sleep = [1, 2], idle = [8, 9], busy = [20, 24], max = [22, 26] }
groups = { disks = [4, 6] }
increments = { music = { first = [1, 2], each = [0.5, 1.5], group = "disks" }, mail = [2, 4], chess = [1, 9] }
)";

}  // namespace wattweek::tests
