#include "support.hpp"

using namespace wattweek::read_tests;

TEST_CASE("a profile: each key and what it refuses") {
  const std::vector<Case> cases{
      {"idle is needed", edited(kProfile, "idle = 10\n", ""),
       "box.toml:3:1: error: watts.idle is missing: expected a number or a range [low, high], not "
       "below 0, in W, or at_load or week in its place"},
      {"the table watts is needed", edited(kProfile, "[watts]\nidle = 10\nbusy = 30\n", ""),
       "box.toml:1:1: error: watts.idle is missing: expected a table [watts] with idle = WATTS"},
      {"idle is not below 0", edited(kProfile, "idle = 10", "idle = -3"),
       "box.toml:4:8: error: watts.idle = -3: expected a number or a range [low, high], not below "
       "0, in W"},
      {"a text is no number", edited(kProfile, "idle = 10", R"(idle = "ten")"),
       R"(box.toml:4:8: error: watts.idle = "ten": expected a number or a range [low, high], not below 0, in W)"},
      {"a truth value is no number", edited(kProfile, "idle = 10", "idle = true"),
       "box.toml:4:8: error: watts.idle = true: expected a number or a range [low, high], not "
       "below 0, in W"},
      {"nan is no number", edited(kProfile, "idle = 10", "idle = nan"),
       "box.toml:4:8: error: watts.idle = nan: expected a number or a range [low, high], not below "
       "0, in W"},
      {"infinity is no number", edited(kProfile, "busy = 30", "busy = inf"),
       "box.toml:5:8: error: watts.busy = inf: expected a number or a range [low, high], not below "
       "0, in W"},
      {"a number may not be huge", edited(kProfile, "busy = 30", "busy = 1e13"),
       "box.toml:5:8: error: watts.busy = 1e13: expected a number or a range [low, high], not "
       "below 0, in W; no number may be above 1e12"},
      {"a huge integer is refused as well",
       edited(kProfile, "busy = 30", "busy = 9223372036854775807"),
       "box.toml:5:8: error: watts.busy = 9223372036854775807: expected a number or a range [low, "
       "high], not below 0, in W; no number may be above 1e12"},
      {"a range is not upside down", edited(kProfile, "idle = 10", "idle = [14, 13]"),
       "box.toml:4:8: error: watts.idle = [14, 13]: the range is upside down; write [13, 14]"},
      {"a range has two ends", edited(kProfile, "idle = 10", "idle = [13, 13.5, 14]"),
       "box.toml:4:8: error: watts.idle = [13, 13.5, 14]: expected a number or a range [low, "
       "high], not below 0, in W; a range has two numbers, not 3; a decimal number has a point, "
       "not a comma"},
      {"a range with decimal commas has four", edited(kProfile, "idle = 10", "idle = [13,5, 14,5]"),
       "box.toml:4:8: error: watts.idle = [13,5, 14,5]: expected a number or a range [low, high], "
       "not below 0, in W; a range has two numbers, not 4; a decimal number has a point, not a "
       "comma"},
      {"a range is not empty", edited(kProfile, "idle = 10", "idle = []"),
       "box.toml:4:8: error: watts.idle = []: expected a number or a range [low, high], not below "
       "0, in W; a range has two numbers, not 0"},
      {"the ends of a range are numbers", edited(kProfile, "idle = 10", R"(idle = ["13", false])"),
       R"(box.toml:4:9: error: watts.idle = "13": expected a number or a range [low, high], not below 0, in W; write 13
box.toml:4:15: error: watts.idle = false: expected a number or a range [low, high], not below 0, in W)"},
      {"the ends of a range keep the bounds", edited(kProfile, "idle = 10", "idle = [-1, 3]"),
       "box.toml:4:9: error: watts.idle = -1: expected a number or a range [low, high], not below "
       "0, in W"},
      {"a table is no number", edited(kProfile, "idle = 10", "idle = { watts = 10 }"),
       "box.toml:4:8: error: watts.idle = { watts = 10 }: expected a number or a range [low, "
       "high], not below 0, in W"},
      {"busy reaches idle", edited(kProfile, "busy = 30", "busy = 5"),
       "box.toml:5:8: error: watts.busy = 5: lies below watts.idle = 10; expected at least that"},
      {"the low end of busy reaches the high end of idle",
       edited(edited(kProfile, "idle = 10", "idle = [9, 12]"), "busy = 30", "busy = [11, 30]"),
       "box.toml:5:8: error: watts.busy = [11, 30]: lies below watts.idle = [9, 12]; expected its "
       "low end to reach the high end of that"},
      {"max reaches idle", edited(kProfile, "busy = 30", "busy = 30\nmax = 9"),
       "box.toml:6:7: error: watts.max = 9: lies below watts.idle = 10; expected at least that"},
      {"max reaches the table at no load",
       edited(kProfile, "idle = 10\nbusy = 30", "at_load = [10, 20]\nmax = 9"),
       "box.toml:5:7: error: watts.max = 9: lies below the first of watts.at_load = [10, 20]; "
       "expected at least that"},
      {"off and sleep are not below 0", edited(kProfile, "busy = 30", "off = -1\nsleep = -2"),
       "box.toml:5:7: error: watts.off = -1: expected a number or a range [low, high], not below "
       "0, in W\nbox.toml:6:9: error: watts.sleep = -2: expected a number or a range [low, high], "
       "not below 0, in W"},
      {"a curve is one of two words", edited(kProfile, "busy = 30", R"(busy = 30
curve = "convex")"),
       R"(box.toml:6:9: error: watts.curve = "convex": expected "linear" or "concave")"},
      {"a curve is a word", edited(kProfile, "busy = 30", "busy = 30\ncurve = 2"),
       R"(box.toml:6:9: error: watts.curve = 2: expected "linear" or "concave")"},
      {"at_load replaces idle, busy and curve", edited(kProfile, "busy = 30", R"(busy = 30
curve = "linear"
at_load = [10, 30])"),
       "box.toml:4:1: error: watts.idle: at_load replaces idle, busy and curve; expected either "
       "at_load or them\nbox.toml:5:1: error: watts.busy: at_load replaces idle, busy and curve; "
       "expected either at_load or them\nbox.toml:6:1: error: watts.curve: at_load replaces idle, "
       "busy and curve; expected either at_load or them"},
      {"at_load has at least two numbers",
       edited(kProfile, "idle = 10\nbusy = 30", "at_load = [10]"),
       "box.toml:4:11: error: watts.at_load = [10]: expected an array of at least 2 numbers, not "
       "below 0, in W, none below the one before"},
      {"at_load is an array", edited(kProfile, "idle = 10\nbusy = 30", "at_load = 10"),
       "box.toml:4:11: error: watts.at_load = 10: expected an array of at least 2 numbers, not "
       "below 0, in W, none below the one before"},
      {"at_load never falls", edited(kProfile, "idle = 10\nbusy = 30", "at_load = [10, 9, 12]"),
       "box.toml:4:16: error: watts.at_load = 9: falls below the entry before; expected an array "
       "of at least 2 numbers, not below 0, in W, none below the one before"},
      {"at_load holds numbers, no ranges",
       edited(kProfile, "idle = 10\nbusy = 30", "at_load = [10, [11, 12]]"),
       "box.toml:4:16: error: watts.at_load = [11, 12]: expected a single number, not below 0, in "
       "W"},
      {"at_load is not below 0", edited(kProfile, "idle = 10\nbusy = 30", "at_load = [-1, 12]"),
       "box.toml:4:12: error: watts.at_load = -1: expected a single number, not below 0, in W"},
      {"capacity is above 0", edited(kProfile, "capacity = 4", "capacity = 0"),
       "box.toml:2:12: error: capacity = 0: expected a number or a range [low, high], above 0"},
      {"a name is a text", edited(kProfile, R"(name = "box")", "name = 7"),
       "box.toml:1:8: error: name = 7: expected the device's name in quotes"},
      {"a name is not empty", edited(kProfile, R"(name = "box")", R"(name = " ")"),
       R"(box.toml:1:8: error: name = " ": the text is empty; expected the device's name in quotes)"},
      {"a name has no line break", edited(kProfile, R"(name = "box")", R"(name = "a\nb")"),
       R"(box.toml:1:8: error: name = "a\nb": the text has a line break or another control character; expected the device's name in quotes on one line)"},
      {"a meter is named by an id", edited(kProfile, "capacity = 4", R"(meter = "My meter")"),
       R"(box.toml:2:9: error: meter = "My meter": expected an id in quotes: lower-case letters, digits, - and _)"},
      {"the meters themselves are listed in the study",
       edited(kProfile, "capacity = 4", R"(meter = [ { id = "plug", scale = 1 } ])"),
       R"(box.toml:2:9: error: meter = [ { id = "plug", scale = 1 } ]: expected an id in quotes: lower-case letters, digits, - and _)"},
  };
  check_cases(cases, read_profile);
}
