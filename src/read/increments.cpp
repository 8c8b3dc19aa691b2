#include "increments.hpp"

#include <algorithm>
#include <utility>

#include "numbers.hpp"

namespace wattweek::read {

namespace {

constexpr NumberRule kLoad{Bounds::not_negative, Unit::none};

constexpr std::string_view kFormsAccepted =
    "one of 3.1, { first = 6.0, each = 2.4 }, { table = [6.0, 8.4] }, { load = 0.06 } and "
    "{ group = \"disks\" }";

std::optional<std::size_t> read_group_name(const Table& form,
                                           const std::vector<model::Group>& groups) {
  const auto value = form.find("group");
  if (!value) return std::nullopt;
  std::vector<std::string_view> names;
  for (const model::Group& group : groups) names.push_back(group.name);
  if (names.empty()) {
    value->refuse("the name of a group", "there are none under [groups]");
    return std::nullopt;
  }
  const auto name = value->node().value_exact<std::string>();
  const auto found = std::find(names.begin(), names.end(), name.value_or(""));
  if (name && found != names.end()) return static_cast<std::size_t>(found - names.begin());
  value->complain("no group has this name" + meant_or_known(name.value_or(""), names));
  return std::nullopt;
}

model::PerUnit read_per_unit(const Table& form) {
  model::PerUnit per_unit;
  per_unit.is_table = true;
  if (const auto first = form.find("first")) {
    if (const auto watts = read_range(*first, kWatts)) per_unit.first = as<units::Power>(*watts);
  }
  if (const auto each = form.find("each")) {
    if (const auto watts = read_range(*each, kWatts)) per_unit.each = as<units::Power>(*watts);
  }
  return per_unit;
}

model::UnitTable read_unit_table(const Value& value) {
  model::UnitTable table;
  if (const auto watts = read_rising(value, 1, kWatts)) {
    for (const double w : *watts) table.watts_at.push_back(units::watts(w));
  }
  return table;
}

// A load acts on the way from idle to full load, so that way must be known.
model::LoadPerUnit read_load(const Value& value, const IncrementContext& context) {
  if (!context.has_full_load) {
    value.complain("a load needs busy or at_load under [watts]; without them write the watts");
  }
  return {read_range(value, kLoad).value_or(units::Range<double>())};
}

// What is wrong with the choice of keys; nothing where they make one form.
std::optional<std::string> form_problem(const Table& form) {
  const bool per_unit = form.has("first") || form.has("each");
  const int forms = (per_unit ? 1 : 0) + (form.has("table") ? 1 : 0) + (form.has("load") ? 1 : 0);
  if (forms > 1) return "only one of first with each, table and load";
  if (form.has("load") && form.has("group")) return "a load has no group";
  if (forms == 0 && !form.has("group")) return "";
  return std::nullopt;
}

model::Increment read_table_form(const Table& form, const Value& value,
                                 const IncrementContext& context) {
  if (const auto problem = form_problem(form)) {
    value.refuse(kFormsAccepted, *problem);
    return {model::GroupOnly{}, std::nullopt};
  }
  const auto group = read_group_name(form, context.groups);
  if (const auto table = form.find("table")) return {read_unit_table(*table), group};
  if (const auto load = form.find("load")) return {read_load(*load, context), group};
  if (form.has("first") || form.has("each")) return {read_per_unit(form), group};
  return {model::GroupOnly{}, group};
}

// film = 3.1, film = [3.0, 3.2]
model::Increment read_number_form(const Value& value) {
  const toml::array* array = value.node().as_array();
  if (array != nullptr && array->size() != 2) {
    value.refuse(accepted_range(kWatts),
                 "for watts at 1, 2, 3 ... units write { table = " + value.typed() + " }");
    return {model::GroupOnly{}, std::nullopt};
  }
  const auto watts = read_range(value, kWatts).value_or(units::Range<double>());
  return {model::PerUnit{std::nullopt, as<units::Power>(watts)}, std::nullopt};
}

// A group may have any name that can be shown on one line.
void check_group_name(const Table& groups, const Entry& entry) {
  if (entry.key.find_first_not_of(" \t") == std::string::npos) {
    groups.file().report(entry.key_place, groups.name_of("\"\"") + ": a group needs a name");
  }
}

void check_workload_id(const Entry& entry) {
  if (is_id(entry.key)) return;
  entry.value.file().report(entry.key_place, entry.value.name() + ": " + in_quotes(entry.key) +
                                                 " is no workload id; expected " +
                                                 std::string(kIdAccepted));
}

}  // namespace

std::vector<model::Group> read_groups(const Table& profile) {
  std::vector<model::Group> groups;
  const auto table = profile.single("groups");
  if (!table) return groups;
  for (const Entry& entry : table->entries()) {
    check_group_name(*table, entry);
    const auto watts = read_range(entry.value, kWatts).value_or(units::Range<double>());
    groups.push_back({entry.key, as<units::Power>(watts)});
  }
  return groups;
}

std::vector<model::NamedIncrement> read_increments(const Table& profile,
                                                   const IncrementContext& context) {
  std::vector<model::NamedIncrement> increments;
  const auto table = profile.single("increments");
  if (!table) return increments;
  for (const Entry& entry : table->entries()) {
    check_workload_id(entry);
    const auto form = table->entry_table(entry);
    increments.push_back({entry.key, form ? read_table_form(*form, entry.value, context)
                                          : read_number_form(entry.value)});
  }
  return increments;
}

}  // namespace wattweek::read
