#include <fmt/format.h>

#include <chrono>
#include <filesystem>
#include <system_error>

#include "cli/files.hpp"
#include "cli/new_files.hpp"
#include "cli/run.hpp"
#include "cli/study_file.hpp"
#include "wattweek/diag/printable.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/wrap.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

/// The name of the folder, however it was written, if it has one that can be seen.
std::string title_of(const std::string& folder) {
  std::error_code problem;
  const fs::path whole = fs::absolute(folder, problem).lexically_normal();
  const fs::path last = whole.has_filename() ? whole : whole.parent_path();
  const std::string name = last.filename().string();
  return name.find_first_not_of(' ') == std::string::npos ? "My home" : name;
}

std::string path_of(const std::string& folder, const std::string& name) {
  return (fs::path(folder) / name).string();
}

/// The files as `read` finds them before they are written, and those that ship.
read::Surroundings surroundings_of(const std::vector<NewFile>& files) {
  read::Surroundings all = surroundings();
  all.load = [&files, load = all.load](const std::string& path, const std::string& from,
                                       read::ShippedKind kind) {
    for (const NewFile& file : files) {
      if (file.name != path) continue;
      return std::variant<read::SourceText, read::Unreadable>(
          read::SourceText{file.name, file.name, file.text});
    }
    return load(path, from, kind);
  };
  return all;
}

/// What a careful adviser says to the figures that were given, or why they cannot be reckoned.
std::variant<std::vector<decide::Note>, std::vector<diag::Diagnostic>> notes_on(
    const std::vector<NewFile>& files) {
  const NewFile& study = files.front();
  const auto input = read::study({study.name, study.name, study.text}, surroundings_of(files));
  if (!input.value) return input.problems;
  auto assessed = assess(*input.value);
  if (auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&assessed)) return *problems;
  return std::get<decide::Assessment>(assessed).notes;
}

/// A path as a word of a command line.
std::string shell_word(std::string path) {
  constexpr std::string_view kPlain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-+./:@%,=";
  if (path.front() == '-') path.insert(0, "./");
  if (path.find_first_not_of(kPlain) == std::string::npos) return path;
  std::string quoted = "'";
  for (const char letter : path) quoted += letter == '\'' ? "'\\''" : std::string(1, letter);
  return quoted + "'";
}

std::string told(const std::string& folder, const NewStudy& made, std::size_t columns) {
  std::string text = "Written:\n";
  for (const NewFile& file : made.files) {
    text += "  " + diag::printable(path_of(folder, file.name)) + '\n';
  }
  text += '\n' +
          report::hanging("",
                          "Assumed, since nothing else was given. Each file says beside the figure "
                          "how to find your own:",
                          columns);
  for (const std::string& each : made.assumed) text += report::hanging("- ", each, columns);
  text += "\nNext, see what they say:\n";
  text += fmt::format("  wattweek compare {}\n\n",
                      diag::printable(shell_word(path_of(folder, "study.toml"))));
  text += report::hanging("", report::measuring_caution(), columns);
  return text;
}

std::chrono::year_month_day today() {
  return std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
}

/// Writes the files, and says so.
Outcome written(const std::string& folder, const NewStudy& made, std::size_t columns) {
  const auto notes = notes_on(made.files);
  if (const auto* problems = std::get_if<std::vector<diag::Diagnostic>>(&notes)) {
    return refused(*problems);
  }
  WrittenFiles files("name another folder");
  auto why = files.write(folder, made.files);
  if (!why) why = files.finish();
  if (why) return {why->exit_code, "", error_line(why->reason)};
  Outcome outcome{kDone, told(folder, made, columns)};
  for (const decide::Note& note : std::get<std::vector<decide::Note>>(notes)) {
    outcome.err += diag::printable("wattweek: note: " + note.text) + '\n';
  }
  return outcome;
}

}  // namespace

Outcome run_new(const Arguments& arguments, int columns) {
  if (arguments.has("list")) {
    if (arguments.values.size() + arguments.operands.size() == 1) return list_shipped(columns);
    return refused("new: --list goes alone");
  }
  if (arguments.operands.empty()) return refused("new: DIR is missing");
  const auto readings = readings_of(arguments);
  if (const auto* misuse = std::get_if<Misuse>(&readings)) return refused(misuse->message);
  const auto where = place_and_time_of(arguments, today());
  if (const auto* misuse = std::get_if<Misuse>(&where)) return refused(misuse->message);
  const std::string& folder = arguments.operands.front();
  const NewStudy made =
      new_study(title_of(folder), std::get<Readings>(readings), std::get<PlaceAndTime>(where));
  return written(folder, made, static_cast<std::size_t>(columns));
}

}  // namespace wattweek::cli
