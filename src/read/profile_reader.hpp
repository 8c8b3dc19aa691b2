#pragma once
// A profile: what one plugged-in device draws.

#include <string>

#include "table.hpp"
#include "wattweek/model/profile.hpp"

namespace wattweek::read {

/// The profile whose tables stand in `table`: the top of a profile file, or a device of a
/// study. Its name is left empty. Valid if nothing was reported.
model::Profile read_profile(const Table& table);

/// Does the device hold tables of a profile?
bool has_profile_keys(const Table& device);

/// A profile file; valid if nothing was reported.
model::Profile read_profile_file(File& file, const toml::table& root);

}  // namespace wattweek::read
