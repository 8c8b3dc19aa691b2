#include "wattweek/decide/settled_study.hpp"

#include <map>
#include <set>
#include <utility>
#include <variant>

namespace wattweek::decide {

namespace {

using units::Range;

/// One place in the settled study that a range stands at, and what the range was.
template <class T>
struct Target {
  Range<T>* at;
  Range<T> from;
};

using AnyTarget = std::variant<Target<double>, Target<units::Power>, Target<units::Energy>,
                               Target<units::Money>, Target<units::UnitPrice>>;

void settle_target(const AnyTarget& any, double fraction) {
  std::visit(
      [fraction](const auto& target) {
        *target.at = target.from.low + (target.from.high - target.from.low) * fraction;
      },
      any);
}

std::string base_name(const std::string& path) {
  const std::size_t slash = path.find_last_of("/\\");
  return slash == std::string::npos ? path : path.substr(slash + 1);
}

/// What a file is called in keys.
class FileNames {
 public:
  void add(const diag::Place& place) {
    if (place.file && paths_.insert(*place.file).second) ++count_[base_name(*place.file)];
  }
  std::string operator()(const diag::Place& place) const {
    if (!place.file) return "";
    const std::string name = base_name(*place.file);
    return (count_.at(name) == 1 ? name : *place.file) + ":";
  }

 private:
  std::set<std::string> paths_;
  std::map<std::string, int> count_;
};

std::string numbered(const std::string& prefix, std::size_t index) {
  return prefix + "." + std::to_string(index + 1);
}

}  // namespace

// Finds the ranges, in the order of the contract's tables.
class SettledStudy::Inside {
 public:
  explicit Inside(const model::Study& study) : study_(study) {
    own_profiles();
    name_files();
    const std::string file = files_(study_.candidates.front().place);
    find_household_and_finance(file);
    find_tariff(file);
    find_workloads(file);
    for (model::Candidate& candidate : study_.candidates) find_candidate(file, candidate);
    for (model::Meter& meter : study_.meters) {
      note(file + "meter." + meter.id + ".scale", meter.scale);
    }
  }

  const std::vector<std::string>& keys() const { return keys_; }
  const model::Study& study() const { return study_; }

  void settle(std::size_t range, double fraction) {
    for (const AnyTarget& target : targets_[range]) settle_target(target, fraction);
  }

 private:
  // Devices that share a profile go on sharing it.
  void own_profiles() {
    std::map<const model::Profile*, std::shared_ptr<model::Profile>> copies;
    for (model::Candidate& candidate : study_.candidates) {
      for (model::Device& device : candidate.devices) {
        auto& copy = copies[device.profile.get()];
        if (!copy) copy = std::make_shared<model::Profile>(*device.profile);
        device.profile = copy;
        profiles_[&device] = copy.get();
      }
    }
  }

  void name_files() {
    files_.add(study_.candidates.front().place);
    files_.add(study_.tariff.place);
    for (const auto& [device, profile] : profiles_) files_.add(profile->place);
  }

  template <class T>
  void note(const std::string& key, Range<T>& range) {
    if (range.is_exact()) return;
    const auto [known, is_new] = known_.try_emplace(key, keys_.size());
    if (is_new) {
      keys_.push_back(key);
      targets_.emplace_back();
    }
    targets_[known->second].push_back(Target<T>{&range, range});
    range = range.central();
  }

  template <class T>
  void note(const std::string& key, std::optional<Range<T>>& range) {
    if (range) note(key, *range);
  }

  void find_household_and_finance(const std::string& file) {
    if (auto* of_year = std::get_if<Range<units::Energy>>(&study_.household.use)) {
      note(file + "household.kwh_per_year", *of_year);
    }
    if (!study_.finance) return;
    note(file + "finance.discount_rate", study_.finance->discount_rate);
    note(file + "finance.price_rise", study_.finance->price_rise);
  }

  void find_tariff(const std::string& study_file) {
    model::Tariff& tariff = study_.tariff;
    const bool is_inline = files_(tariff.place) == study_file;
    const std::string at = files_(tariff.place) + (is_inline ? "tariff." : "");
    note(at + "tax", tariff.tax);
    note(at + "standing_per_day", tariff.standing_per_day);
    note(at + "standing_per_month", tariff.standing_per_month);
    note(at + "minimum_per_month", tariff.minimum_per_month);
    for (model::Band& band : tariff.bands) note(at + "band." + band.name + ".price", band.price);
    for (std::size_t b = 0; b < tariff.blocks.size(); ++b) {
      note(numbered(at + "block", b) + ".price", tariff.blocks[b].price);
    }
  }

  void find_workloads(const std::string& file) {
    for (model::Workload& workload : study_.workloads) {
      const std::string at = file + "workload." + workload.id;
      note(at + ".compute", workload.compute);
      for (std::size_t u = 0; u < workload.uses.size(); ++u) {
        model::Use& use = workload.uses[u];
        note(numbered(at + ".use", u) + (use.is_in_minutes ? ".minutes" : ".share"), use.share);
      }
    }
  }

  void find_candidate(const std::string& file, model::Candidate& candidate) {
    const std::string at = file + "candidate." + candidate.id;
    note(at + ".purchase", candidate.purchase);
    note(at + ".resale", candidate.resale);
    for (std::size_t l = 0; l < candidate.later.size(); ++l) {
      note(numbered(at + ".later", l) + ".cost", candidate.later[l].cost);
    }
    for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
      model::Device& device = candidate.devices[d];
      const std::string of_profile = files_(profiles_[&device]->place);
      const bool is_inline = of_profile == file;
      find_device(is_inline ? numbered(at + ".device", d) + "." : of_profile, device);
    }
  }

  void find_device(const std::string& at, model::Device& device) {
    model::Profile& profile = *profiles_[&device];
    note(at + "watts.off", profile.off);
    note(at + "watts.sleep", profile.sleep);
    note(at + "watts.idle", profile.idle);
    note(at + "watts.busy", profile.busy);
    note(at + "watts.max", profile.max);
    note(at + "capacity", profile.capacity);
    for (model::Group& group : profile.groups) note(at + "groups." + group.name, group.watts);
    for (auto* tasks : {&device.runs, &device.assists}) {
      for (model::Task& task : *tasks) {
        find_increment(at + "increments." + study_.workloads[task.workload].id,
                       task.increment.form);
      }
    }
  }

  void find_increment(const std::string& at, model::IncrementForm& form) {
    if (auto* watts = std::get_if<model::PerUnit>(&form)) {
      note(at + ".first", watts->first);
      note(at + (watts->is_table ? ".each" : ""), watts->each);
    } else if (auto* load = std::get_if<model::LoadPerUnit>(&form)) {
      note(at + ".load", load->fraction);
    }
  }

  model::Study study_;
  std::map<const model::Device*, model::Profile*> profiles_;
  FileNames files_;
  std::vector<std::string> keys_;
  std::vector<std::vector<AnyTarget>> targets_;
  std::map<std::string, std::size_t> known_;
};

SettledStudy::SettledStudy(const model::Study& study) : inside_(std::make_unique<Inside>(study)) {}
SettledStudy::~SettledStudy() = default;

const std::vector<std::string>& SettledStudy::keys() const { return inside_->keys(); }
void SettledStudy::settle(std::size_t range, double fraction) { inside_->settle(range, fraction); }
const model::Study& SettledStudy::study() const { return inside_->study(); }

}  // namespace wattweek::decide
