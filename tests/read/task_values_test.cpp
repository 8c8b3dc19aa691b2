#include "support.hpp"

using namespace wattweek;
using namespace wattweek::read_tests;

namespace {

// The study's second candidate, made of these devices.
model::Candidate candidate(const std::string& devices, const std::string& skips = "[]") {
  std::string text = edited(kStudy, "[[candidate.device]]\nprofile = \"box.toml\"\n", devices);
  text = edited(text, "id = \"two\"", "id = \"two\"\nskips = " + skips);
  return value_of(read_study(text)).study.candidates.at(1);
}

std::string ids(const std::vector<model::Task>& tasks) {
  std::string text;
  for (const model::Task& task : tasks) text += task.workload == 0 ? "film " : "cams ";
  return text;
}

const std::string kBox = "[[candidate.device]]\nprofile = \"box.toml\"\n";

}  // namespace

TEST_CASE("the first device without runs runs what no other device runs") {
  const model::Candidate all = candidate(kBox);
  CHECK(ids(all.devices[0].runs) == "film cams ");
  const model::Candidate shared = candidate(kBox + kBox + "runs = [\"film\"]\n" + kBox);
  CHECK(ids(shared.devices[0].runs) == "cams ");
  CHECK(ids(shared.devices[1].runs) == "film ");
  CHECK(ids(shared.devices[2].runs) == "");
}

TEST_CASE("what is skipped is run by nobody") {
  const model::Candidate without = candidate(kBox, "[\"film\"]");
  CHECK(ids(without.devices[0].runs) == "cams ");
  CHECK(without.skips == std::vector<std::size_t>{0});
}

TEST_CASE("runs and assists are in the study's order of workloads") {
  const model::Candidate two =
      candidate(kBox + "runs = [\"cams\", \"film\"]\n" + kBox + "assists = [\"cams\", \"film\"]\n");
  CHECK(ids(two.devices[0].runs) == "film cams ");
  CHECK(ids(two.devices[1].assists) == "film cams ");
  CHECK(ids(two.devices[1].runs) == "");
}

TEST_CASE("a device may run nothing") {
  const model::Candidate idle = candidate(kBox + "runs = []\n", "[\"film\", \"cams\"]");
  CHECK(idle.devices[0].runs.empty());
}

TEST_CASE("devices that name one file share its profile") {
  const model::Candidate two = candidate(kBox + "[[candidate.device]]\nprofile = \"./box.toml\"\n");
  CHECK(two.devices[0].profile == two.devices[1].profile);
  CHECK(two.devices[0].profile->name == "box");
}

TEST_CASE("a device is named by itself, by its profile, or by its place among the devices") {
  const std::string inline_device =
      "[[candidate.device]]\nruns = []\n[candidate.device.watts]\nidle = 1\n";
  const model::Candidate three =
      candidate(kBox + "name = \"left\"\n" + "[[candidate.device]]\nprofile = \"box.toml\"\n" +
                inline_device);
  CHECK(three.devices[0].name == "left");
  CHECK(three.devices[1].name == "box");
  CHECK(three.devices[2].name == "device 3");
  CHECK(three.devices[2].profile->name == "device 3");
}

TEST_CASE("a workload without increment is a load, where its work and the capacity are known") {
  std::string text = edited(kStudy, "id = \"film\"", "id = \"film\"\ncompute = 2");
  text = edited(text, "name = \"big\"", "name = \"big\"\ncapacity = 8");
  text = edited(text, "idle = 10\n", "idle = 10\nbusy = 30\n");
  text = edited(text, "film = 3\n", "");
  const auto study = value_of(read_study(text)).study;
  const model::Device& device = study.candidates[0].devices[0];
  CHECK(std::holds_alternative<model::LoadFromCompute>(device.runs.at(0).increment.form));
  CHECK(std::holds_alternative<model::PerUnit>(device.runs.at(1).increment.form));
}

TEST_CASE("increments of workloads that the study does not know are passed over") {
  const std::string text = edited(kStudy, "film = 3", "film = 3\nholiday-lights = 30");
  CHECK(read_study(text).value.has_value());
}
