#include "range_words.hpp"

#include <doctest/doctest.h>

#include "../support/all_ranges.hpp"
#include "../support/study_text.hpp"
#include "wattweek/decide/settled_study.hpp"

namespace wattweek::report {
namespace {

std::vector<std::string> words_of(const model::Study& study) {
  const decide::SettledStudy settled(study);
  std::vector<std::string> words;
  for (const decide::RangePlace& place : settled.places()) {
    words.push_back(range_words(study, place));
  }
  return words;
}

TEST_CASE("range words: every range of a study is said in words") {
  const model::Study study = tests::read_study(tests::kAllRanges).study;
  CHECK(words_of(study) == std::vector<std::string>{
                               "what the home itself uses",
                               "the rate of discount",
                               "the yearly rise of electricity prices",
                               "the tax on the bill",
                               "the standing charge of a day",
                               "the standing charge of a month",
                               "the minimum bill",
                               "the price of a kWh in the band night",
                               "the price of a kWh in the band day",
                               "the price of block 1",
                               "the price of block 2",
                               "how much work films takes",
                               "how much of the time films is in use (use 1)",
                               "how much of the time films is in use (use 2)",
                               "the purchase of palm",
                               "the resale of palm",
                               "a later cost of palm",
                               "the idle watts of device 1 of palm",
                               "the watts of device 2 of palm shut down",
                               "the watts of device 2 of palm asleep",
                               "the idle watts of device 2 of palm",
                               "the watts of device 2 of palm at full load",
                               "the most watts of device 2 of palm",
                               "how much work device 2 of palm can do",
                               "the watts of the disks of device 2 of palm",
                               "what music adds on device 2 of palm for the first unit",
                               "what music adds on device 2 of palm for each further unit",
                               "what mail adds on device 2 of palm",
                               "the error of the meter plug",
                           });
}

TEST_CASE("range words: a place knows which key it belongs to") {
  const model::Study study = tests::read_study(tests::kAllRanges).study;
  const decide::SettledStudy settled(study);
  REQUIRE(settled.places().size() == settled.keys().size());
  CHECK(settled.keys()[13] == "study.toml:workload.films.use.2.minutes");
  CHECK(settled.places()[13] == decide::RangePlace{decide::RangeKind::share, 0, 1});
}

TEST_CASE("range words: one price and one use need no number, and a later cost has its name") {
  model::Study study = tests::read_study(tests::kAllRanges).study;
  study.tariff.bands.resize(1);
  study.workloads[0].uses.resize(1);
  study.workloads[0].name = "Film streaming";
  study.candidates[0].name = "Palm-size box";
  study.candidates[0].later[1].name = "two disks";
  using decide::RangeKind;
  CHECK(range_words(study, {RangeKind::band_price, 0}) == "the price of a kWh");
  CHECK(range_words(study, {RangeKind::share, 0, 0}) ==
        "how much of the time Film streaming is in use");
  CHECK(range_words(study, {RangeKind::later_cost, 0, 1}) ==
        "the later cost (two disks) of Palm-size box");
  CHECK(range_words(study, {RangeKind::increment_load, 0, 1, 1}) ==
        "the load of music on device 2 of Palm-size box");
}

}  // namespace
}  // namespace wattweek::report
