#include "cli/resting.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <tuple>
#include <utility>

#include "cli/outcome.hpp"

namespace wattweek::cli {
namespace {

/// WHO, the hours and the state, as they are written.
struct Parts {
  std::string who;
  std::string hours;
  std::optional<std::string> state;
};

constexpr std::size_t kClock = 5;               // HH:MM
constexpr std::size_t kHours = 2 * kClock + 1;  // HH:MM-HH:MM

std::optional<Parts> parts_of(const std::string& text) {
  const std::size_t equals = text.rfind('=');
  if (equals == text.npos || equals == 0) return std::nullopt;
  Parts parts{text.substr(0, equals), text.substr(equals + 1), std::nullopt};
  if (parts.hours.size() > kHours && parts.hours[kHours] == ':') {
    parts.state = parts.hours.substr(kHours + 1);
    parts.hours.resize(kHours);
  }
  return parts;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Minutes of the clock, up to 24:00.
std::optional<int> minute_of(const std::string& text) {
  for (const std::size_t i : {0U, 1U, 3U, 4U}) {
    if (!is_digit(text[i])) return std::nullopt;
  }
  const int hour = (text[0] - '0') * 10 + text[1] - '0';
  const int minute = (text[3] - '0') * 10 + text[4] - '0';
  if (text[2] != ':' || minute > 59 || hour * 60 + minute > 1440) return std::nullopt;
  return hour * 60 + minute;
}

std::optional<model::HourSpan> hours_of(const std::string& text) {
  if (text.size() != kHours || text[kClock] != '-') return std::nullopt;
  const auto start = minute_of(text.substr(0, kClock));
  const auto end = minute_of(text.substr(kClock + 1));
  if (!start || !end || *start == 1440 || *start == *end) return std::nullopt;
  // Until midnight is the end of the day.
  return model::HourSpan{*start, *end == 0 ? 1440 : *end};
}

/// Candidate and devices.
using Who = std::pair<std::size_t, std::vector<std::size_t>>;

std::optional<std::size_t> device_of(const model::Candidate& candidate, const std::string& text) {
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    if (candidate.devices[d].name == text) return d;
  }
  for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
    if (fmt::format("{}", d + 1) == text) return d;
  }
  return std::nullopt;
}

/// As CANDIDATE or CANDIDATE/DEVICE.
std::optional<Who> of_candidate(const model::Study& study, const std::string& text) {
  const std::size_t slash = text.find('/');
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    const model::Candidate& candidate = study.candidates[c];
    if (candidate.id != text.substr(0, slash)) continue;
    if (slash != text.npos) {
      const auto device = device_of(candidate, text.substr(slash + 1));
      return device ? std::optional(Who{c, {*device}}) : std::nullopt;
    }
    Who who{c, {}};
    for (std::size_t d = 0; d < candidate.devices.size(); ++d) who.second.push_back(d);
    return who;
  }
  return std::nullopt;
}

std::vector<Who> devices_named(const model::Study& study, const std::string& name) {
  std::vector<Who> found;
  for (std::size_t c = 0; c < study.candidates.size(); ++c) {
    const auto& devices = study.candidates[c].devices;
    for (std::size_t d = 0; d < devices.size(); ++d) {
      if (devices[d].name == name) found.push_back({c, {d}});
    }
  }
  return found;
}

/// What names a device without doubt.
std::string number_of(const model::Study& study, const Who& who) {
  return fmt::format("{}/{}", study.candidates[who.first].id, who.second.front() + 1);
}

Misuse nobody(const model::Study& study, const std::string& text) {
  std::vector<std::string> names;
  for (const model::Candidate& candidate : study.candidates) names.push_back(candidate.id);
  for (const model::Candidate& candidate : study.candidates) {
    for (const model::Device& device : candidate.devices) {
      const bool is_new = std::find(names.begin(), names.end(), device.name) == names.end();
      if (is_new) names.push_back(device.name);
    }
  }
  return {fmt::format("--rest: no candidate or device '{}'{}", text,
                      suggestion(text, {names.begin(), names.end()}))};
}

std::variant<Who, Misuse> who_of(const model::Study& study, const std::string& text) {
  if (const auto who = of_candidate(study, text)) return *who;
  const std::vector<Who> named = devices_named(study, text);
  if (named.empty()) return nobody(study, text);
  if (named.size() == 1) return named.front();
  std::string accepted;
  for (const Who& who : named) {
    accepted += (accepted.empty() ? "" : ", ") + number_of(study, who);
  }
  return Misuse{fmt::format("--rest: '{}' is the name of {} devices; accepted are {}", text,
                            named.size(), accepted)};
}

std::optional<Misuse> set_state(const model::Study& study, const Parts& parts, Resting& resting) {
  const model::Candidate& candidate = study.candidates[resting.plan.candidate];
  const bool can = decide::can_sleep(candidate, resting.plan.devices);
  resting.is_state_given = parts.state.has_value();
  if (parts.state && *parts.state != "off" && *parts.state != "sleep") {
    return Misuse{fmt::format("--rest: no state '{}'{}", *parts.state,
                              suggestion(*parts.state, {"off", "sleep"}))};
  }
  const bool sleeps = parts.state ? *parts.state == "sleep" : can;
  resting.plan.state = sleeps ? model::RestState::sleep : model::RestState::off;
  if (!sleeps || can) return std::nullopt;
  for (const std::size_t d : resting.plan.devices) {
    const model::Device& device = candidate.devices[d];
    if (device.profile->sleep) continue;
    return Misuse{fmt::format(
        "--rest: '{}' cannot sleep; expected watts.sleep in its profile, or :off", device.name)};
  }
  return std::nullopt;
}

}  // namespace

std::variant<Resting, Misuse> resting_of(const model::Study& study, const std::string& text) {
  const auto parts = parts_of(text);
  if (!parts) {
    return Misuse{fmt::format(
        "--rest: found '{}', accepted is CANDIDATE=HH:MM-HH:MM or DEVICE=HH:MM-HH:MM, such as "
        "{}=01:00-06:00",
        text, study.candidates.front().id)};
  }
  const auto hours = hours_of(parts->hours);
  if (!hours) {
    return Misuse{fmt::format(
        "--rest: found the hours '{}', accepted is HH:MM-HH:MM with two different times from 00:00 "
        "to 24:00",
        parts->hours)};
  }
  const auto who = who_of(study, parts->who);
  if (const auto* misuse = std::get_if<Misuse>(&who)) return *misuse;
  Resting resting;
  std::tie(resting.plan.candidate, resting.plan.devices) = std::get<Who>(who);
  resting.plan.hours = *hours;
  if (auto misuse = set_state(study, *parts, resting)) return *misuse;
  return resting;
}

}  // namespace wattweek::cli
