// docs/json.md against what the program prints: each object has a section, each of its members a
// row there, and no row is left over.

#include <doctest/doctest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "../cli/program.hpp"
#include "markdown.hpp"

namespace wattweek::docs {
namespace {

using nlohmann::json;
using Members = std::map<std::string, std::set<std::string>>;

// Member names by the path of their object: `candidates[].months[]`, empty for the whole.
void collect(const json& value, const std::string& path, Members& members) {
  if (value.is_array()) {
    for (const json& element : value) collect(element, path + "[]", members);
  }
  if (!value.is_object()) return;
  if (path == "bills.with") {  // One member for each candidate, named by its id.
    for (const json& bills : value) collect(bills, "bills.without", members);
    return;
  }
  if (path == "log.dropped") return;  // One member for each reason.
  for (const auto& [name, inside] : value.items()) {
    members[path].insert(name);
    collect(inside, path.empty() ? name : path + "." + name, members);
  }
}

Members members_of(const std::string& command) {
  const cli::Run run = cli::wattweek(command);
  REQUIRE(run.exit_code == 0);
  Members members;
  collect(json::parse(run.out), "", members);
  return members;
}

void check_chapter(const std::string& chapter, const Members& members) {
  for (const auto& object : members) {
    const std::string heading = object.first.empty() ? "The whole" : "`" + object.first + "`";
    CAPTURE(heading);
    const auto rows = first_cells(section("docs/json.md", chapter, heading));
    CHECK(json(rows).dump() == json(object.second).dump());
  }
}

TEST_CASE("docs/json.md: describes every member of estimate and compare, and no other") {
  Members members = members_of(
      "compare docs/examples/ostrawick.toml --draws 100 --payback-within 3 --format json");
  CHECK(members.count("candidates[].lifetime") == 1);
  const cli::TemporaryFolder folder;
  folder.write("month.toml",
               "time_zone = \"Etc/UTC\"\nstart = 2027-01-01\nmonths = 1\n"
               "tariff = { currency = \"EUR\", band = [{ name = \"all\", price = 0.3 }] }\n"
               "[[candidate]]\nid = \"box\"\ndevice = [{ watts = { idle = 9 } }]\n");
  for (const auto& [path, names] :
       members_of("compare '" + (folder.path() / "month.toml").string() + "' --format json")) {
    members[path].insert(names.begin(), names.end());
  }
  REQUIRE(members.count("notes[]") == 1);
  check_chapter("wattweek-estimate-1", members);
}

TEST_CASE("docs/json.md: describes every member of compare under several tariffs, and no other") {
  const Members members = members_of(
      "compare docs/examples/ostrawick.toml --tariff shipped:three-bands-seasons "
      "--tariff shipped:flat --format json");
  REQUIRE(members.count("rows[].notes[]") == 1);
  check_chapter("wattweek-tariffs-1", members);
}

TEST_CASE("docs/json.md: describes every member of what-ifs, and no other") {
  check_chapter("wattweek-whatif-1",
                members_of("whatif docs/examples/ostrawick.toml --vary price=0..2 --format json"));
  check_chapter("wattweek-turns-1",
                members_of("whatif docs/examples/ostrawick.toml --turns --format json"));
  check_chapter("wattweek-shift-1",
                members_of("whatif docs/examples/ostrawick.toml --shift backup --format json"));
  check_chapter(
      "wattweek-rest-1",
      members_of("whatif docs/examples/ostrawick.toml --rest rack=01:00-06:00 --format json"));
}

TEST_CASE("docs/json.md: describes every member of fit, and no other") {
  const std::string log = "fit docs/examples/plug-log.csv --zone Europe/Dublin --format json ";
  Members members = members_of(log +
                               "--activity docs/examples/plug-activity.csv --meter-error 2,0.5 "
                               "--tariff shipped:flat");
  // A workload that is in use all the time cannot be told from idle.
  const cli::TemporaryFolder folder;
  folder.write("use.csv", "workload,start,end\ndoor,2027-03-01 00:00,2027-04-01 00:00\n");
  for (const auto& [path, names] :
       members_of(log + "--activity '" + (folder.path() / "use.csv").string() + "'")) {
    members[path].insert(names.begin(), names.end());
  }
  check_chapter("wattweek-fit-1", members);
}

TEST_CASE("docs/json.md: describes every member of quick, and no other") {
  check_chapter("wattweek-quick-1", members_of("quick --idle 9 --price 0.3 --format json"));
}

}  // namespace
}  // namespace wattweek::docs
