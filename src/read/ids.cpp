#include "ids.hpp"

#include <algorithm>

namespace wattweek::read {

namespace {

// A hostile file of thousands of ids and mistakes should not take minutes.
constexpr std::size_t kMostNamed = 200;

}  // namespace

void Names::add(const Value& value, const std::string& name) {
  const auto [first, is_new] = places_.try_emplace(name, value.place());
  if (is_new) return;
  value.complain("the " + what_ + " at " + diag::to_text(first->second) + " has that " + sort_ +
                 "; expected one of its own");
}

std::string Ids::add(const Table& table) {
  std::string id;
  if (const auto value = table.require("id", kIdAccepted)) {
    id = value->node().value_exact<std::string>().value_or("");
    if (read_id(*value)) names_.add(*value, id);
  }
  ids_.push_back(id);
  return id;
}

std::optional<std::size_t> Ids::find(const Value& value) const {
  const auto text = value.node().value_exact<std::string>();
  if (!text) {
    value.refuse("the id of a " + what_ + " in quotes");
    return std::nullopt;
  }
  const auto found = std::find(ids_.begin(), ids_.end(), *text);
  if (found != ids_.end() && !text->empty()) return static_cast<std::size_t>(found - ids_.begin());
  std::vector<std::string_view> known;
  for (const std::string& id : ids_) {
    if (!id.empty() && known.size() < kMostNamed) known.push_back(id);
  }
  const std::string advice =
      known.empty() ? "; the study has no " + what_ : meant_or_known(*text, known);
  value.complain("no " + what_ + " has this id" + advice);
  return std::nullopt;
}

ReferenceList read_references(const Table& table, std::string_view key, const Ids& ids) {
  ReferenceList list;
  const auto value = table.find(key);
  if (!value) return list;
  list.is_given = true;
  const std::size_t problems_before = table.file().problem_count();
  if (!value->node().is_array()) {
    value->refuse("an array of ids, such as [\"film\"]",
                  value->node().is_string() ? "write [" + value->typed() + "]" : "");
  }
  std::vector<std::size_t> seen;
  for (const Value& element : value->elements()) {
    const auto index = ids.find(element);
    if (!index) continue;
    if (std::find(seen.begin(), seen.end(), *index) != seen.end()) {
      element.complain("this id is in the list already; expected each once");
    }
    seen.push_back(*index);
    list.references.push_back({*index, element});
  }
  list.is_sound = table.file().problem_count() == problems_before;
  return list;
}

}  // namespace wattweek::read
