#include "cli/report_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <system_error>

#include "cli/console.hpp"
#include "cli/png.hpp"
#include "cli/written_files.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kStandardOutput = "-";

fs::path folder_of(const std::string& output) {
  const fs::path path(output);
  return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

/// The output's path as `WrittenFiles` puts it together.
fs::path path_of(const std::string& output) {
  return folder_of(output) / fs::path(output).filename();
}

/// Where a path leads, whether something is there or not.
fs::path resolved(const fs::path& path) {
  std::error_code problem;
  fs::path whole = fs::weakly_canonical(fs::absolute(path, problem), problem).lexically_normal();
  return whole.has_filename() ? whole : whole.parent_path();
}

bool begins_with(const fs::path& path, std::string_view beginning) {
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"),
                                                             std::fclose);
  if (!file) return false;
  std::string found(beginning.size(), '\0');
  return std::fread(found.data(), 1, found.size(), file.get()) == found.size() &&
         found == beginning;
}

bool is_input(const ReportFiles& files, const fs::path& path) {
  return std::any_of(files.inputs.begin(), files.inputs.end(), [&path](const auto& input) {
    std::error_code problem;
    return fs::equivalent(path, input.identity, problem);
  });
}

bool is_regular(const fs::path& path) {
  std::error_code problem;
  return fs::is_regular_file(path, problem);
}

/// Did an earlier `report` write this? Of a PNG the picture beside it tells.
bool is_ours(const ReportFiles& files, const fs::path& path) {
  if (path == path_of(files.output)) {
    return begins_with(path, files.is_markdown ? report::kMarkdownBegins : report::kPageBegins);
  }
  const fs::path picture =
      path.extension() == ".png" ? fs::path(path).replace_extension(".svg") : path;
  return is_regular(picture) && begins_with(picture, report::kPictureBegins);
}

Replacing replacing(const ReportFiles& files) {
  const auto is_allowed = [files](const fs::path& path) {
    return is_regular(path) && !is_input(files, path) && (files.force || is_ours(files, path));
  };
  return {is_allowed, files.force ? "it is no file that may be replaced; name another one"
                                  : "it is not from an earlier report of this kind; say --force to "
                                    "replace it, or name another one"};
}

Outcome not_written(std::string_view option, const NotWritten& why) {
  return {why.exit_code, "", error_line(fmt::format("--{}: {}", option, why.reason))};
}

std::optional<Outcome> why_no_output(const ReportFiles& files) {
  const std::string& output = files.output;
  const std::string name = fs::path(output).filename().string();
  if (name.empty()) {
    return refused(fmt::format(
        "--output: found '{}', accepted is a file's name, or - for standard output", output));
  }
  std::error_code problem;
  const fs::path folder = folder_of(output);
  if (!fs::is_directory(folder, problem)) {
    return refused(fmt::format("--output: '{}' cannot be written: there is no folder '{}'", output,
                               folder.string()));
  }
  if (fs::exists(output, problem)) {
    if (const auto why = why_not_to_open(output)) return refused("--output: " + why->reason);
  }
  if (is_input(files, output)) {
    return refused(
        fmt::format("--output: '{}' is what the report is made from; name another file", output));
  }
  const auto why = WrittenFiles(replacing(files)).refusal(folder.string(), {name});
  return why ? std::optional(not_written("output", *why)) : std::nullopt;
}

std::vector<std::string> names_of(const std::vector<report::PictureFile>& pictures,
                                  std::string_view ending) {
  std::vector<std::string> names;
  for (const report::PictureFile& picture : pictures) {
    names.push_back(picture.name + std::string(ending));
  }
  return names;
}

std::optional<Outcome> why_no_pictures(const ReportFiles& files,
                                       const std::vector<std::string>& names) {
  for (const std::string& name : names) {
    const fs::path path = fs::path(*files.pictures) / name;
    if (files.output == kStandardOutput || resolved(path) != resolved(files.output)) continue;
    return refused(fmt::format("--output: '{}' is the name of a picture too; name another file",
                               files.output));
  }
  const auto why = WrittenFiles(replacing(files)).refusal(*files.pictures, names);
  return why ? std::optional(not_written("pictures", *why)) : std::nullopt;
}

/// A PNG of each picture, hidden as that is.
std::optional<NotWritten> convert_all(const ReportFiles& files, const fs::path& program,
                                      const std::vector<report::PictureFile>& pictures,
                                      const WrittenFiles& written) {
  ProgressLine line;
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    const std::string& name = pictures[i].name;
    line.show("the pictures", static_cast<double>(i) / static_cast<double>(pictures.size()));
    const auto why = convert(program, written.hidden_path(name + ".svg"),
                             written.hidden_path(name + ".png"), written.hidden_path("said.txt"));
    if (!why) continue;
    return NotWritten{kFailed,
                      fmt::format("'{}' cannot be made: {}; nothing was left behind",
                                  (fs::path(*files.pictures) / (name + ".png")).string(), *why)};
  }
  return std::nullopt;
}

/// Writes the pictures, not yet under their names.
std::optional<Outcome> write_pictures(const ReportFiles& files,
                                      const std::vector<report::PictureFile>& pictures,
                                      const std::optional<fs::path>& program,
                                      WrittenFiles& written) {
  const std::vector<std::string> pngs =
      program ? names_of(pictures, ".png") : std::vector<std::string>();
  std::vector<std::string> names = names_of(pictures, ".svg");
  names.insert(names.end(), pngs.begin(), pngs.end());
  if (auto outcome = why_no_pictures(files, names)) return outcome;
  std::vector<NewFile> svgs;
  for (const auto& picture : pictures) svgs.push_back({picture.name + ".svg", picture.svg});
  auto why = written.write(*files.pictures, svgs);
  for (const std::string& name : pngs) written.expect(name);
  if (!why && program) why = convert_all(files, *program, pictures, written);
  return why ? std::optional(not_written("pictures", *why)) : std::nullopt;
}

std::string told(const ReportFiles& files, const std::vector<report::PictureFile>& pictures,
                 bool has_pngs) {
  std::string text = "Written:\n  " + diag::printable(files.output) + '\n';
  for (const report::PictureFile& picture : pictures) {
    const std::string path = (fs::path(*files.pictures) / picture.name).string();
    text += "  " + diag::printable(path + ".svg") + '\n';
    if (has_pngs) text += "  " + diag::printable(path + ".png") + '\n';
  }
  return text;
}

/// A letter, digit or mark that means the same anywhere in a link, in Markdown and in HTML.
bool is_plain_in_links(char letter) {
  constexpr std::string_view kPlain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-._/";
  return kPlain.find(letter) != std::string_view::npos;
}

// RFC 3986, section 2.1.
std::string percent_encoded(const std::string& text) {
  std::string encoded;
  for (const char letter : text) {
    encoded += is_plain_in_links(letter)
                   ? std::string(1, letter)
                   : fmt::format("%{:02X}", static_cast<unsigned char>(letter));
  }
  return encoded;
}

}  // namespace

ReportFiles report_files_of(const Arguments& arguments, const std::string& format, Sources inputs) {
  ReportFiles files;
  files.output = *arguments.value("output");
  files.pictures = arguments.value("pictures");
  files.is_markdown = format == "markdown";
  files.force = arguments.has("force");
  files.inputs = std::move(inputs);
  return files;
}

std::optional<Outcome> why_no_report(const ReportFiles& files) {
  const bool is_file = files.output != kStandardOutput;
  if (is_file) {
    if (auto why = why_no_output(files)) return why;
  }
  if (!files.pictures) return std::nullopt;
  if (const auto why = WrittenFiles::why_no_folder(*files.pictures)) {
    return not_written("pictures", *why);
  }
  if (is_file && resolved(*files.pictures) == resolved(files.output)) {
    return refused(fmt::format("--pictures: '{}' is the file of --output; name another folder",
                               *files.pictures));
  }
  return std::nullopt;
}

std::optional<std::string> link_to_pictures(const ReportFiles& files) {
  if (!files.pictures) return std::nullopt;
  if (files.output == kStandardOutput) return percent_encoded(*files.pictures);
  const fs::path folder = resolved(folder_of(files.output));
  return percent_encoded(resolved(*files.pictures).lexically_relative(folder).generic_string());
}

Outcome write_report(const ReportFiles& files, const std::string& page,
                     const std::vector<report::PictureFile>& pictures) {
  // Shared, since an outcome can be copied.
  const auto written = std::make_shared<WrittenFiles>(replacing(files));
  const std::optional<fs::path> program = pictures.empty() ? std::nullopt : converter();
  Outcome outcome;
  if (!pictures.empty()) {
    if (auto why = write_pictures(files, pictures, program, *written)) return *why;
    if (!program) {
      outcome.err = fmt::format(
          "wattweek: no .png was made: {} is not installed; on Debian it is in librsvg2-bin\n",
          kConverter);
    }
  }
  if (files.output == kStandardOutput) {
    outcome.out = page;
    outcome.rest = [written](const Write&) {
      const auto why = written->finish();
      return why ? "--pictures: " + why->reason : "";
    };
    return outcome;
  }
  auto why = written->write(folder_of(files.output).string(),
                            {{fs::path(files.output).filename().string(), page}});
  if (!why) why = written->finish();
  if (why) return not_written("output", *why);
  outcome.out = told(files, pictures, program.has_value());
  return outcome;
}

}  // namespace wattweek::cli
