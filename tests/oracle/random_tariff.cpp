#include "random_tariff.hpp"

#include <fmt/ranges.h>

namespace wattweek::oracle {
namespace {

std::string random_price(Dice& dice) {
  return dice.chance(10) ? dice.figure(-120, 0).text() : dice.figure(20, 600).text();
}

std::string random_band_windows(Dice& dice, const Period& period) {
  if (dice.chance(60)) return on_lines(random_window(dice, period));
  std::vector<std::string> windows;
  for (int i = dice.between(1, 3); i > 0; --i) {
    windows.push_back(in_braces(random_window(dice, period)));
  }
  return fmt::format("when = [ {} ]\n", fmt::join(windows, ", "));
}

// The last band covers what the others leave.
std::string random_rest_of_time(Dice& dice) {
  switch (dice.between(0, 3)) {
    case 0:
      return "hours = \"00:00-24:00\"\n";
    case 1:
      return "when = [ { hours = \"06:00-22:30\" }, { hours = \"22:30-06:00\" } ]\n";
    default:
      return "";
  }
}

std::string random_bands(Dice& dice, const Period& period, const std::string& prefix) {
  std::string text;
  const int count = dice.between(1, 4);
  for (int i = 1; i <= count; ++i) {
    text +=
        fmt::format("[[{}band]]\nname = \"band {}\"\nprice = {}\n", prefix, i, random_price(dice));
    text += i < count ? random_band_windows(dice, period) : random_rest_of_time(dice);
  }
  return text;
}

std::string random_ladder(Dice& dice, const std::string& prefix, const std::string& months,
                          bool per_day) {
  std::string text;
  const std::string filter = months.empty() ? "" : "months = \"" + months + "\"\n";
  int limit = 0;
  for (int step = dice.between(0, 3); step > 0; --step) {
    limit += dice.between(20, 400);
    text += fmt::format("[[{}block]]\n{}up_to = {}\nprice = {}\n", prefix, filter,
                        per_day ? limit / 30.0 : limit, random_price(dice));
  }
  return text + fmt::format("[[{}block]]\n{}price = {}\n", prefix, filter, random_price(dice));
}

std::string random_blocks(Dice& dice, const std::string& prefix, bool per_day) {
  switch (dice.between(0, 3)) {
    case 0:
      return random_ladder(dice, prefix, "oct-mar", per_day) +
             random_ladder(dice, prefix, "apr-sep", per_day);
    case 1:
      return random_ladder(dice, prefix, "nov-feb", per_day);
    default:
      return random_ladder(dice, prefix, "", per_day);
  }
}

}  // namespace

TariffText random_tariff(Dice& dice, const Period& period, const std::string& prefix) {
  TariffText tariff;
  std::string& keys = tariff.plain_keys;
  keys += "currency = \"EUR\"\n";
  if (dice.chance(40)) keys += "name = \"Invented contract\"\n";
  if (dice.chance(60)) keys += "tax = " + dice.figure(0, 250).text() + "\n";
  if (dice.chance(40)) keys += "standing_per_day = " + dice.figure(-50, 600).text() + "\n";
  if (dice.chance(40)) keys += "standing_per_month = " + dice.figure(-500, 15000).text() + "\n";
  if (dice.chance(40)) keys += "minimum_per_month = " + dice.figure(0, 250000).text() + "\n";
  if (dice.chance(40)) keys += random_holidays(dice, period) + "\n";
  if (dice.chance(50)) {
    keys += "holidays_as = \"" + dice.pick<std::string>({"sun", "sat", "wed"}) + "\"\n";
  }
  const bool has_blocks = dice.chance(50);
  const bool per_day = dice.chance(40);
  if (has_blocks && per_day) keys += "blocks_per = \"day\"\n";
  if (has_blocks && !per_day && dice.chance(30)) keys += "blocks_per = \"month\"\n";

  if (!has_blocks || dice.chance(85)) tariff.tables += random_bands(dice, period, prefix);
  if (has_blocks) tariff.tables += random_blocks(dice, prefix, per_day);
  return tariff;
}

}  // namespace wattweek::oracle
