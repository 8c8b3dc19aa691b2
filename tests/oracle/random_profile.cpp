#include "random_profile.hpp"

namespace wattweek::oracle {
namespace {

enum class Law { idle_only, linear, concave, at_load };

struct Watts {
  Law law = Law::idle_only;
  std::string text;
  double most_w = 0;
};

std::string random_at_load(Dice& dice, int& first_milli, int& last_milli) {
  first_milli = last_milli = dice.between(3000, 90000);
  std::string table = fmt::format("{}", first_milli / 1000.0);
  for (int more = dice.between(1, 9); more > 0; --more) {
    last_milli += dice.chance(10) ? 0 : dice.between(1, 20000);
    table += fmt::format(", {}", last_milli / 1000.0);
  }
  return "at_load = [" + table + "]\n";
}

Watts random_watts(Dice& dice) {
  Watts watts;
  watts.law = dice.pick<Law>({Law::idle_only, Law::linear, Law::concave, Law::at_load});
  int idle_high = 0;
  int busy_high = 0;
  if (watts.law == Law::at_load) {
    watts.text += random_at_load(dice, idle_high, busy_high);
  } else {
    const Figure idle = dice.figure(dice.chance(3) ? 0 : 2000, 110000);
    idle_high = busy_high = idle.high_milli;
    watts.text += "idle = " + idle.text() + "\n";
  }
  if (watts.law == Law::linear || watts.law == Law::concave) {
    const Figure busy = dice.figure(idle_high, idle_high + 150000);
    busy_high = busy.high_milli;
    watts.text += "busy = " + busy.text() + "\n";
    if (watts.law == Law::concave) watts.text += "curve = \"concave\"\n";
    if (watts.law == Law::linear && dice.chance(30)) watts.text += "curve = \"linear\"\n";
  }
  if (dice.chance(50)) {
    watts.text += "max = " + dice.figure(idle_high, idle_high + 25000).text() + "\n";
  }
  if (dice.chance(70)) watts.text += "off = " + dice.figure(0, 2000).text() + "\n";
  watts.text += "sleep = " + dice.figure(0, 6000).text() + "\n";
  watts.most_w = busy_high / 1000.0;
  return watts;
}

std::string per_unit(Dice& dice, bool first, bool each, const std::string& group) {
  std::string text;
  if (first) text += "first = " + dice.figure(0, 15000).text() + ", ";
  if (each) text += "each = " + dice.figure(0, 9000).text() + ", ";
  text += group;
  if (group.empty()) text.resize(text.size() - 2);
  return "{ " + text + " }";
}

std::string unit_table(Dice& dice, const std::string& group) {
  int milli = dice.between(0, 9000);
  std::string text = fmt::format("table = [{}", milli / 1000.0);
  for (int more = dice.between(0, 4); more > 0; --more) {
    milli += dice.chance(15) ? 0 : dice.between(1, 9000);
    text += fmt::format(", {}", milli / 1000.0);
  }
  return "{ " + text + "]" + (group.empty() ? "" : ", " + group) + " }";
}

// What stands in `[increments]` for one workload; nothing where its load follows from compute
// and capacity.
std::string random_increment(Dice& dice, const WorkloadSketch& workload, bool has_load_law,
                             bool has_capacity, const std::vector<std::string>& groups) {
  if (has_load_law && has_capacity && workload.has_compute && dice.chance(35)) return "";
  std::string value;
  std::string group;
  if (!groups.empty() && dice.chance(60)) group = "group = \"" + dice.pick(groups) + "\"";
  switch (dice.between(0, has_load_law ? 7 : 5)) {
    case 0:
      value = group.empty() ? dice.figure(0, 20000).text() : "{ " + group + " }";
      break;
    case 1:
      value = per_unit(dice, true, true, group);
      break;
    case 2:
      value = per_unit(dice, true, false, group);
      break;
    case 3:
      value = per_unit(dice, false, true, group);
      break;
    case 4:
      value = unit_table(dice, group);
      break;
    case 5:
      value = dice.figure(0, 20000).text();
      break;
    case 6:
      value = "{ load = " + dice.pick<std::string>({"0.1", "0.2", "0.25", "0.5"}) + " }";
      break;
    default:
      value = "{ load = " + dice.figure(dice.chance(5) ? 0 : 10, 450).text() + " }";
  }
  return workload.id + " = " + value + "\n";
}

std::string random_meter(Dice& dice, bool has_meter) {
  return has_meter && dice.chance(50) ? fmt::format("meter = \"{}\"\n", kMeterId) : "";
}

}  // namespace

ProfileText random_profile(Dice& dice, const std::vector<WorkloadSketch>& workloads,
                           const std::string& prefix, bool has_meter) {
  const Watts watts = random_watts(dice);
  ProfileText profile;
  profile.most_w = watts.most_w;
  const bool has_capacity = dice.chance(50);
  if (has_capacity) profile.plain_keys += "capacity = " + dice.figure(800, 7000).text() + "\n";

  profile.plain_keys += random_meter(dice, has_meter);

  profile.tables += "[" + prefix + "watts]\n" + watts.text;
  std::vector<std::string> groups;
  if (dice.chance(45)) groups.push_back("disks");
  if (dice.chance(20)) groups.push_back("radio");
  if (!groups.empty()) profile.tables += "[" + prefix + "groups]\n";
  for (const std::string& group : groups) {
    profile.tables += group + " = " + dice.figure(0, 14000).text() + "\n";
    profile.most_w += 14;
  }
  profile.tables += "[" + prefix + "increments]\n";
  for (const WorkloadSketch& workload : workloads) {
    profile.tables +=
        random_increment(dice, workload, watts.law != Law::idle_only, has_capacity, groups);
    profile.most_w += 45.0 * std::max(1, workload.most_units);
  }
  if (dice.chance(15)) profile.tables += "nobody-has-this = 4\n";
  return profile;
}

ProfileText random_week_profile(Dice& dice, const std::string& prefix, bool has_meter) {
  ProfileText profile;
  profile.plain_keys = random_meter(dice, has_meter);
  std::vector<int> values_milli;
  for (int more = dice.chance(40) ? 168 : dice.between(1, 5); more > 0; --more) {
    values_milli.push_back(dice.chance(10) ? 0 : dice.between(0, 90000));
  }
  std::string week;
  for (int hour = 0; hour < 168; ++hour) {
    const int milli = dice.pick(values_milli);
    week += fmt::format("{}{}", hour == 0 ? "" : ", ", milli / 1000.0);
    profile.most_w = std::max(profile.most_w, milli / 1000.0);
  }
  profile.tables = "[" + prefix + "watts]\nweek = [" + week + "]\n";
  if (dice.chance(70)) profile.tables += "off = " + dice.figure(0, 2000).text() + "\n";
  profile.tables += "sleep = " + dice.figure(0, 6000).text() + "\n";
  return profile;
}

}  // namespace wattweek::oracle
