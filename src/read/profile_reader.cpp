#include "profile_reader.hpp"

#include <algorithm>

#include "increments.hpp"
#include "numbers.hpp"

namespace wattweek::read {

namespace {

std::optional<model::PowerRange> read_watts(const Table& watts, std::string_view key) {
  const auto value = watts.find(key);
  if (!value) return std::nullopt;
  const auto range = read_range(*value, kWatts);
  return range ? std::optional(as<units::Power>(*range)) : std::nullopt;
}

// `busy` and `max` must reach the draw at rest, for every value that either may have.
void check_reaches(const Table& watts, std::string_view key,
                   const std::optional<model::PowerRange>& greater, std::string_view rest_key,
                   const std::optional<model::PowerRange>& rest) {
  if (!greater || !rest || greater->low >= rest->high) return;
  const std::string at_least = std::string(rest_key == "at_load" ? "the first of " : "") +
                               watts.name_of(rest_key) + " = " + watts.find(rest_key)->typed();
  watts.find(key)->complain("lies below " + at_least + "; expected " +
                            (greater->is_exact() && rest->is_exact()
                                 ? "at least that"
                                 : "its low end to reach the high end of that"));
}

void read_curve(const Table& watts, model::Profile& profile) {
  const auto value = watts.find("curve");
  if (!value) return;
  const auto word = read_word(*value, {"linear", "concave"});
  if (word == std::size_t{1}) profile.curve = model::Curve::concave;
}

// `at_load` says all that idle, busy and curve would.
std::optional<model::PowerRange> read_at_load(const Table& watts, model::Profile& profile) {
  for (const std::string_view key : {"idle", "busy", "curve"}) {
    if (!watts.has(key)) continue;
    watts.file().report(watts.key_place(key), watts.name_of(key) +
                                                  ": at_load replaces idle, busy and curve; "
                                                  "expected either at_load or them");
  }
  profile.full_load_place = watts.key_place("at_load");
  const auto table = read_rising(*watts.find("at_load"), 2, kWatts);
  if (!table) return std::nullopt;
  for (const double w : *table) profile.at_load.push_back(units::watts(w));
  return model::PowerRange(profile.at_load.front());
}

std::optional<model::PowerRange> read_idle_and_busy(const Table& watts, model::Profile& profile) {
  const auto value =
      watts.require("idle", accepted_range(kWatts) + ", or at_load or week in its place");
  const auto idle = value ? read_watts(watts, "idle") : std::nullopt;
  profile.busy = read_watts(watts, "busy");
  if (watts.has("busy")) profile.full_load_place = watts.key_place("busy");
  check_reaches(watts, "busy", profile.busy, "idle", idle);
  read_curve(watts, profile);
  return idle;
}

// A week says all that the others would of a device that is on.
void read_week(const Table& watts, model::Profile& profile) {
  for (const std::string_view key : {"idle", "busy", "max", "curve", "at_load"}) {
    if (!watts.has(key)) continue;
    watts.file().report(watts.key_place(key),
                        watts.name_of(key) +
                            ": week replaces idle, busy, max, curve and at_load; expected either "
                            "week or them");
  }
  const SeriesRule hours{model::kHoursOfWeek, "Monday 00:00 first"};
  const auto numbers = read_series(*watts.find("week"), hours, kWatts);
  if (!numbers) return;
  model::WeekOfWatts& week = profile.week.emplace();
  std::transform(numbers->begin(), numbers->end(), week.begin(), units::watts);
}

// What nobody uses needs no figures of its use.
void check_beside_week(const Table& table, const Table& watts) {
  for (const std::string_view key : {"capacity", "groups", "increments"}) {
    if (!table.has(key)) continue;
    table.file().report(table.key_place(key), table.name_of(key) +
                                                  ": a device with a week runs no workloads; "
                                                  "expected either this or " +
                                                  watts.name_of("week"));
  }
}

void read_watts_table(const Table& watts, model::Profile& profile) {
  profile.off = read_watts(watts, "off").value_or(model::PowerRange());
  profile.sleep = read_watts(watts, "sleep");
  if (watts.has("week")) return read_week(watts, profile);
  const bool has_table = watts.has("at_load");
  const auto idle = has_table ? read_at_load(watts, profile) : read_idle_and_busy(watts, profile);
  profile.idle = idle.value_or(model::PowerRange());
  profile.max = read_watts(watts, "max");
  check_reaches(watts, "max", profile.max, has_table ? "at_load" : "idle", idle);
}

void read_meter_name(const Table& table, model::Profile& profile) {
  const auto value = table.find("meter");
  if (!value) return;
  profile.meter = read_id(*value);
  profile.meter_place = value->place();
}

}  // namespace

bool has_profile_keys(const Table& device) {
  for (const std::string_view key : {"capacity", "meter", "watts", "groups", "increments"}) {
    if (device.has(key)) return true;
  }
  return false;
}

model::Profile read_profile(const Table& table) {
  model::Profile profile;
  profile.place = table.place();
  if (const auto capacity = table.find("capacity")) {
    profile.capacity = read_range(*capacity, {Bounds::positive, Unit::none});
  }
  read_meter_name(table, profile);
  if (const auto watts = table.single("watts")) {
    read_watts_table(*watts, profile);
    if (watts->has("week")) check_beside_week(table, *watts);
  } else if (!table.has("watts")) {
    table.file().report(table.place(), table.name_of("watts") +
                                           ".idle is missing: expected a table [" +
                                           table.name_of("watts") + "] with idle = WATTS");
  }
  profile.groups = read_groups(table);
  const bool has_full_load = profile.full_load_place.has_value();
  profile.increments = read_increments(table, {profile.groups, has_full_load});
  return profile;
}

model::Profile read_profile_file(File& file, const toml::table& root) {
  const Table table(file, root, "");
  model::Profile profile = read_profile(table);
  const auto name = table.find("name");
  profile.name = stem(file.name());
  if (name) profile.name = read_text(*name, "the device's name in quotes").value_or(profile.name);
  return profile;
}

}  // namespace wattweek::read
