#include "devices.hpp"

#include <memory>
#include <utility>

#include "numbers.hpp"
#include "profile_reader.hpp"
#include "windows.hpp"

namespace wattweek::read {

namespace {

constexpr int kMostCopies = 1'000'000;
constexpr std::string_view kNameAccepted = "the device's name in quotes";

std::shared_ptr<const model::Profile> read_inline_profile(const Table& table,
                                                          const std::string& name) {
  const std::size_t problems_before = table.file().problem_count();
  model::Profile profile = read_profile(table);
  profile.name = name;
  const bool is_sound = table.file().problem_count() == problems_before;
  return is_sound ? std::make_shared<const model::Profile>(std::move(profile)) : nullptr;
}

// A path, or the profile's tables in the device, and not both.
void read_device_profile(const Table& table, LinkedFiles& linked, model::Device& device) {
  const auto path = table.find("profile");
  if (path && has_profile_keys(table)) {
    table.file().report(table.key_place("profile"),
                        path->name() + " = " + path->typed() +
                            ": the device has tables of a profile as well; expected either the "
                            "path or the tables");
  } else if (path) {
    device.profile = linked.profile(*path);
  } else if (has_profile_keys(table)) {
    device.profile = read_inline_profile(table, device.name);
  } else {
    table.file().report(table.place(),
                        table.name_of("profile") +
                            " is missing: expected profile = \"PATH\", or idle in [" +
                            table.name_of("watts") + "]");
  }
}

std::string profile_home(const model::Device& device, const Table& table) {
  const bool is_inline = !table.has("profile");
  return is_inline ? "under [" + table.name_of("watts") + "]"
                   : "under [watts] of " + *device.profile->place.file;
}

model::Rest read_rest(const Table& table, const Table& device_table, const model::Device& device) {
  model::Rest rest;
  rest.window = read_window(table);
  const auto state = table.require("state", "\"sleep\" or \"off\"");
  const auto word = state ? read_word(*state, {"sleep", "off"}) : std::nullopt;
  if (word == std::size_t{1}) rest.state = model::RestState::off;
  if (word == std::size_t{0} && device.profile && !device.profile->sleep) {
    state->complain("the device's profile has no sleep watts; expected sleep = WATTS " +
                    profile_home(device, device_table));
  }
  return rest;
}

model::Device read_device(const Table& table, LinkedFiles& linked, std::size_t number) {
  model::Device device;
  device.place = table.place();
  const auto name = table.find("name");
  device.name = "device " + std::to_string(number);
  if (name) device.name = read_text(*name, kNameAccepted).value_or(device.name);
  read_device_profile(table, linked, device);
  if (!name && table.has("profile") && device.profile) device.name = device.profile->name;
  if (const auto count = table.find("count")) {
    device.count = read_whole(*count, {1, kMostCopies, ""}).value_or(1);
  }
  for (const Table& rest : table.repeated("rest")) {
    device.rests.push_back(read_rest(rest, table, device));
  }
  return device;
}

}  // namespace

std::vector<DeviceDraft> read_devices(const Table& candidate, const CandidateContext& context) {
  std::vector<DeviceDraft> drafts;
  for (const Table& table : candidate.at_least_one("device")) {
    const Ids& ids = context.workloads.ids;
    drafts.push_back({read_device(table, context.linked, drafts.size() + 1), table,
                      read_references(table, "runs", ids), read_references(table, "assists", ids)});
  }
  return drafts;
}

}  // namespace wattweek::read
