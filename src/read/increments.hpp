#pragma once
// `[groups]` and `[increments]` of a profile.

#include <vector>

#include "table.hpp"
#include "wattweek/model/profile.hpp"

namespace wattweek::read {

/// In file order.
std::vector<model::Group> read_groups(const Table& profile);

/// What the other tables of the profile hold.
struct IncrementContext {
  const std::vector<model::Group>& groups;
  bool has_full_load = false;  ///< `busy` or `at_load` is there for a load to act on.
};

/// In file order; `profile` is the table that holds `[increments]`.
std::vector<model::NamedIncrement> read_increments(const Table& profile,
                                                   const IncrementContext& context);

}  // namespace wattweek::read
