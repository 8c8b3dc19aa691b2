#pragma once
// `--rest WHO=HH:MM-HH:MM[:off|:sleep]`.

#include <string>
#include <variant>

#include "cli/arguments.hpp"
#include "wattweek/decide/rest.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::cli {

struct Resting {
  decide::RestPlan plan;
  bool is_state_given = false;
};

/// WHO is a candidate (all its devices), CANDIDATE/DEVICE with the device's name or number from 1,
/// or the name of a device that no other one has. Without a state: asleep where all can sleep.
std::variant<Resting, Misuse> resting_of(const model::Study& study, const std::string& text);

}  // namespace wattweek::cli
