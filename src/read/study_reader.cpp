#include "study_reader.hpp"

#include <utility>

#include "candidates.hpp"
#include "coverage.hpp"
#include "numbers.hpp"
#include "small_tables.hpp"
#include "windows.hpp"
#include "workloads.hpp"

namespace wattweek::read {

namespace {

constexpr int kMostMonths = 120;
constexpr std::string_view kStartAccepted =
    "the first day of a month, without quotes, such as 2027-01-01";
constexpr std::string_view kZoneAccepted =
    "the name of a time zone in quotes, such as \"Europe/Dublin\"";
constexpr std::string_view kTariffAccepted =
    "the path of a tariff file in quotes, \"shipped:NAME\", or a table [tariff]";
constexpr std::string_view kMonthsFilterHint =
    "months is the length of the study here; as a filter it goes into a window, such as "
    "[[workload.use]]";

// To find out whether a zone exists when the study does not say from when on.
constexpr std::chrono::year_month kAnyStart = std::chrono::year(2027) / std::chrono::January;

}  // namespace

void StudyReader::read_start() {
  const auto value = root_.require("start", kStartAccepted);
  if (!value) return;
  input_.study.months_place = value->place();
  const auto date = read_date(*value, kStartAccepted);
  if (!date) return;
  if (date->day() != std::chrono::day(1)) {
    value->refuse(kStartAccepted, "write " + value->typed().substr(0, 8) + "01");
    return;
  }
  start_ = date->year() / date->month();
  input_.study.start = *start_;
}

void StudyReader::read_months() {
  const auto value = root_.find("months");
  if (!value) {
    months_ = input_.study.months;
    return;
  }
  input_.study.months_place = value->place();
  const toml::value<std::string>* text = value->node().as_string();
  if (text != nullptr && !number_advice(text->get(), Unit::none)) {
    value->refuse("a whole number from 1 to " + std::to_string(kMostMonths), kMonthsFilterHint);
    return;
  }
  months_ = read_whole(*value, {1, kMostMonths, ", the calendar months of the study"});
  input_.study.months = months_.value_or(input_.study.months);
}

void StudyReader::read_zone() {
  const auto value = root_.require("time_zone", kZoneAccepted);
  const auto name = value ? read_text(*value, kZoneAccepted) : std::nullopt;
  if (!name) return;
  input_.study.time_zone = *name;
  auto rules = surroundings_.zone(*name, start_.value_or(kAnyStart), input_.study.months);
  if (const calendar::NoZone* missing = std::get_if<calendar::NoZone>(&rules)) {
    value->complain(missing->reason);
    return;
  }
  input_.zone = std::get<calendar::ZoneRules>(std::move(rules));
  has_zone_ = true;
}

void StudyReader::read_time() {
  read_start();
  read_months();
  read_zone();
  input_.study.holidays = read_holidays(root_).holidays;
}

void StudyReader::read_tariff_of_study(Opens opens) {
  const model::Study& study = input_.study;
  const std::size_t problems_before = root_.file().problem_count();
  const auto value = root_.require("tariff", kTariffAccepted);
  if (!value) return;
  if (value->node().is_string()) {
    if (opens == Opens::yes) tariff_ = linked_.tariff(*value, study.holidays);
    if (opens == Opens::no) read_text(*value, kTariffAccepted);
  } else if (!value->node().is_table() && !value->node().is_array_of_tables()) {
    value->refuse(kTariffAccepted);
  } else if (const auto table = root_.single("tariff")) {
    tariff_ = read_tariff(*table, study.title, study.holidays);
  }
  if (root_.file().problem_count() > problems_before) tariff_.reset();
  if (tariff_) input_.study.tariff = tariff_->tariff;
}

void StudyReader::read_what_is_compared() {
  model::Study& study = input_.study;
  study.carbon_kg_per_kwh = read_carbon(root_);
  study.finance = read_finance(root_, months_);
  WorkloadList list = read_workloads(root_);
  study.away = read_away(root_, list);
  const auto years = study.finance ? study.finance->years : std::nullopt;
  CandidateList candidates = read_candidates(root_, {list, linked_, years});
  if (const auto baseline = root_.find("baseline")) {
    study.baseline = candidates.ids.find(*baseline).value_or(0);
  }
  study.household = read_household(root_, candidates.ids);
  study.meters = read_meters(root_);
  study.workloads = std::move(list.workloads);
  study.candidates = std::move(candidates.candidates);
}

// Only where all that decides is known: a gap that comes of another mistake is none.
void StudyReader::check_prices() {
  if (!tariff_ || !start_ || !months_ || !has_zone_) return;
  if (auto gap = gap_in(*tariff_, {*start_, *months_}, input_.zone)) {
    root_.file().report(std::move(gap->place), std::move(gap->message));
  }
}

void StudyReader::read_all(Opens opens) {
  model::Study& study = input_.study;
  study.title = stem(root_.file().name());
  if (const auto title = root_.find("title")) {
    study.title = read_text(*title, "the study's title in quotes").value_or(study.title);
  }
  read_time();
  read_tariff_of_study(opens);
  read_what_is_compared();
  check_prices();
}

StudyInput StudyReader::read() {
  read_all(Opens::yes);
  return std::move(input_);
}

std::vector<StudyInput> StudyReader::read_under(const std::vector<SourceText>& tariffs) {
  read_all(Opens::no);
  std::vector<StudyInput> inputs;
  for (const SourceText& source : tariffs) {
    tariff_ = linked_.tariff(source, input_.study.holidays);
    if (tariff_) input_.study.tariff = tariff_->tariff;
    check_prices();
    inputs.push_back(input_);
  }
  return inputs;
}

}  // namespace wattweek::read
