#include "random_workloads.hpp"

namespace wattweek::oracle {
namespace {

const std::vector<std::string> kWorkloadIds{"film", "backup", "photo-sync", "cams"};

// Enumerated outcomes are many: past this product of all uses' outcomes, uses become certain.
constexpr int kMostOutcomes = 300;

class Writer {
 public:
  Writer(Dice& dice, const Period& period) : dice_(dice), period_(period) {}

  std::string write(std::vector<WorkloadSketch>& workloads) {
    std::string text;
    const int count = dice_.between(0, 4);
    for (int w = 0; w < count; ++w) {
      WorkloadSketch workload{kWorkloadIds[static_cast<std::size_t>(w)], dice_.chance(70), 0};
      text += fmt::format("[[workload]]\nid = \"{}\"\n", workload.id);
      if (dice_.chance(30)) text += "name = \"What is done\"\nunit = \"piece\"\n";
      if (workload.has_compute) text += "compute = " + dice_.figure(50, 1300).text() + "\n";
      for (int uses = dice_.between(1, 3); uses > 0; --uses) {
        text += "[[workload.use]]\n" + random_use(workload);
      }
      workloads.push_back(workload);
    }
    return text;
  }

 private:
  std::string random_use(WorkloadSketch& workload) {
    if (dice_.chance(20)) return random_use_by_minutes(workload);
    std::string text = on_lines(random_window(dice_, period_));
    bool certain = outcomes_ > kMostOutcomes;
    if (dice_.chance(40)) {
      const int units = dice_.between(dice_.chance(5) ? 0 : 1, 5);
      if (!certain) outcomes_ *= units + 1;
      text += fmt::format("pattern = \"independent\"\nunits = {}\n", units);
      workload.most_units += units;
    } else {
      if (!certain) outcomes_ *= 2;
      if (dice_.chance(20)) text += "pattern = \"together\"\n";
      const std::string units = dice_.pick<std::string>({"", "1", "2", "0.5", "2.5", "3", "0.25"});
      if (!units.empty()) text += "units = " + units + "\n";
      workload.most_units += 3;
    }
    const int kind = dice_.between(1, 100);
    if (certain || kind <= 8) return text + "share = 1\n";
    if (kind <= 16) return text;
    if (kind <= 24) return text + "share = 0\n";
    return text + "share = " + dice_.figure(1, 999).text() + "\n";
  }

  std::string random_use_by_minutes(WorkloadSketch& workload) {
    std::string text = on_lines(random_day_filters(dice_, period_));
    int length_min = 1440;
    if (dice_.chance(85)) {
      const Span span = random_span(dice_);
      length_min = span.length_min;
      text += "hours = \"" + span.text + "\"\n";
    }
    if (outcomes_ > kMostOutcomes) {
      text += fmt::format("minutes = {}\n", length_min);
    } else {
      text += "minutes = " + dice_.figure(1, length_min * 1000).text() + "\n";
      outcomes_ *= 2;
    }
    workload.most_units += 3;
    return text + (dice_.chance(50) ? "units = 3\n" : "");
  }

  Dice& dice_;
  const Period& period_;
  int outcomes_ = 1;
};

}  // namespace

std::string random_workloads(Dice& dice, const Period& period,
                             std::vector<WorkloadSketch>& workloads) {
  return Writer(dice, period).write(workloads);
}

}  // namespace wattweek::oracle
