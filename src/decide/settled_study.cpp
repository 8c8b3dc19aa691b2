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
    for (std::size_t c = 0; c < study_.candidates.size(); ++c) find_candidate(file, c);
    for (std::size_t m = 0; m < study_.meters.size(); ++m) {
      model::Meter& meter = study_.meters[m];
      note(file + "meter." + meter.id + ".scale", {RangeKind::meter_scale, m}, meter.scale);
    }
  }

  const std::vector<std::string>& keys() const { return keys_; }
  const std::vector<RangePlace>& places() const { return places_; }
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
  void note(const std::string& key, const RangePlace& place, Range<T>& range) {
    if (range.is_exact()) return;
    const auto [known, is_new] = known_.try_emplace(key, keys_.size());
    if (is_new) {
      keys_.push_back(key);
      places_.push_back(place);
      targets_.emplace_back();
    }
    targets_[known->second].push_back(Target<T>{&range, range});
    range = range.central();
  }

  template <class T>
  void note(const std::string& key, const RangePlace& place, std::optional<Range<T>>& range) {
    if (range) note(key, place, *range);
  }

  void find_household_and_finance(const std::string& file) {
    if (auto* of_year = std::get_if<Range<units::Energy>>(&study_.household.use)) {
      note(file + "household.kwh_per_year", {RangeKind::household}, *of_year);
    }
    if (!study_.finance) return;
    note(file + "finance.discount_rate", {RangeKind::discount_rate}, study_.finance->discount_rate);
    note(file + "finance.price_rise", {RangeKind::price_rise}, study_.finance->price_rise);
  }

  void find_tariff(const std::string& study_file) {
    model::Tariff& tariff = study_.tariff;
    const bool is_inline = files_(tariff.place) == study_file;
    const std::string at = files_(tariff.place) + (is_inline ? "tariff." : "");
    note(at + "tax", {RangeKind::tax}, tariff.tax);
    note(at + "standing_per_day", {RangeKind::standing_per_day}, tariff.standing_per_day);
    note(at + "standing_per_month", {RangeKind::standing_per_month}, tariff.standing_per_month);
    note(at + "minimum_per_month", {RangeKind::minimum_bill}, tariff.minimum_per_month);
    for (std::size_t b = 0; b < tariff.bands.size(); ++b) {
      model::Band& band = tariff.bands[b];
      note(at + "band." + band.name + ".price", {RangeKind::band_price, b}, band.price);
    }
    for (std::size_t b = 0; b < tariff.blocks.size(); ++b) {
      note(numbered(at + "block", b) + ".price", {RangeKind::block_price, b},
           tariff.blocks[b].price);
    }
  }

  void find_workloads(const std::string& file) {
    for (std::size_t w = 0; w < study_.workloads.size(); ++w) {
      model::Workload& workload = study_.workloads[w];
      const std::string at = file + "workload." + workload.id;
      note(at + ".compute", {RangeKind::compute, w}, workload.compute);
      for (std::size_t u = 0; u < workload.uses.size(); ++u) {
        model::Use& use = workload.uses[u];
        note(numbered(at + ".use", u) + (use.is_in_minutes ? ".minutes" : ".share"),
             {RangeKind::share, w, u}, use.share);
      }
    }
  }

  void find_candidate(const std::string& file, std::size_t c) {
    model::Candidate& candidate = study_.candidates[c];
    const std::string at = file + "candidate." + candidate.id;
    note(at + ".purchase", {RangeKind::purchase, c}, candidate.purchase);
    note(at + ".resale", {RangeKind::resale, c}, candidate.resale);
    for (std::size_t l = 0; l < candidate.later.size(); ++l) {
      note(numbered(at + ".later", l) + ".cost", {RangeKind::later_cost, c, l},
           candidate.later[l].cost);
    }
    for (std::size_t d = 0; d < candidate.devices.size(); ++d) {
      const std::string of_profile = files_(profiles_[&candidate.devices[d]]->place);
      const bool is_inline = of_profile == file;
      find_device(is_inline ? numbered(at + ".device", d) + "." : of_profile, c, d);
    }
  }

  void find_device(const std::string& at, std::size_t c, std::size_t d) {
    model::Device& device = study_.candidates[c].devices[d];
    model::Profile& profile = *profiles_[&device];
    const auto of = [c, d](RangeKind kind, std::size_t index = 0) {
      return RangePlace{kind, c, index, d};
    };
    note(at + "watts.off", of(RangeKind::off_w), profile.off);
    note(at + "watts.sleep", of(RangeKind::sleep_w), profile.sleep);
    note(at + "watts.idle", of(RangeKind::idle_w), profile.idle);
    note(at + "watts.busy", of(RangeKind::busy_w), profile.busy);
    note(at + "watts.max", of(RangeKind::max_w), profile.max);
    note(at + "capacity", of(RangeKind::capacity), profile.capacity);
    for (std::size_t g = 0; g < profile.groups.size(); ++g) {
      model::Group& group = profile.groups[g];
      note(at + "groups." + group.name, of(RangeKind::group_w, g), group.watts);
    }
    for (auto* tasks : {&device.runs, &device.assists}) {
      for (model::Task& task : *tasks) {
        find_increment(at + "increments." + study_.workloads[task.workload].id,
                       of(RangeKind::increment, task.workload), task.increment.form);
      }
    }
  }

  void find_increment(const std::string& at, RangePlace place, model::IncrementForm& form) {
    if (auto* watts = std::get_if<model::PerUnit>(&form)) {
      place.kind = RangeKind::increment_first;
      note(at + ".first", place, watts->first);
      place.kind = watts->first ? RangeKind::increment_further : RangeKind::increment;
      note(at + (watts->is_table ? ".each" : ""), place, watts->each);
    } else if (auto* load = std::get_if<model::LoadPerUnit>(&form)) {
      place.kind = RangeKind::increment_load;
      note(at + ".load", place, load->fraction);
    }
  }

  model::Study study_;
  std::map<const model::Device*, model::Profile*> profiles_;
  FileNames files_;
  std::vector<std::string> keys_;
  std::vector<RangePlace> places_;
  std::vector<std::vector<AnyTarget>> targets_;
  std::map<std::string, std::size_t> known_;
};

SettledStudy::SettledStudy(const model::Study& study) : inside_(std::make_unique<Inside>(study)) {}
SettledStudy::~SettledStudy() = default;

const std::vector<std::string>& SettledStudy::keys() const { return inside_->keys(); }
void SettledStudy::settle(std::size_t range, double fraction) { inside_->settle(range, fraction); }
const std::vector<RangePlace>& SettledStudy::places() const { return inside_->places(); }
const model::Study& SettledStudy::study() const { return inside_->study(); }

}  // namespace wattweek::decide
