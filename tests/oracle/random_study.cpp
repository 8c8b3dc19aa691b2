#include "random_study.hpp"

#include <fmt/ranges.h>

#include "odd_months.hpp"
#include "random_profile.hpp"
#include "random_tariff.hpp"
#include "random_window.hpp"
#include "random_workloads.hpp"

namespace wattweek::oracle {
namespace {

class Writer {
 public:
  explicit Writer(const StudyWish& wish)
      : dice_(wish.seed * 2 + (wish.whole_year ? 1 : 0)), whole_year_(wish.whole_year) {}

  StudyText write() {
    draw_period();
    std::string tables;
    tables += random_workloads(dice_, period_, workloads_);
    write_away(tables);
    draw_finance(tables);
    draw_meter(tables);
    write_candidates(tables);
    write_household(tables);
    if (dice_.chance(30)) tables += "[carbon]\nkg_per_kwh = " + dice_.figure(0, 900).text() + "\n";
    write_head();
    write_tariff();
    out_.study += tables;
    return out_;
  }

 private:
  void draw_period() {
    const OddMonth odd = dice_.pick(kOddMonths);
    zone_ = odd.zone;
    const int shape = dice_.between(1, 100);
    period_.months = shape <= 70 ? 1 : shape <= 94 ? 2 : shape <= 97 ? 3 : 14;
    if (whole_year_) period_.months = 12;
    const std::chrono::year_month month =
        std::chrono::year(odd.year) / std::chrono::month(odd.month);
    period_.first = month - std::chrono::months(dice_.between(0, period_.months - 1));
  }

  void write_head() {
    if (dice_.chance(50)) head_ += "title = \"Study of chance\"\n";
    head_ += fmt::format("time_zone = \"{}\"\nstart = {:04}-{:02}-01\n", zone_,
                         static_cast<int>(period_.first.year()),
                         static_cast<unsigned>(period_.first.month()));
    if (period_.months != 12 || dice_.chance(50)) {
      head_ += fmt::format("months = {}\n", period_.months);
    }
    if (dice_.chance(50)) {
      head_ += random_holidays(dice_, period_) + "\n";
      if (dice_.chance(60)) head_ += "holidays_as = \"sun\"\n";
    }
    if (dice_.chance(40)) head_ += fmt::format("baseline = \"c{}\"\n", random_candidate());
  }

  void write_tariff() {
    const bool in_file = dice_.chance(30);
    const TariffText tariff = random_tariff(dice_, period_, in_file ? "" : "tariff.");
    if (in_file) {
      out_.files["contract.toml"] = tariff.plain_keys + tariff.tables;
      out_.study = head_ + "tariff = \"contract.toml\"\n";
    } else {
      out_.study = head_ + "[tariff]\n" + tariff.plain_keys + tariff.tables;
    }
  }

  void write_away(std::string& text) {
    for (int i = dice_.chance(40) ? dice_.between(1, 2) : 0; i > 0; --i) {
      text += fmt::format("[[away]]\ndates = \"{}\"\n", random_date_span(dice_, period_));
      if (!workloads_.empty() && dice_.chance(50)) {
        text += fmt::format("workloads = [\"{}\"]\n", dice_.pick(workloads_).id);
      }
    }
  }

  void draw_finance(std::string& text) {
    if (period_.months != 12 || dice_.chance(15)) return;
    years_ = dice_.between(1, 9);
    text += fmt::format("[finance]\nyears = {}\n", years_);
    if (dice_.chance(70)) text += "discount_rate = " + dice_.figure(-20, 90).text() + "\n";
    if (dice_.chance(60)) text += "price_rise = " + dice_.figure(-40, 70).text() + "\n";
  }

  void draw_meter(std::string& text) {
    has_meter_ = dice_.chance(15);
    if (!has_meter_) return;
    text += fmt::format("[[meter]]\nid = \"{}\"\nscale = {}\n", kMeterId,
                        dice_.figure(900, 1100).text());
  }

  void write_candidates(std::string& text) {
    candidates_ = dice_.between(1, 3);
    const bool equal_purchases = dice_.chance(15);
    for (int c = 0; c < candidates_; ++c) {
      text += fmt::format("[[candidate]]\nid = \"c{}\"\n", c);
      if (dice_.chance(50)) text += fmt::format("name = \"Candidate {}\"\n", c);
      if (!equal_purchases && dice_.chance(80)) {
        text += "purchase = " + dice_.figure(0, 700000).text() + "\n";
      }
      if (dice_.chance(40)) text += "resale = " + dice_.figure(0, 150000).text() + "\n";
      write_tasks_and_devices(text);
    }
  }

  // Who runs what: a device, or nobody; and who else takes part.
  void write_tasks_and_devices(std::string& text) {
    const int devices = dice_.between(1, 3);
    std::vector<Keys> runs(static_cast<std::size_t>(devices));
    std::vector<Keys> assists(runs.size());
    Keys skips;
    for (const WorkloadSketch& workload : workloads_) {
      const std::string id = "\"" + workload.id + "\"";
      if (dice_.chance(15)) {
        skips.push_back(id);
        continue;
      }
      const int runner = dice_.between(0, devices - 1);
      runs[static_cast<std::size_t>(runner)].push_back(id);
      const int other = dice_.between(0, devices - 1);
      if (other != runner && dice_.chance(60)) {
        assists[static_cast<std::size_t>(other)].push_back(id);
      }
    }
    if (!skips.empty()) text += fmt::format("skips = [{}]\n", fmt::join(skips, ", "));
    write_later_costs(text);
    const int takes_the_rest = dice_.between(-1, devices - 1);
    double most_w = 0;
    for (int d = 0; d < devices; ++d) {
      const auto i = static_cast<std::size_t>(d);
      const bool says_runs = d != takes_the_rest && (d < takes_the_rest || takes_the_rest < 0 ||
                                                     !runs[i].empty() || dice_.chance(50));
      std::string keys;
      if (says_runs) keys += fmt::format("runs = [{}]\n", fmt::join(runs[i], ", "));
      if (!assists[i].empty()) {
        keys += fmt::format("assists = [{}]\n", fmt::join(assists[i], ", "));
      }
      most_w += write_week_devices(text);
      most_w += write_device(text, keys);
    }
    most_w += write_week_devices(text);
    most_w_.push_back(most_w);
  }

  void write_later_costs(std::string& text) {
    for (int i = dice_.chance(30) ? dice_.between(1, 2) : 0; i > 0; --i) {
      text +=
          fmt::format("[[candidate.later]]\nyear = {}\ncost = {}\n",
                      dice_.between(1, years_ > 0 ? years_ : 9), dice_.figure(0, 120000).text());
    }
  }

  double write_device(std::string& text, const std::string& task_keys) {
    text += "[[candidate.device]]\n" + task_keys;
    const int count = write_name_and_count(text);
    const std::string rests = random_rests();
    if (dice_.chance(35)) {
      const double most_w = name_profile_file(text);
      text += rests;
      return count * most_w;
    }
    const ProfileText profile = random_profile(dice_, workloads_, "candidate.device.", has_meter_);
    text += profile.plain_keys + profile.tables + rests;
    return count * profile.most_w;
  }

  // Seldom one, in its place among those that run something.
  double write_week_devices(std::string& text) {
    double most_w = 0;
    while (dice_.chance(6)) {
      text += "[[candidate.device]]\n";
      if (dice_.chance(30)) text += "runs = []\n";
      const int count = write_name_and_count(text);
      const std::string rests = random_rests();
      const bool in_file = dice_.chance(50);
      const ProfileText profile =
          random_week_profile(dice_, in_file ? "" : "candidate.device.", has_meter_);
      const std::string profile_text = profile.plain_keys + profile.tables;
      if (in_file) {
        const std::string name = fmt::format("week{}.toml", ++week_files_);
        out_.files[name] = profile_text;
        text += "profile = \"" + name + "\"\n" + rests;
      } else {
        text += profile_text + rests;
      }
      most_w += count * profile.most_w;
    }
    return most_w;
  }

  int write_name_and_count(std::string& text) {
    if (dice_.chance(40)) text += "name = \"box\"\n";
    if (!dice_.chance(25)) return 1;
    const int count = dice_.between(1, 4);
    text += fmt::format("count = {}\n", count);
    return count;
  }

  std::string random_rests() {
    std::string rests;
    for (int i = dice_.chance(45) ? dice_.between(1, 2) : 0; i > 0; --i) {
      rests += "[[candidate.device.rest]]\nstate = ";
      rests += dice_.chance(50) ? "\"off\"\n" : "\"sleep\"\n";
      rests += on_lines(random_window(dice_, period_));
    }
    return rests;
  }

  // A file that another device names already, or a new one.
  double name_profile_file(std::string& text) {
    if (profile_most_w_.empty() || dice_.chance(60)) {
      const ProfileText profile = random_profile(dice_, workloads_, "", has_meter_);
      profile_most_w_.push_back(profile.most_w);
      const std::string name = dice_.chance(50) ? "name = \"Palm-size box\"\n" : "";
      out_.files[fmt::format("box{}.toml", profile_most_w_.size())] =
          name + profile.plain_keys + profile.tables;
    }
    const int number = dice_.between(1, static_cast<int>(profile_most_w_.size()));
    text += fmt::format("profile = \"box{}.toml\"\n", number);
    return profile_most_w_[static_cast<std::size_t>(number - 1)];
  }

  void write_household(std::string& text) {
    if (dice_.chance(25)) return;
    text += "[household]\n";
    int least = 0;
    int most = 900;
    if (dice_.chance(35)) {
      const int included = random_candidate();
      text += fmt::format("includes = \"c{}\"\n", included);
      least = static_cast<int>(most_w_[static_cast<std::size_t>(included)] * 0.9) + 2;
      most = 2 * least;
      if (dice_.chance(5)) least = most = 1;  // Too little: an error that both must see.
    }
    if (dice_.chance(50)) {
      std::vector<int> kwh;
      for (int m = 0; m < 12; ++m) kwh.push_back(dice_.between(least, most));
      text += fmt::format("kwh_per_month = [{}]\n", fmt::join(kwh, ", "));
    } else {
      const int a = 13 * dice_.between(least, most);
      const int b = dice_.chance(25) ? 13 * dice_.between(least, most) : a;
      const std::string range = fmt::format("[{}, {}]", std::min(a, b), std::max(a, b));
      text += "kwh_per_year = " + (a == b ? fmt::format("{}", a) : range) + "\n";
    }
  }

  int random_candidate() { return dice_.between(0, candidates_ - 1); }

  Dice dice_;
  bool whole_year_;
  std::string zone_;
  Period period_;
  std::string head_;
  StudyText out_;
  std::vector<WorkloadSketch> workloads_;
  int years_ = 0;  // 0: no horizon.
  bool has_meter_ = false;
  int candidates_ = 1;
  std::vector<double> most_w_;          // By candidate.
  std::vector<double> profile_most_w_;  // By profile file.
  int week_files_ = 0;
};

}  // namespace

std::string StudyText::all() const {
  std::string text = study;
  for (const auto& [name, content] : files) text += "--- " + name + "\n" + content;
  return text;
}

StudyText random_study(const StudyWish& wish) { return Writer(wish).write(); }

}  // namespace wattweek::oracle
