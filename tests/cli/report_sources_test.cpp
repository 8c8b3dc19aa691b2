// The files that a report was made from, and the way from it to its pictures.

#include <algorithm>

#include "cli/report_files.hpp"
#include "cli/study_options.hpp"
#include "report_desk.hpp"

namespace wattweek::cli {
namespace {

namespace fs = std::filesystem;

const std::string kProfile = "[watts]\nidle = 9\n";
const std::string kContract = "currency = \"EUR\"\nband = [{ name = \"all\", price = 0.3 }]\n";

std::string study_of(const std::vector<std::string>& profiles) {
  std::string text = "time_zone = \"Etc/UTC\"\nstart = 2027-01-01\ntariff = \"own.toml\"\n";
  for (std::size_t i = 0; i < profiles.size(); ++i) {
    text += "[[candidate]]\nid = \"c" + std::to_string(i) +
            "\"\n[[candidate.device]]\nprofile = \"" + profiles[i] + "\"\n";
  }
  return text;
}

/// The names of what was read for the study, seen from the folder; `!` behind a text that is not
/// the file's.
std::vector<std::string> read_for(const TemporaryFolder& folder,
                                  const std::vector<std::string>& tariffs) {
  Arguments arguments;
  arguments.operands = {(folder.path() / "study.toml").string()};
  for (const std::string& each : tariffs) {
    arguments.values["tariff"].push_back((folder.path() / each).string());
  }
  Sources sources;
  const auto studies = studies_of(arguments, &sources);
  REQUIRE(std::holds_alternative<std::vector<read::StudyInput>>(studies));
  std::vector<std::string> names;
  for (const read::SourceText& source : sources) {
    const std::string name = fs::path(source.name).lexically_relative(folder.path()).string();
    names.push_back(name + (text_of(folder.path() / name) == source.text ? "" : "!"));
  }
  return names;
}

using Names = std::vector<std::string>;

TEST_CASE("report: it holds each file that was read once, in the order in which they were read") {
  const TemporaryFolder folder;
  folder.write("study.toml", study_of({"b.toml", "a.toml", "./b.toml", "link.toml"}));
  for (const char* name : {"a.toml", "b.toml"}) folder.write(name, kProfile);
  for (const char* name : {"own.toml", "other.toml"}) folder.write(name, kContract);
  fs::create_symlink("a.toml", folder.path() / "link.toml");
  const Names own = read_for(folder, {});
  REQUIRE(own.size() == 4);
  CHECK(own.front() == "study.toml");
  CHECK(std::count(own.begin(), own.end(), "own.toml") == 1);
  const auto at = [&own](const char* name) { return std::find(own.begin(), own.end(), name); };
  CHECK(at("b.toml") < at("a.toml"));
  CHECK(at("a.toml") < own.end());
}

TEST_CASE("report: with another contract it holds that one, and not the study's own") {
  const TemporaryFolder folder;
  folder.write("study.toml", study_of({"a.toml"}));
  folder.write("a.toml", kProfile);
  for (const char* name : {"own.toml", "other.toml"}) folder.write(name, kContract);
  CHECK(read_for(folder, {"other.toml"}) == Names{"study.toml", "other.toml", "a.toml"});
}

TEST_CASE("report: what ships is shown too, under the name that the study gives it") {
  const ReportDesk desk;
  std::string study = study_of({"shipped:modem", "shipped:modem"});
  study.replace(study.find("own.toml"), 8, "shipped:flat");
  desk.write("shipped.toml", study);
  const Run run = desk.words_run("report shipped.toml -o -");
  CHECK(run.exit_code == 0);
  for (const char* name : {"shipped.toml", "shipped:flat", "shipped:modem"}) {
    CAPTURE(name);
    CHECK(run.out.find(name) != std::string::npos);
  }
  // The place of the installation is nobody's business.
  CHECK(run.out.find("/share/wattweek/") == std::string::npos);
}

/// The link from a report at `output` to pictures at `pictures`, both below the folder.
std::string link_between(const TemporaryFolder& folder, const std::string& output,
                         const std::string& pictures) {
  ReportFiles files;
  files.output = (folder.path() / output).string();
  files.pictures = (folder.path() / pictures).string();
  return link_to_pictures(files).value_or("(none)");
}

TEST_CASE("report: its links lead from its folder to the pictures, whatever they are called") {
  const TemporaryFolder folder;
  fs::create_directories(folder.path() / "a/b");
  fs::create_directory_symlink("a/b", folder.path() / "short");
  CHECK(link_between(folder, "r.md", "pics") == "pics");
  CHECK(link_between(folder, "r.md", "pics/") == "pics");
  CHECK(link_between(folder, "r.md", "a/../pics") == "pics");
  CHECK(link_between(folder, "r.md", "") == ".");
  CHECK(link_between(folder, "a/b/r.md", "pics") == "../../pics");
  CHECK(link_between(folder, "short/r.md", "pics") == "../../pics");
  CHECK(link_between(folder, "r.md", "my (first) [pics]") == "my%20%28first%29%20%5Bpics%5D");
  CHECK(link_between(folder, "r.md", "a:b") == "a%3Ab");
  CHECK(link_between(folder, "r.md", "B\xC3\xA4r%") == "B%C3%A4r%25");
}

TEST_CASE("report: on standard output its links lead where the folder was said to be") {
  ReportFiles files;
  files.output = "-";
  CHECK_FALSE(link_to_pictures(files));
  files.pictures = "my pics";
  CHECK(link_to_pictures(files) == "my%20pics");
}

TEST_CASE("report: the pictures that Markdown shows are there") {
  const ReportDesk desk;
  const Run run = desk.run("--format markdown -o report.md --pictures 'my pics'");
  CHECK(run.exit_code == 0);
  const std::string text = desk.read("report.md");
  std::size_t links = 0;
  const std::string opening = "](my%20pics/";
  for (std::size_t at = text.find(opening); at != std::string::npos;
       at = text.find(opening, at + 1)) {
    const std::size_t begin = at + opening.size();
    CHECK(desk.has("my pics/" + text.substr(begin, text.find(')', begin) - begin)));
    ++links;
  }
  CHECK(links > 0);
}

}  // namespace
}  // namespace wattweek::cli
