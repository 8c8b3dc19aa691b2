// What headings say.

#include "logs/headings.hpp"

#include <doctest/doctest.h>

using namespace wattweek::logs;

namespace {

std::string words(std::string_view name) {
  std::string text;
  for (const std::string& word : words_of(name)) text += (text.empty() ? "" : " ") + word;
  return text;
}

// The quantity and the unit.
std::string meant(std::string_view name) {
  const Heading heading = heading_of(name);
  const char* const quantity = heading.quantity == Quantity::unsaid    ? "unsaid"
                               : heading.quantity == Quantity::power   ? "power"
                               : heading.quantity == Quantity::energy  ? "energy"
                               : heading.quantity == Quantity::counter ? "counter"
                                                                       : "other";
  const char* const unit = !heading.unit              ? ""
                           : heading.unit == Unit::w  ? " W"
                           : heading.unit == Unit::kw ? " kW"
                           : heading.unit == Unit::wh ? " Wh"
                                                      : " kWh";
  return std::string(quantity) + unit;
}

}  // namespace

TEST_CASE("headings are taken apart into words") {
  CHECK(words("ActivePower_kW") == "active power kw");
  CHECK(words("energy (kWh)") == "energy kwh");
  CHECK(words("HourUTC") == "hour utc");
  CHECK(words("Z\xc3\xa4hlerstand 1.8.0") == "z\xc3\xa4hlerstand 1 8 0");
  CHECK(words("") == "");
}

TEST_CASE("quantities and units in headings") {
  CHECK(meant("Power") == "power");
  CHECK(meant("power [W]") == "power W");
  CHECK(meant("Leistung (kW)") == "power kW");
  CHECK(meant("Watts") == "power W");
  CHECK(meant("Verbrauch in kWh") == "energy kWh");
  CHECK(meant("Energy Wh") == "energy Wh");
  CHECK(meant("Total energy (kWh)") == "counter kWh");
  CHECK(meant("Z\xc3\xa4hlerstand") == "counter");
  CHECK(meant("Phase A power") == "power");
  CHECK(meant("Current power W") == "power W");
  CHECK(meant("Energy per h, kWh") == "energy kWh");
  CHECK(meant("15 min mean W") == "power W");
  CHECK(meant("apower") == "power");
  CHECK(meant("Gesamtleistung") == "power");
  CHECK(meant("1-0:1.8.0") == "counter");
  CHECK(meant("16.7.0") == "power");
  CHECK(meant("meter_id") == "unsaid");
  CHECK(meant("value") == "unsaid");
  CHECK(meant("state") == "unsaid");
}

TEST_CASE("what a fit never wants") {
  for (const char* const name :
       {"Voltage", "U (V)", "Current", "Current [A]", "I_mA", "Apparent power VA",
        "Reactive power kvar", "Power factor", "frequency Hz", "Temperature", "max power W",
        "price EUR/kWh", "No. nr", "duration s"}) {
    CAPTURE(name);
    CHECK(meant(name).substr(0, 5) == "other");
  }
}

TEST_CASE("times, directions and series in headings") {
  CHECK(heading_of("interval_start").is_start);
  CHECK(heading_of("Datum von").is_start);
  CHECK(heading_of("Period end").is_end);
  CHECK(heading_of("Datum bis").is_end);
  CHECK(heading_of("Time (UTC)").is_utc);
  CHECK(heading_of("Export kWh").is_out);
  CHECK(heading_of("device_id").is_series);
  CHECK(heading_of("meter_id").is_series);
  CHECK_FALSE(heading_of("Plug (W)").is_series);
  CHECK(heading_of("2.8.0").is_out);
  CHECK_FALSE(heading_of("time").is_series);
  CHECK_FALSE(heading_of("power").is_out);
}
