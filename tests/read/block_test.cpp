#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("blocks: each month is a ladder that ends") {
  const std::vector<Case> cases{
      {"a block has a price", edited(kTariff, "tax = 0.2", R"([[block]]
months = "all")"),
       "day.toml:2:1: error: block.price is missing: expected a number or a range [low, high], in "
       "currency per kWh"},
      {"a limit is above 0", edited(kTariff, "tax = 0.2", "[[block]]\nup_to = 0\nprice = 0.1"),
       "day.toml:3:9: error: block.up_to = 0: expected a single number, above 0, in kWh"},
      {"a limit is no range",
       edited(kTariff, "tax = 0.2", "[[block]]\nup_to = [100, 200]\nprice = 0.1"),
       "day.toml:3:9: error: block.up_to = [100, 200]: expected a single number, above 0, in kWh"},
      {"the last block has no limit",
       edited(kTariff, "tax = 0.2", "[[block]]\nup_to = 100\nprice = 0.1"),
       "day.toml:3:9: error: block.up_to = 100: the last block of January has a limit; expected "
       "one more block without up_to"},
      {"limits rise",
       edited(kTariff, "tax = 0.2",
              "[[block]]\nup_to = 100\nprice = 0.1\n[[block]]\nup_to = 100\nprice = "
              "0.2\n[[block]]\nprice = 0.3"),
       "day.toml:6:9: error: block.up_to = 100: not above the block before in January; expected "
       "limits that rise from block to block"},
      {"only the last block has no limit",
       edited(kTariff, "tax = 0.2", "[[block]]\nprice = 0.1\n[[block]]\nprice = 0.2"),
       "day.toml:4:1: error: this block follows one without up_to in January; expected only the "
       "last block of a month to have none"},
      {"a block after the last one has no place",
       edited(kTariff, "tax = 0.2", "[[block]]\nprice = 0.1\n[[block]]\nup_to = 9\nprice = 0.2"),
       "day.toml:5:9: error: this block follows one without up_to in January; expected only the "
       "last block of a month to have none"},
      {"a ladder of some months may lack its end", edited(kTariff, "tax = 0.2", R"([[block]]
up_to = 100
price = 0.1
[[block]]
price = 0.2
months = "jan-nov")"),
       "day.toml:3:9: error: block.up_to = 100: the last block of December has a limit; expected "
       "one more block without up_to"},
      {"months of a block are a filter",
       edited(kTariff, "tax = 0.2", "[[block]]\nprice = 0.2\nmonths = 6"),
       R"(day.toml:4:10: error: block.months = 6: expected months such as "oct-mar" or "jan,jul", or "all"; months is a filter here; the length of the study is months at the top of the file)"},
      {"blocks count by month or by day", edited(kTariff, "tax = 0.2", R"(blocks_per = "year")"),
       R"(day.toml:2:14: error: blocks_per = "year": expected "month" or "day")"},
      {"a block knows three keys", edited(kTariff, "tax = 0.2", "[[block]]\nprice = 0.2\nupto = 7"),
       "day.toml:4:1: error: unknown key block.upto: did you mean up_to?"},
      {"blocks are tables", edited(kTariff, "tax = 0.2", "block = [1]"),
       "day.toml:2:10: error: block = 1: expected tables [[block]], or an array [ {...} ]"},
  };
  check_cases(cases, read_tariff);
}
