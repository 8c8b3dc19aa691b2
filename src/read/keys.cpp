#include "wattweek/read/keys.hpp"

#include <algorithm>

namespace wattweek::read {

namespace {

using Tables = std::vector<KeyTable>;
using Keys = std::vector<std::string_view>;

const Keys kWindowKeys{"days", "hours", "months", "dates"};

Keys joined(Keys first, const Keys& second) {
  first.insert(first.end(), second.begin(), second.end());
  return first;
}

// clang-format off: one line for each table
Tables profile_tables() {
  return {
      {"", TableForm::single, {"name", "capacity", "meter", "watts", "groups", "increments"}},
      {"watts",
       TableForm::single,
       {"off", "sleep", "idle", "busy", "max", "curve", "at_load", "week"}},
      {"groups", TableForm::single, {}, true},
      {"increments", TableForm::single, {}, true},
      {"increments.*", TableForm::single, {"first", "each", "table", "load", "group"}},
  };
}

Tables tariff_tables() {
  return {
      {"",
       TableForm::single,
       {"name", "currency", "tax", "standing_per_day", "standing_per_month", "minimum_per_month",
        "holidays", "holidays_as", "band", "block", "blocks_per"}},
      {"band", TableForm::repeated, joined({"name", "price", "when"}, kWindowKeys)},
      {"band.when", TableForm::repeated, kWindowKeys},
      {"block", TableForm::repeated, {"up_to", "price", "months"}},
  };
}

Tables study_only_tables() {
  return {
      {"",
       TableForm::single,
       {"title", "time_zone", "start", "months", "tariff", "holidays", "holidays_as", "baseline",
        "household", "carbon", "finance", "workload", "away", "candidate", "meter"}},
      {"household", TableForm::single, {"kwh_per_year", "kwh_per_month", "includes"}},
      {"carbon", TableForm::single, {"kg_per_kwh"}},
      {"finance", TableForm::single, {"years", "discount_rate", "price_rise"}},
      {"workload", TableForm::repeated, {"id", "name", "unit", "compute", "use"}},
      {"workload.use", TableForm::repeated,
       joined({"units", "share", "minutes", "pattern"}, kWindowKeys)},
      {"away", TableForm::repeated, {"dates", "workloads"}},
      {"candidate",
       TableForm::repeated,
       {"id", "name", "purchase", "resale", "skips", "later", "device"}},
      {"candidate.later", TableForm::repeated, {"year", "cost", "name"}},
      {"candidate.device",
       TableForm::repeated,
       {"profile", "name", "count", "runs", "assists", "rest"}},
      {"candidate.device.rest", TableForm::repeated, joined({"state"}, kWindowKeys)},
      {"meter", TableForm::repeated, {"id", "scale"}},
  };
}
// clang-format on

KeyTable* find(Tables& tables, std::string_view path) {
  const auto at = [path](const KeyTable& table) { return table.path == path; };
  const auto found = std::find_if(tables.begin(), tables.end(), at);
  return found == tables.end() ? nullptr : &*found;
}

void add_new(Keys& keys, const Keys& more) {
  for (const std::string_view key : more) {
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
  }
}

// Puts another kind of file's tables under `path`; its top-level keys join those of `path`.
void put_inline(Tables& tables, const std::string& path, const Tables& other) {
  if (find(tables, path) == nullptr) tables.push_back({path, TableForm::single, {}});
  add_new(find(tables, path)->keys, other.front().keys);
  for (const KeyTable& table : other) {
    if (table.path.empty()) continue;
    tables.push_back({path + "." + table.path, table.form, table.keys, table.any_key});
  }
}

Tables study_tables() {
  Tables tables = study_only_tables();
  put_inline(tables, "tariff", tariff_tables());
  put_inline(tables, "candidate.device", profile_tables());
  return tables;
}

}  // namespace

const std::vector<KeyTable>& key_tables(FileKind kind) {
  static const Tables study = study_tables();
  static const Tables profile = profile_tables();
  static const Tables tariff = tariff_tables();
  if (kind == FileKind::study) return study;
  return kind == FileKind::profile ? profile : tariff;
}

const KeyTable* key_table(FileKind kind, std::string_view path) {
  for (const KeyTable& table : key_tables(kind)) {
    if (table.path == path) return &table;
  }
  return nullptr;
}

std::vector<std::string_view> telling_keys(FileKind kind) {
  std::vector<std::string_view> telling;
  for (const std::string_view key : key_tables(kind).front().keys) {
    bool shared = false;
    for (const FileKind other : {FileKind::study, FileKind::profile, FileKind::tariff}) {
      const Keys& keys = key_tables(other).front().keys;
      shared |= other != kind && std::find(keys.begin(), keys.end(), key) != keys.end();
    }
    if (!shared) telling.push_back(key);
  }
  return telling;
}

}  // namespace wattweek::read
