#include "layout.hpp"

namespace wattweek::logs {

double factor_of(Unit unit) { return unit == Unit::kw || unit == Unit::kwh ? 1000 : 1; }

bool is_power(Unit unit) { return unit == Unit::w || unit == Unit::kw; }

std::string_view name_of(Unit unit) {
  switch (unit) {
    case Unit::w:
      return "W";
    case Unit::kw:
      return "kW";
    case Unit::wh:
      return "Wh";
    case Unit::kwh:
      return "kWh";
  }
  return {};
}

}  // namespace wattweek::logs
