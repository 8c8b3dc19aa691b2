#include "headings.hpp"

#include <algorithm>
#include <array>

namespace wattweek::logs {
namespace {

using Words = std::vector<std::string_view>;

// The trade's words in the languages whose exports we have seen; Latin letters in lower case.
const Words kPower = {"power",     "watt",     "watts",   "leistung", "wirkleistung",
                      "puissance", "potencia", "potenza", "vermogen", "effekt",
                      "teho",      "demand",   "load",    "last",     "pow",
                      "p",         "w",        "kw"};
const Words kEnergy = {"energy",   "energie",      "energia", "consumption", "verbrauch", "usage",
                       "consumed", "consommation", "consumo", "verbruik",    "forbrug",   "import",
                       "imported", "bezug",        "wh",      "kwh"};
const Words kCounter = {"total",       "counter",     "register",     "meter",      "zaehler",
                        "zähler",      "zählerstand", "zaehlerstand", "cumulative", "cumulated",
                        "accumulated", "index",       "stand",        "meterstand", "lifetime"};
const Words kOther = {"voltage",
                      "volt",
                      "volts",
                      "spannung",
                      "tension",
                      "ampere",
                      "amperes",
                      "amp",
                      "amps",
                      "var",
                      "kvar",
                      "va",
                      "kva",
                      "hz",
                      "frequency",
                      "frequenz",
                      "factor",
                      "pf",
                      "cos",
                      "apparent",
                      "reactive",
                      "blindleistung",
                      "scheinleistung",
                      "temperature",
                      "temp",
                      "humidity",
                      "battery",
                      "rssi",
                      "price",
                      "preis",
                      "eur",
                      "usd",
                      "cost",
                      "kosten",
                      "duration",
                      "seconds",
                      "minutes",
                      "nr",
                      "number",
                      "sequence",
                      "seq",
                      "row",
                      "min",
                      "max",
                      "minimum",
                      "maximum",
                      "count",
                      "sd",
                      "stddev",
                      "signal"};
const Words kPowerEnds = {"power", "leistung"};
const Words kEnergyEnds = {"energy", "energie", "verbrauch"};
// They tell of volts and amperes only where no power or energy is named beside them.
const Words kWeakOther = {"current", "strom", "v", "a", "ma", "intensity", "s", "h"};
const Words kOut = {"export",     "exported", "einspeisung", "feed",  "feedin",
                    "production", "returned", "generation",  "solar", "pv"};
const Words kStart = {"start", "from", "begin", "von", "since", "beginn", "anfang", "ab", "desde"};
const Words kEnd = {"end", "to", "until", "bis", "ende", "stop", "finish", "hasta"};
// Whatever else is named beside them.
const Words kNames = {"id", "name", "type"};
const Words kSeries = {"id",       "device",   "entity", "area",   "series",  "channel",
                       "sensor",   "topic",    "field",  "metric", "name",    "kind",
                       "type",     "plug",     "socket", "tag",    "measure", "measurement",
                       "quantity", "property", "unit",   "units",  "einheit"};

bool is_letter_or_digit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
         static_cast<unsigned char>(c) >= 0x80;
}
bool is_upper(char c) { return c >= 'A' && c <= 'Z'; }
bool is_lower(char c) { return c >= 'a' && c <= 'z'; }

bool names_any(const std::vector<std::string>& words, const Words& of) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    return std::find(of.begin(), of.end(), word) != of.end();
  });
}

// Words grow at their beginning: "apower", "Gesamtleistung".
bool ends_any(const std::vector<std::string>& words, const Words& in) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    return std::any_of(in.begin(), in.end(), [&](std::string_view end) {
      return word.size() > end.size() && word.substr(word.size() - end.size()) == end;
    });
  });
}

std::optional<Unit> unit_in(const std::vector<std::string>& words) {
  constexpr std::array<std::pair<std::string_view, Unit>, 6> kUnits = {{{"kwh", Unit::kwh},
                                                                        {"wh", Unit::wh},
                                                                        {"kw", Unit::kw},
                                                                        {"w", Unit::w},
                                                                        {"watt", Unit::w},
                                                                        {"watts", Unit::w}}};
  for (const auto& [name, unit] : kUnits) {
    if (std::find(words.begin(), words.end(), name) != words.end()) return unit;
  }
  return std::nullopt;
}

// "kWh" is one word, though a capital stands in its middle.
bool begins_word(std::string_view name, std::size_t at) {
  if (at == 0 || !is_upper(name[at]) || !is_lower(name[at - 1])) return false;
  return name[at] != 'W' || name[at - 1] != 'k';
}

Quantity quantity_of(const std::vector<std::string>& words, std::optional<Unit> unit) {
  const bool is_power_unit = unit == Unit::w || unit == Unit::kw;
  const bool counts = names_any(words, kCounter);
  if (names_any(words, kOther)) return Quantity::other;
  if (!unit && names_any(words, kNames)) return Quantity::unsaid;
  if (is_power_unit) return Quantity::power;
  if (unit) return counts ? Quantity::counter : Quantity::energy;
  if (names_any(words, kPower) || ends_any(words, kPowerEnds)) return Quantity::power;
  if (counts) return Quantity::counter;
  if (names_any(words, kEnergy) || ends_any(words, kEnergyEnds)) return Quantity::energy;
  return names_any(words, kWeakOther) ? Quantity::other : Quantity::unsaid;
}

// Codes of registers, "1.8.0" and the like (IEC 62056-61, OBIS: 1 is import, 2 is export, 16 is
// their difference; 7 is power now, 8 is energy, all of it).
void look_for_codes(const std::vector<std::string>& words, Heading& heading) {
  for (std::size_t i = 0; i + 2 < words.size() && heading.quantity == Quantity::unsaid; ++i) {
    if (words[i] != "1" && words[i] != "2" && words[i] != "16") continue;
    if (words[i + 1] == "8") heading.quantity = Quantity::counter;
    if (words[i + 1] == "7") heading.quantity = Quantity::power;
    heading.is_out = words[i] == "2" && heading.quantity != Quantity::unsaid;
  }
}

}  // namespace

Heading heading_of(std::string_view name) {
  std::vector<std::string> words = words_of(name);
  // "15 min" is a time, "min" alone is the lowest.
  for (std::size_t i = 1; i < words.size(); ++i) {
    const bool is_counted = words[i - 1].find_first_not_of("0123456789") == std::string::npos;
    if (words[i] == "min" && is_counted) words[i].clear();
  }
  Heading heading;
  heading.unit = unit_in(words);
  heading.quantity = quantity_of(words, heading.unit);
  heading.is_start = names_any(words, kStart);
  heading.is_end = names_any(words, kEnd);
  heading.is_utc = names_any(words, {"utc", "gmt"});
  heading.is_out = names_any(words, kOut);
  heading.is_series = heading.quantity == Quantity::unsaid && names_any(words, kSeries);
  look_for_codes(words, heading);
  return heading;
}

std::vector<std::string> words_of(std::string_view name) {
  std::vector<std::string> words;
  bool in_word = false;
  for (std::size_t i = 0; i < name.size(); ++i) {
    if (!is_letter_or_digit(name[i])) {
      in_word = false;
      continue;
    }
    if (!in_word || begins_word(name, i)) words.emplace_back();
    in_word = true;
    words.back() += is_upper(name[i]) ? static_cast<char>(name[i] - 'A' + 'a') : name[i];
  }
  return words;
}

}  // namespace wattweek::logs
