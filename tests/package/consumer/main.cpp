#include <iostream>

#include "wattweek/read/read.hpp"
#include "wattweek/version.hpp"

using namespace wattweek;

int main() {
  const auto box = read::profile({"box.toml", "box.toml", "[watts]\nidle = 8\n"});
  if (!box.value) return 1;
  const units::Energy year = box.value->idle.low * units::hours(8760);
  std::cout << "wattweek " << kVersion << ": 8 W all year are " << units::in_kilowatt_hours(year)
            << " kWh\n";
}
