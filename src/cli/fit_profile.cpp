#include "cli/fit_profile.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "cli/written_files.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

/// Where the profile goes.
struct Target {
  std::string folder;
  std::string name;
};

Target target_of(const std::string& path) {
  const fs::path whole(path);
  const fs::path folder = whole.has_parent_path() ? whole.parent_path() : fs::path(".");
  return {folder.string(), whole.filename().string()};
}

WrittenFiles files_for(const FitRequest& request) {
  return WrittenFiles("say --force to replace it, or name another file",
                      request.force ? Existing::replace : Existing::refuse);
}

Outcome not_written(const NotWritten& why) {
  return {why.exit_code, "", error_line("--profile: " + why.reason)};
}

std::variant<std::string, Outcome> profile_text(const FitRequest& request,
                                                const report::FitShown& shown) {
  const auto kind = request.activity ? report::ProfileKind::increments : report::ProfileKind::week;
  const bool seen_whole_week = std::all_of(shown.fit.week.begin(), shown.fit.week.end(),
                                           [](const auto& watts) { return watts.has_value(); });
  if (kind == report::ProfileKind::week && !seen_whole_week) {
    return refused(
        "--profile: some hour of the week is not in the log; expected a log of all hours of the "
        "week, or an --activity file");
  }
  if (kind == report::ProfileKind::increments && !shown.fit.idle_w) {
    return refused(
        "--profile: idle watts cannot be told from this log; expected time in which no workload "
        "is in use");
  }
  const std::string name = fs::path(*request.profile).stem().string();
  return report::fitted_profile(shown, kind, name);
}

}  // namespace

std::optional<Outcome> why_no_profile(const FitRequest& request) {
  if (!request.profile) return std::nullopt;
  const Target target = target_of(*request.profile);
  if (target.name.empty()) {
    return refused(
        fmt::format("--profile: found '{}', accepted is a file's name", *request.profile));
  }
  const auto why = files_for(request).refusal(target.folder, {target.name});
  return why ? std::optional(not_written(*why)) : std::nullopt;
}

std::variant<std::string, Outcome> write_profile(const FitRequest& request,
                                                 const report::FitShown& shown) {
  auto text = profile_text(request, shown);
  if (auto* outcome = std::get_if<Outcome>(&text)) return std::move(*outcome);
  const Target target = target_of(*request.profile);
  WrittenFiles files = files_for(request);
  auto why = files.write(target.folder, {{target.name, std::get<std::string>(text)}});
  if (!why) why = files.finish();
  if (why) return not_written(*why);
  std::string said = fmt::format("wattweek: written: {}\n", diag::printable(*request.profile));
  if (shown.meter && shown.fit.mean_w > 0) {
    said += "wattweek: the profile names a meter; paste this into the study:\n" +
            report::meter_entry(shown);
  }
  return said;
}

}  // namespace wattweek::cli
