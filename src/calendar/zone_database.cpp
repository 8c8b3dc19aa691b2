#include "wattweek/calendar/zone_database.hpp"

#include <absl/time/civil_time.h>
#include <absl/time/time.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string_view>

#include "wattweek/diag/diagnostic.hpp"

namespace wattweek::calendar {

namespace {

constexpr std::string_view kNameCharacters =
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_+-/";

// Only what the database publishes as a name: nothing that climbs out of its folder, means the
// machine's own zone, or counts leap seconds.
bool is_iana_name(std::string_view name) {
  if (name.empty() || name.size() > 64) return false;
  if (name.find_first_not_of(kNameCharacters) != std::string_view::npos) return false;
  if (name.front() == '/' || name.back() == '/') return false;
  if (name.find("//") != std::string_view::npos) return false;
  for (const std::string_view own : {"localtime", "posixrules", "Factory"}) {
    if (name == own) return false;
  }
  for (const std::string_view prefix : {"right/", "posix/", "Fixed/"}) {
    if (name.substr(0, prefix.size()) == prefix) return false;
  }
  return true;
}

std::string database_folder() {
  const char* folder = std::getenv("TZDIR");
  return folder != nullptr && *folder != '\0' ? folder : "/usr/share/zoneinfo";
}

std::string no_such_zone(const std::string& name) {
  const std::vector<std::string> names = zone_names();
  const std::string expected = "an IANA time zone name such as Europe/Dublin";
  if (names.empty()) {
    return "no such time zone on this machine; expected " + expected +
           " (is the package tzdata installed?)";
  }
  const std::vector<std::string_view> views(names.begin(), names.end());
  const std::string_view near = diag::nearest(name, views);
  if (near.empty()) return "no such time zone; expected " + expected;
  return "no such time zone; did you mean '" + std::string(near) + "'?";
}

absl::Time start_of(std::chrono::sys_days day) {
  return absl::FromUnixSeconds(
      std::chrono::duration_cast<std::chrono::seconds>(day.time_since_epoch()).count());
}

ZoneRules changes_between(const absl::TimeZone& zone, absl::Time from, absl::Time to) {
  ZoneRules rules;
  std::chrono::seconds offset{zone.At(from).offset};
  rules.first_utc_offset = offset;
  absl::TimeZone::CivilTransition change;
  for (absl::Time at = from; zone.NextTransition(at, &change);) {
    // The clock shows `from` under the old offset at the very moment of the change.
    at = absl::FromCivil(change.from, absl::UTCTimeZone()) - absl::Seconds(offset.count());
    if (at >= to) break;
    if (change.from == change.to) continue;  // Only the name of the offset changes.
    offset += std::chrono::seconds{change.to - change.from};
    rules.changes.push_back({Instant{std::chrono::seconds{absl::ToUnixSeconds(at)}}, offset});
  }
  return rules;
}

}  // namespace

std::variant<ZoneRules, NoZone> zone_rules(const std::string& name, std::chrono::year_month first,
                                           int months) {
  absl::TimeZone zone;
  if (!is_iana_name(name) || !absl::LoadTimeZone(name, &zone)) return NoZone{no_such_zone(name)};
  const auto day_one = std::chrono::day{1};
  const std::chrono::sys_days begin{first / day_one};
  const std::chrono::sys_days end{(first + std::chrono::months{months}) / day_one};
  const std::chrono::days margin{2};
  return changes_between(zone, start_of(begin - margin), start_of(end + margin));
}

std::vector<std::string> zone_names() {
  // The database's own text form: `Z NAME ...` is a zone, `L TARGET NAME` another name of one.
  std::ifstream file(database_folder() + "/tzdata.zi");
  std::vector<std::string> names;
  for (std::string line; std::getline(file, line);) {
    std::istringstream words(line);
    std::string kind, first, second;
    words >> kind >> first >> second;
    if (kind == "Z") names.push_back(first);
    if (kind == "L") names.push_back(second);
  }
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace wattweek::calendar
