#include "tasks.hpp"

#include <algorithm>
#include <optional>

#include "task_increments.hpp"

namespace wattweek::read {

namespace {

std::string device_at(const DeviceDraft& draft) {
  return "device " + in_quotes(draft.device.name) + " at " + diag::to_text(draft.device.place);
}

class Assignment {
 public:
  Assignment(CandidateDraft& draft, const WorkloadList& list)
      : draft_(draft), list_(list), skipped_(list.workloads.size()), runner_(skipped_.size()) {}

  void settle() {
    note_skips();
    refuse_tasks_of_weeks();
    note_named_runs();
    give_the_rest();
    check_assists();
    fill_tasks();
  }

 private:
  void note_skips() {
    is_sound_ = draft_.skips.is_sound;
    for (const Reference& skip : draft_.skips.references) {
      skipped_[skip.index] = true;
      draft_.candidate.skips.push_back(skip.index);
    }
  }

  static bool has_week(const DeviceDraft& draft) {
    return draft.device.profile != nullptr && draft.device.profile->week.has_value();
  }

  // A week was measured whole: what it holds of any workload is in it already.
  void refuse_tasks_of_weeks() const {
    for (const DeviceDraft& draft : draft_.devices) {
      if (!has_week(draft)) continue;
      for (const ReferenceList* list : {&draft.runs, &draft.assists}) {
        for (const Reference& named : list->references) {
          named.value.complain(
              "the device's profile has a week, so it runs and assists nothing; expected another "
              "device, or a profile with idle and increments");
        }
      }
    }
  }

  void note_named_runs() {
    for (std::size_t d = 0; d < draft_.devices.size(); ++d) {
      is_sound_ = is_sound_ && draft_.devices[d].runs.is_sound;
      for (const Reference& run : draft_.devices[d].runs.references) note_run(d, run);
    }
  }

  void note_run(std::size_t device, const Reference& run) {
    auto& runner = runner_[run.index];
    if (skipped_[run.index]) {
      run.value.complain("the candidate skips this workload; expected it run or skipped, not both");
    }
    if (runner && *runner != device) {
      run.value.complain(device_at(draft_.devices[*runner]) +
                         " runs this workload; expected one device to run it, others may assist");
    }
    if (!runner) runner = device;
  }

  // The first device without `runs` runs what nobody else does; one with a week runs nothing.
  void give_the_rest() {
    const auto can_take = [](const DeviceDraft& draft) {
      return !draft.runs.is_given && !has_week(draft);
    };
    const auto taker = std::find_if(draft_.devices.begin(), draft_.devices.end(), can_take);
    for (std::size_t w = 0; w < runner_.size(); ++w) {
      if (runner_[w] || skipped_[w]) continue;
      if (taker != draft_.devices.end()) {
        runner_[w] = static_cast<std::size_t>(taker - draft_.devices.begin());
      } else {
        report_left_over(w);
      }
    }
  }

  // What a misspelt id left over has been said already.
  void report_left_over(std::size_t w) {
    const std::string& id = list_.workloads[w].id;
    if (!is_sound_ || id.empty() || draft_.devices.empty()) return;
    draft_.table.file().report(
        draft_.candidate.place,
        "candidate " + in_quotes(draft_.candidate.id) + ": no device runs workload " +
            in_quotes(id) + "; expected it in the runs of a device or in the candidate's skips");
  }

  void check_assists() {
    for (std::size_t d = 0; d < draft_.devices.size(); ++d) {
      if (has_week(draft_.devices[d])) continue;
      for (const Reference& assist : draft_.devices[d].assists.references) check_assist(d, assist);
    }
  }

  void check_assist(std::size_t device, const Reference& assist) const {
    const auto& runner = runner_[assist.index];
    if (runner == device) {
      assist.value.complain("this device runs the workload itself; expected another device to");
    } else if (skipped_[assist.index]) {
      assist.value.complain("the candidate skips this workload; expected another device to run it");
    } else if (!runner && is_sound_) {
      assist.value.complain("no other device of the candidate runs this workload");
    }
  }

  static std::optional<Value> named(const ReferenceList& list, std::size_t workload) {
    for (const Reference& reference : list.references) {
      if (reference.index == workload) return reference.value;
    }
    return std::nullopt;
  }

  // In the study's order of workloads.
  void fill_tasks() {
    for (std::size_t d = 0; d < draft_.devices.size(); ++d) {
      DeviceDraft& draft = draft_.devices[d];
      for (std::size_t w = 0; w < runner_.size(); ++w) {
        if (runner_[w] == d) draft.device.runs.push_back(task(draft, w, draft.runs));
        const bool assists = named(draft.assists, w).has_value();
        if (assists) draft.device.assists.push_back(task(draft, w, draft.assists));
      }
    }
  }

  model::Task task(const DeviceDraft& draft, std::size_t w, const ReferenceList& naming) const {
    const auto value = named(naming, w);
    const diag::Place place = value ? value->place() : draft.device.place;
    const TaskQuestion question{draft.device, draft_.candidate.id, list_.workloads[w]};
    Answer answer = increment_of(question);
    const bool is_due = list_.is_sound[w] && draft.device.profile != nullptr && !has_week(draft);
    if (!answer.problem.empty() && is_due) draft_.table.file().report(place, answer.problem);
    return {w, answer.increment};
  }

  CandidateDraft& draft_;
  const WorkloadList& list_;
  std::vector<bool> skipped_;                       // by workload
  std::vector<std::optional<std::size_t>> runner_;  // by workload: index of a device
  bool is_sound_ = true;                            // the lists of ids are as the user meant them
};

}  // namespace

void assign_tasks(CandidateDraft& draft, const WorkloadList& list) {
  Assignment(draft, list).settle();
}

}  // namespace wattweek::read
