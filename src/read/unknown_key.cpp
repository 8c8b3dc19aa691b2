#include "unknown_key.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "value.hpp"

namespace wattweek::read {

namespace {

// "[[workload]]", "the top of the file (...)", "an entry of [increments]".
std::string home(const KeyTable& table) {
  if (table.path.empty()) return "the top of the file (before the first [header])";
  const std::size_t star = table.path.find(".*");
  if (star != std::string::npos) return "an entry of [" + table.path.substr(0, star) + "]";
  return table.form == TableForm::repeated ? "[[" + table.path + "]]" : "[" + table.path + "]";
}

bool knows(const KeyTable& table, std::string_view word) {
  return std::find(table.keys.begin(), table.keys.end(), word) != table.keys.end();
}

std::string joined_path(const KeyTable& table, std::string_view word) {
  return table.path.empty() ? std::string(word) : table.path + "." + std::string(word);
}

// [[use]] in place of [[workload.use]]: the whole header of every table of that name.
std::vector<std::string> headers_ending_in(FileKind kind, std::string_view word) {
  std::vector<std::string> headers;
  for (const KeyTable& table : key_tables(kind)) {
    const KeyTable* below = key_table(kind, joined_path(table, word));
    if (knows(table, word) && below != nullptr) headers.push_back(home(*below));
  }
  return headers;
}

std::vector<std::string> homes(const UnknownKey& key) {
  std::vector<std::string> found;
  for (const KeyTable& table : key_tables(key.kind)) {
    if (table.path != key.table.path && knows(table, key.word)) found.push_back(home(table));
  }
  return found;
}

std::string either(const std::vector<std::string>& texts) {
  return listed({texts.begin(), texts.end()}, false);
}

// Where the key belongs in this kind of file; empty where no other table knows it.
std::string place_advice(const UnknownKey& key) {
  if (key.is_table) {
    const std::vector<std::string> headers = headers_ending_in(key.kind, key.word);
    if (!headers.empty()) return "write " + either(headers);
  }
  const std::vector<std::string> known = homes(key);
  if (known.empty()) return "";
  std::string advice = std::string(key.word) + " belongs to " + either(known);
  if (!key.table.path.empty()) {
    advice += "; a key written after " + home(key.table) + " belongs to that header";
  }
  return advice;
}

std::string other_kind_advice(const UnknownKey& key) {
  struct Kind {
    FileKind kind;
    std::string_view name;
  };
  constexpr std::array<Kind, 3> kinds{{{FileKind::study, "a study file"},
                                       {FileKind::profile, "a profile file"},
                                       {FileKind::tariff, "a tariff file"}}};
  if (!key.table.path.empty()) return "";
  for (const Kind& kind : kinds) {
    if (kind.kind != key.kind && knows(key_tables(kind.kind).front(), key.word)) {
      return std::string(key.word) + " belongs to " + std::string(kind.name);
    }
  }
  return "";
}

struct UnitSuffix {
  std::string_view suffix;
  std::string_view advice;
};

// idle_kw, price_ct: a known key with a unit behind it.
constexpr std::array<UnitSuffix, 14> kUnitSuffixes{{
    {"_w", "it counts W"},
    {"_watt", "it counts W"},
    {"_watts", "it counts W"},
    {"_kw", "it counts W, and 1 kW is 1000 W"},
    {"_mw", "it counts W, and 1 mW is 0.001 W"},
    {"_va", "it counts W, real power, not volt-amperes"},
    {"_ct", "it counts whole units of the currency, not cents"},
    {"_cent", "it counts whole units of the currency, not cents"},
    {"_cents", "it counts whole units of the currency, not cents"},
    {"_eur", "it is in the tariff's currency"},
    {"_per_kwh", "it is per kWh already"},
    {"_kwh", "it counts kWh"},
    {"_percent", "it is a fraction: 0.05 is 5 %"},
    {"_pct", "it is a fraction: 0.05 is 5 %"},
}};

std::string unit_advice(const UnknownKey& key) {
  for (const UnitSuffix& unit : kUnitSuffixes) {
    if (key.word.size() <= unit.suffix.size()) continue;
    const std::string_view stem = key.word.substr(0, key.word.size() - unit.suffix.size());
    if (key.word.substr(stem.size()) == unit.suffix && knows(key.table, stem)) {
      return "write " + std::string(stem) + ", " + std::string(unit.advice);
    }
  }
  return "";
}

std::string nearest_advice(const UnknownKey& key) {
  const std::string_view near = diag::nearest(key.word, key.table.keys);
  return near.empty() ? "" : "did you mean " + std::string(near) + "?";
}

}  // namespace

std::string unknown_key_advice(const UnknownKey& key) {
  std::string advice = unit_advice(key);
  if (!advice.empty()) return advice;
  advice = nearest_advice(key);
  std::string place = place_advice(key);
  if (place.empty()) place = other_kind_advice(key);
  if (!advice.empty() && !place.empty()) return advice + " " + place;
  if (!advice.empty() || !place.empty()) return advice + place;
  return "expected " + listed(key.table.keys, false);
}

}  // namespace wattweek::read
