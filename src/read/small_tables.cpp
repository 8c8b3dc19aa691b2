#include "small_tables.hpp"

#include <algorithm>

#include "numbers.hpp"

namespace wattweek::read {

namespace {

constexpr NumberRule kEnergy{Bounds::not_negative, Unit::kwh};
constexpr NumberRule kCarbon{Bounds::any, Unit::kg_per_kwh};
constexpr NumberRule kScale{Bounds::positive, Unit::none};
constexpr int kMostYears = 30;
constexpr std::size_t kMonthsOfYear = 12;

std::optional<std::array<units::Energy, kMonthsOfYear>> read_twelve(const Value& value) {
  const auto numbers = read_series(value, {kMonthsOfYear, "January to December"}, kEnergy);
  if (!numbers) return std::nullopt;
  std::array<units::Energy, kMonthsOfYear> months;
  std::transform(numbers->begin(), numbers->end(), months.begin(), units::kilowatt_hours);
  return months;
}

model::HouseholdUse read_use(const Table& table) {
  const auto year = table.find("kwh_per_year");
  const auto months = table.find("kwh_per_month");
  if (year && months) {
    table.file().report(
        table.key_place("kwh_per_month"),
        months->name() + ": there is kwh_per_year as well; expected one of the two");
  }
  if (months) {
    if (const auto twelve = read_twelve(*months)) return *twelve;
  }
  const auto kwh = year ? read_range(*year, kEnergy) : std::nullopt;
  return as<units::Energy>(kwh.value_or(units::Range<double>()));
}

units::Range<double> read_rate(const Table& table, std::string_view key) {
  const auto value = table.find(key);
  if (!value) return {};
  return read_range(*value, kRate).value_or(units::Range<double>());
}

// Costs a year are known only for whole years.
void check_whole_year(const Value& years, std::optional<int> months) {
  if (!months || *months == 12) return;
  years.complain("lifetime figures need months = 12, and the study has months = " +
                 std::to_string(*months) + "; expected months = 12, or no years");
}

}  // namespace

model::Household read_household(const Table& study, const Ids& candidates) {
  model::Household household;
  const auto table = study.single("household");
  if (!table) return household;
  household.use = read_use(*table);
  if (const auto includes = table->find("includes")) {
    household.includes = candidates.find(*includes);
    household.includes_place = includes->place();
  }
  return household;
}

std::optional<units::Range<double>> read_carbon(const Table& study) {
  const auto table = study.single("carbon");
  const auto value = table ? table->require("kg_per_kwh", accepted_range(kCarbon)) : std::nullopt;
  return value ? read_range(*value, kCarbon) : std::nullopt;
}

std::optional<model::Finance> read_finance(const Table& study, std::optional<int> months) {
  const auto table = study.single("finance");
  if (!table) return std::nullopt;
  model::Finance finance;
  if (const auto years = table->find("years")) {
    finance.years = read_whole(*years, {1, kMostYears, ""});
    check_whole_year(*years, months);
  }
  finance.discount_rate = read_rate(*table, "discount_rate");
  finance.price_rise = read_rate(*table, "price_rise");
  return finance;
}

std::vector<model::Meter> read_meters(const Table& study) {
  std::vector<model::Meter> meters;
  Ids ids("meter");
  for (const Table& table : study.repeated("meter")) {
    model::Meter meter;
    meter.id = ids.add(table);
    if (const auto scale = table.require("scale", accepted_range(kScale))) {
      meter.scale = read_range(*scale, kScale).value_or(meter.scale);
    }
    meters.push_back(std::move(meter));
  }
  return meters;
}

}  // namespace wattweek::read
