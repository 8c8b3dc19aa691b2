#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("groups and increments: each form and what it refuses") {
  const std::vector<Case> cases{
      {"a group draws no less than 0", edited(kProfile, "disks = 5", "disks = -5"),
       "box.toml:7:9: error: groups.disks = -5: expected a number or a range [low, high], not "
       "below 0, in W"},
      {"a group has a name", edited(kProfile, "disks = 5", R"("" = 5)"),
       R"(box.toml:7:1: error: groups."": a group needs a name)"},
      {"groups are a table",
       edited(edited(kProfile, "[groups]\ndisks = 5\n", ""), R"(name = "box")", R"(name = "box"
groups = 5)"),
       "box.toml:2:10: error: groups = 5: expected a table [groups]"},
      {"increments are a table",
       edited(edited(kProfile, "[increments]\nfilm = 3\n", ""), R"(name = "box")", R"(name = "box"
increments = [3])"),
       "box.toml:2:14: error: increments = [3]: expected a table [increments]"},
      {"watts in double brackets are two tables too many", edited(kProfile, "[watts]", "[[watts]]"),
       "box.toml:3:1: error: [[watts]] has double brackets: expected [watts] with single ones, "
       "once"},
      {"an increment is not below 0", edited(kProfile, "film = 3", "film = -3"),
       "box.toml:9:8: error: increments.film = -3: expected a number or a range [low, high], not "
       "below 0, in W"},
      {"an increment is no text", edited(kProfile, "film = 3", R"(film = "three")"),
       R"(box.toml:9:8: error: increments.film = "three": expected a number or a range [low, high], not below 0, in W)"},
      {"three numbers are a table", edited(kProfile, "film = 3", "film = [6.0, 8.4, 10.9]"),
       "box.toml:9:8: error: increments.film = [6.0, 8.4, 10.9]: expected a number or a range "
       "[low, high], not below 0, in W; for watts at 1, 2, 3 ... units write { table = [6.0, 8.4, "
       "10.9] }"},
      {"a form is not empty", edited(kProfile, "film = 3", "film = {}"),
       R"(box.toml:9:8: error: increments.film = {}: expected one of 3.1, { first = 6.0, each = 2.4 }, { table = [6.0, 8.4] }, { load = 0.06 } and { group = "disks" })"},
      {"a form is one of the four", edited(kProfile, "film = 3", "film = { each = 2, load = 0.1 }"),
       R"(box.toml:9:8: error: increments.film = { each = 2, load = 0.1 }: expected one of 3.1, { first = 6.0, each = 2.4 }, { table = [6.0, 8.4] }, { load = 0.06 } and { group = "disks" }; only one of first with each, table and load)"},
      {"first and each are not below 0",
       edited(kProfile, "film = 3", "film = { first = -1, each = -2 }"),
       "box.toml:9:18: error: increments.film.first = -1: expected a number or a range [low, "
       "high], not below 0, in W\nbox.toml:9:29: error: increments.film.each = -2: expected a "
       "number or a range [low, high], not below 0, in W"},
      {"a table is not empty", edited(kProfile, "film = 3", "film = { table = [] }"),
       "box.toml:9:18: error: increments.film.table = []: expected an array of at least 1 number, "
       "not below 0, in W, none below the one before"},
      {"a table never falls", edited(kProfile, "film = 3", "film = { table = [6.0, 5.9] }"),
       "box.toml:9:24: error: increments.film.table = 5.9: falls below the entry before; expected "
       "an array of at least 1 number, not below 0, in W, none below the one before"},
      {"a load is not below 0", edited(kProfile, "film = 3", "film = { load = -0.1 }"),
       "box.toml:9:17: error: increments.film.load = -0.1: expected a number or a range [low, "
       "high], not below 0"},
      {"a load has no group",
       edited(kProfile, "film = 3", R"(film = { load = 0.1, group = "disks" })"),
       R"(box.toml:9:8: error: increments.film = { load = 0.1, group = "disks" }: expected one of 3.1, { first = 6.0, each = 2.4 }, { table = [6.0, 8.4] }, { load = 0.06 } and { group = "disks" }; a load has no group)"},
      {"a load needs a way to full load",
       edited(edited(kProfile, "busy = 30\n", ""), "film = 3", "film = { load = 0.1 }"),
       "box.toml:8:17: error: increments.film.load = 0.1: a load needs busy or at_load under "
       "[watts]; without them write the watts"},
      {"a load in percent is told apart",
       edited(kProfile, "film = 3", R"(film = { load = "6 %" })"),
       R"(box.toml:9:17: error: increments.film.load = "6 %": expected a number or a range [low, high], not below 0; write 0.06 (a fraction is meant))"},
      {"a group must be there",
       edited(kProfile, "film = 3", R"(film = { each = 1, group = "disk" })"),
       R"(box.toml:9:28: error: increments.film.group = "disk": no group has this name, did you mean "disks"?)"},
      {"where there are no groups none can be named",
       edited(edited(kProfile, "[groups]\ndisks = 5\n", ""), "film = 3",
              R"(film = { group = "disks" })"),
       R"(box.toml:7:18: error: increments.film.group = "disks": expected the name of a group; there are none under [groups])"},
      {"a form knows five keys", edited(kProfile, "film = 3", "film = { eech = 1, each = 1 }"),
       "box.toml:9:10: error: unknown key increments.film.eech: did you mean each?"},
      {"a workload has an id", edited(kProfile, "film = 3", R"("Film 4K" = 3)"),
       R"(box.toml:9:1: error: increments.Film 4K: "Film 4K" is no workload id; expected an id in quotes: lower-case letters, digits, - and _)"},
      {"all of these at once, in file order",
       edited(edited(kProfile, "disks = 5", R"(disks = "5")"), "film = 3",
              "film = true\nphotos = { load = nan }"),
       R"(box.toml:7:9: error: groups.disks = "5": expected a number or a range [low, high], not below 0, in W; write 5
box.toml:9:8: error: increments.film = true: expected a number or a range [low, high], not below 0, in W
box.toml:10:19: error: increments.photos.load = nan: expected a number or a range [low, high], not below 0)"},
  };
  check_cases(cases, read_profile);
}
