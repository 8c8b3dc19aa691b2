#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("figures in quotes get the figure to write") {
  const std::vector<Case> cases{
      {"a number in quotes", edited(kProfile, "idle = 10", R"(idle = "13.5")"),
       R"(box.toml:4:8: error: watts.idle = "13.5": expected a number or a range [low, high], not below 0, in W; write 13.5)"},
      {"a decimal comma in quotes", edited(kProfile, "idle = 10", R"(idle = "13,5")"),
       R"(box.toml:4:8: error: watts.idle = "13,5": expected a number or a range [low, high], not below 0, in W; write 13.5 (with a decimal point))"},
      {"watts", edited(kProfile, "idle = 10", R"(idle = "13.5 W")"),
       R"(box.toml:4:8: error: watts.idle = "13.5 W": expected a number or a range [low, high], not below 0, in W; write 13.5 (watts are meant))"},
      {"kilowatts", edited(kProfile, "idle = 10", R"(idle = "0.0135 kW")"),
       R"(box.toml:4:8: error: watts.idle = "0.0135 kW": expected a number or a range [low, high], not below 0, in W; write 13.5 (watts are meant, 1 kW is 1000 W))"},
      {"milliwatts", edited(kProfile, "idle = 10", R"(idle = "250mW")"),
       R"(box.toml:4:8: error: watts.idle = "250mW": expected a number or a range [low, high], not below 0, in W; write 0.25 (watts are meant, 1 mW is 0.001 W))"},
      {"volt-amperes", edited(kProfile, "idle = 10", R"(idle = "20 VA")"),
       R"(box.toml:4:8: error: watts.idle = "20 VA": expected a number or a range [low, high], not below 0, in W; volt-amperes are not watts: write the meter's real power, in W)"},
      {"a range in quotes", edited(kProfile, "idle = 10", R"(idle = "13-14")"),
       R"(box.toml:4:8: error: watts.idle = "13-14": expected a number or a range [low, high], not below 0, in W; write [13, 14] for a range)"},
      {"a range with dots", edited(kProfile, "idle = 10", R"(idle = "13..14")"),
       R"(box.toml:4:8: error: watts.idle = "13..14": expected a number or a range [low, high], not below 0, in W; write [13, 14] for a range)"},
      {"a figure of something else", edited(kProfile, "idle = 10", R"(idle = "13 apples")"),
       R"(box.toml:4:8: error: watts.idle = "13 apples": expected a number or a range [low, high], not below 0, in W)"},
      {"a leading point", edited(kProfile, "idle = 10", R"(idle = ".5")"),
       R"(box.toml:4:8: error: watts.idle = ".5": expected a number or a range [low, high], not below 0, in W; write 0.5)"},
      {"a negative figure", edited(kProfile, "idle = 10", R"(idle = "-5 W")"),
       R"(box.toml:4:8: error: watts.idle = "-5 W": expected a number or a range [low, high], not below 0, in W; write -5 (watts are meant))"},
  };
  check_cases(cases, read_profile);
}

TEST_CASE("money in quotes gets the amount to write") {
  const std::vector<Case> cases{
      {"cents", edited(kTariff, "price = 0.3", R"(price = "25 ct")"),
       R"(day.toml:9:9: error: band.price = "25 ct": expected a number or a range [low, high], in currency per kWh; write 0.25 (the price is in whole units of the currency, not in cents))"},
      {"cents per kWh", edited(kTariff, "price = 0.3", R"(price = "25 ct/kWh")"),
       R"(day.toml:9:9: error: band.price = "25 ct/kWh": expected a number or a range [low, high], in currency per kWh; write 0.25 (the price is in whole units of the currency, not in cents))"},
      {"pence", edited(kTariff, "price = 0.3", R"(price = "7.5p")"),
       R"(day.toml:9:9: error: band.price = "7.5p": expected a number or a range [low, high], in currency per kWh; write 0.075 (the price is in whole units of the currency, not in cents))"},
      {"euros", edited(kTariff, "price = 0.3", R"(price = "0.25 EUR")"),
       R"(day.toml:9:9: error: band.price = "0.25 EUR": expected a number or a range [low, high], in currency per kWh; write 0.25 (the number alone; the tariff's currency says the rest))"},
      {"a sign behind", edited(kTariff, "price = 0.3", R"(price = "0,25 €")"),
       R"(day.toml:9:9: error: band.price = "0,25 €": expected a number or a range [low, high], in currency per kWh; write 0.25 (the number alone; the tariff's currency says the rest))"},
      {"a sign in front", edited(kTariff, "price = 0.3", R"(price = "€0.25")"),
       R"(day.toml:9:9: error: band.price = "€0.25": expected a number or a range [low, high], in currency per kWh; write 0.25)"},
      {"a price per kWh", edited(kTariff, "price = 0.3", R"(price = "0.25 EUR/kWh")"),
       R"(day.toml:9:9: error: band.price = "0.25 EUR/kWh": expected a number or a range [low, high], in currency per kWh; write 0.25 (the number alone; the tariff's currency says the rest))"},
      {"percent", edited(kTariff, "tax = 0.2", R"(tax = "23%")"),
       R"(day.toml:2:7: error: tax = "23%": expected a number or a range [low, high], not below 0, as a fraction (0.05 is 5 %); write 0.23 (a fraction is meant))"},
      {"percent with a blank", edited(kTariff, "tax = 0.2", R"(tax = "23 %")"),
       R"(day.toml:2:7: error: tax = "23 %": expected a number or a range [low, high], not below 0, as a fraction (0.05 is 5 %); write 0.23 (a fraction is meant))"},
      {"percent in words", edited(kTariff, "tax = 0.2", R"(tax = "23 percent")"),
       R"(day.toml:2:7: error: tax = "23 percent": expected a number or a range [low, high], not below 0, as a fraction (0.05 is 5 %); write 0.23 (a fraction is meant))"},
      {"an amount a day", edited(kTariff, "tax = 0.2", R"(standing_per_day = "30 ct")"),
       R"(day.toml:2:20: error: standing_per_day = "30 ct": expected a number or a range [low, high], in the tariff's currency; write 0.3 (the amount is in the tariff's currency, not in cents))"},
      {"kilowatt-hours", edited(kTariff, "tax = 0.2", R"([[block]]
up_to = "0.1 MWh"
price = 1)"),
       R"(day.toml:3:9: error: block.up_to = "0.1 MWh": expected a single number, above 0, in kWh; write 100 (kWh are meant, 1 MWh is 1000 kWh))"},
  };
  check_cases(cases, read_tariff);
}
