// Whole pictures, as files in `golden` that any browser opens. A picture that changes on purpose
// is written anew by WATTWEEK_WRITE_PICTURES=1, and looked at before it is committed.

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

#include "samples.hpp"

namespace wattweek::chart {
namespace {

const std::filesystem::path kFolder = WATTWEEK_SOURCE_DIR "/tests/chart/golden";

std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

TEST_CASE("every picture is its file, byte for byte") {
  for (const Sample& sample : samples()) {
    const std::filesystem::path path = kFolder / (sample.name + ".svg");
    if (std::getenv("WATTWEEK_WRITE_PICTURES") != nullptr) {
      std::ofstream(path, std::ios::binary) << sample.svg;
    }
    CAPTURE(sample.name);
    CHECK(text_of(path) == sample.svg);
  }
}

TEST_CASE("the folder of pictures holds those of the samples and no other") {
  std::set<std::string> wanted;
  for (const Sample& sample : samples()) wanted.insert(sample.name + ".svg");
  std::set<std::string> found;
  for (const auto& entry : std::filesystem::directory_iterator(kFolder)) {
    found.insert(entry.path().filename().string());
  }
  CHECK(found == wanted);
}

TEST_CASE("the same figures give the same bytes") {
  const auto first = samples();
  const auto second = samples();
  for (std::size_t i = 0; i < first.size(); ++i) CHECK(first[i].svg == second[i].svg);
}

}  // namespace
}  // namespace wattweek::chart
