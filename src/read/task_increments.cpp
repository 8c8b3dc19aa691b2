#include "task_increments.hpp"

#include <vector>

#include "value.hpp"

namespace wattweek::read {

namespace {

const model::Increment kNothing{model::GroupOnly{}, std::nullopt};

std::string both(const std::vector<std::string>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += i + 1 == parts.size() ? " and " : ", ";
    text += parts[i];
  }
  return text;
}

// What is lacking for load = compute / capacity.
std::vector<std::string> lacking(const model::Workload& workload, const model::Profile& profile) {
  std::vector<std::string> parts;
  if (!workload.compute) parts.emplace_back("compute in the workload");
  if (!profile.capacity) parts.emplace_back("capacity in the profile");
  if (!profile.full_load_place) parts.emplace_back("busy or at_load in the profile");
  return parts;
}

std::string nearest_increment(const std::string& id, const model::Profile& profile) {
  std::vector<std::string_view> known;
  for (const model::NamedIncrement& named : profile.increments) known.push_back(named.workload_id);
  const std::string_view near = diag::nearest(id, known);
  return near.empty() ? "" : "; is its increment " + in_quotes(near) + " meant?";
}

std::string missing_increment(const TaskQuestion& question) {
  const std::string& id = question.workload.id;
  const model::Profile& profile = *question.device.profile;
  return "device " + in_quotes(question.device.name) + " of candidate " +
         in_quotes(question.candidate_id) + " has no increment for workload " + in_quotes(id) +
         ": expected " + id + " = WATTS under [increments] of its profile, or, for a load, " +
         both(lacking(question.workload, profile)) + nearest_increment(id, profile);
}

}  // namespace

Answer increment_of(const TaskQuestion& question) {
  if (question.device.profile == nullptr) return {kNothing, ""};
  const model::Profile& profile = *question.device.profile;
  for (const model::NamedIncrement& named : profile.increments) {
    if (named.workload_id == question.workload.id) return {named.increment, ""};
  }
  if (lacking(question.workload, profile).empty()) {
    return {{model::LoadFromCompute{}, std::nullopt}, ""};
  }
  return {kNothing, missing_increment(question)};
}

}  // namespace wattweek::read
