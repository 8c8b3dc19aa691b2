#include <doctest/doctest.h>

#include "fixture.hpp"
#include "sections.hpp"
#include "week_picture.hpp"

namespace wattweek::report {
namespace {

decide::Week week(double watts) {
  decide::Week made;
  made.mean_w.setConstant(7, decide::Week::kSlotsPerDay, watts);
  return made;
}

// The section alone, as text.
std::string timing_text(const model::Study& study, const decide::Assessment& all,
                        const std::vector<decide::Week>& weeks, int columns) {
  return lay_out_text({"", {timing(shown(study, all), weeks)}}, {columns, false});
}

TEST_CASE("week picture: a character for each half-hour, darker where more is drawn") {
  decide::Week lived = week(10);
  lived.mean_w.block(5, 40, 1, 4).setConstant(20);  // Saturday, 20:00 to 22:00.
  lived.mean_w(6, 0) = 15;
  const Picture picture = week_picture(lived, "box");
  CHECK(picture.wide == std::vector<std::string>{
                            "    0           6           12          18",
                            "Mon ................................................",
                            "Tue ................................................",
                            "Wed ................................................",
                            "Thu ................................................",
                            "Fri ................................................",
                            "Sat ........................................####....",
                            "Sun +...............................................",
                        });
  CHECK(picture.legend == ". 10.0 to 12.0 W, - to 14.0 W, + to 16.0 W, x to 18.0 W, # to 20.0 W");
}

TEST_CASE("week picture: where there is little room an hour is one character, the mean of both") {
  decide::Week lived = week(10);
  lived.mean_w(0, 0) = 20;
  const Picture picture = week_picture(lived, "box");
  CHECK(picture.narrow[0] == "    0     6     12    18");
  CHECK(picture.narrow[1] == "Mon +.......................");
}

TEST_CASE("week picture: the most drawn has the darkest character, not one beyond it") {
  decide::Week lived = week(0);
  lived.mean_w(3, 3) = 0.1;
  CHECK(week_picture(lived, "").wide[4].substr(4, 5) == "...#.");
}

TEST_CASE("timing: a machine that always draws the same has a sentence, not a picture") {
  const std::string shown = timing_text(study(), assessment(), {week(12), week(0.04)}, 80);
  CHECK(shown.find("Rack server draws 12.0 W all week.\n") != std::string::npos);
  CHECK(shown.find("Palm-size box draws 0.040 W all week.\n") != std::string::npos);
  CHECK(shown.find("Mon ") == std::string::npos);
}

TEST_CASE("timing: the picture is left out where even an hour a character has no room") {
  decide::Week lived = week(10);
  lived.mean_w(0, 0) = 20;
  CHECK(timing_text(study(), assessment(), {lived}, 52).find("Mon #..") != std::string::npos);
  CHECK(timing_text(study(), assessment(), {lived}, 51).find("Mon +..") != std::string::npos);
  CHECK(timing_text(study(), assessment(), {lived}, 27).find("(no room for it here)") !=
        std::string::npos);
}

TEST_CASE("timing: fifteen candidates stand three beside each other") {
  model::Study many = study();
  decide::Assessment all = assessment();
  many.candidates.clear();
  all.candidates.resize(15, all.candidates.front());
  for (int c = 0; c < 15; ++c) {
    many.candidates.push_back(candidate("c" + std::to_string(c), "Candidate", 0));
  }
  const std::string shown = timing_text(many, all, {}, 80);
  for (int c = 0; c < 15; ++c) {
    CAPTURE(c);
    CHECK(shown.find(" c" + std::to_string(c) + " ") != std::string::npos);
  }
  std::size_t tables = 0;
  for (std::size_t at = shown.find("\nmonth "); at != std::string::npos;
       at = shown.find("\nmonth ", at + 1)) {
    ++tables;
  }
  CHECK(tables == 5);
}

TEST_CASE("timing: one price band needs no table of bands") {
  model::Study flat = study();
  flat.tariff.bands.resize(1);
  CHECK(timing_text(flat, assessment(), {}, 80).find("band") == std::string::npos);
}

}  // namespace
}  // namespace wattweek::report
