#include "price_bands.hpp"

namespace wattweek::calendar {

std::vector<Condition> bands_of(const model::Tariff& tariff) {
  std::vector<Condition> bands;
  for (const model::Band& band : tariff.bands) {
    Condition& condition = bands.emplace_back();
    for (const model::Window& window : band.when) condition.windows.push_back(&window);
    condition.holidays = &tariff.holidays;
  }
  return bands;
}

}  // namespace wattweek::calendar
