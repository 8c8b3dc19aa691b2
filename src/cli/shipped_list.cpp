// What ships with the program, each with a line about it.

#include <fmt/format.h>

#include <algorithm>

#include "cli/files.hpp"
#include "cli/run.hpp"
#include "wattweek/decide/profile_alone.hpp"
#include "wattweek/diag/number_text.hpp"
#include "wattweek/diag/printable.hpp"
#include "wattweek/report/words.hpp"
#include "wattweek/report/wrap.hpp"

namespace wattweek::cli {
namespace {

using read::ShippedKind;
using report::counted;
using report::watts_text;

/// What it draws switched on: its idle watts, or the mean of its week.
std::string about_on(const model::Profile& profile) {
  if (!profile.week) return "idle " + watts_text(profile.idle);
  const units::Power mean = decide::overview_of(*profile.week).mean;
  return fmt::format("mean {} W, {} kWh a year", diag::rounded(units::in_watts(mean), 2),
                     diag::rounded(decide::year_of(mean).energy_kwh.low, 1));
}

std::string about(const model::Profile& profile) {
  std::string text = fmt::format("{}: {}", profile.name, about_on(profile));
  if (profile.busy) text += fmt::format(", busy {}", watts_text(*profile.busy));
  if (!profile.at_load.empty()) {
    text += ", busy " + watts_text(model::PowerRange(profile.at_load.back()));
  }
  if (profile.sleep) text += fmt::format(", asleep {}", watts_text(*profile.sleep));
  if (units::in_watts(profile.off.high) > 0)
    text += fmt::format(", off {}", watts_text(profile.off));
  return text;
}

std::string about(const model::Tariff& tariff) {
  std::string text = fmt::format("{}: {}, {}", tariff.name, tariff.currency,
                                 counted(tariff.bands.size(), "price band"));
  if (!tariff.blocks.empty()) text += ", " + counted(tariff.blocks.size(), "block");
  return text;
}

/// A name and its line, or the mistakes that keep it from having one, on standard error.
template <class T>
void append(Outcome& all, const std::string& name, const read::Read<T>& input,
            std::size_t columns) {
  if (!input.value) {
    for (const diag::Diagnostic& problem : input.problems) all.err += to_text(problem) + '\n';
    return;
  }
  all.out += fmt::format("  shipped:{}\n", name);
  all.out += report::hanging("      ", diag::printable(about(*input.value)), columns);
}

void append_all(Outcome& all, ShippedKind kind, std::size_t columns) {
  const std::vector<std::string> names = shipped_names(kind);
  if (names.empty()) {
    all.err += error_line(fmt::format("the folder of shipped {} is missing",
                                      kind == ShippedKind::profile ? "profiles" : "tariffs"));
  }
  for (const std::string& name : names) {
    const auto loaded = surroundings().load("shipped:" + name, "", kind);
    if (const auto* why = std::get_if<read::Unreadable>(&loaded)) {
      all.err += error_line(why->reason);
      continue;
    }
    const auto& source = std::get<read::SourceText>(loaded);
    if (kind == ShippedKind::profile) append(all, name, read::profile(source), columns);
    if (kind == ShippedKind::tariff) append(all, name, read::tariff(source), columns);
  }
}

}  // namespace

Outcome list_shipped(int columns) {
  const auto width = static_cast<std::size_t>(std::max(columns, 40));
  Outcome all{kDone, "Profiles, for profile = \"shipped:NAME\" in a study:\n"};
  append_all(all, ShippedKind::profile, width);
  all.out += "\nTariffs, for tariff = \"shipped:NAME\" in a study:\n";
  append_all(all, ShippedKind::tariff, width);
  if (!all.err.empty()) return {kFailed, "", all.err};
  return all;
}

}  // namespace wattweek::cli
