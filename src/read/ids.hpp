#pragma once
// Names that must be unique, and ids that others refer to.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "table.hpp"

namespace wattweek::read {

/// Names of one sort, each used once.
class Names {
 public:
  /// `what` they name and what they are, in messages: "band", "name".
  Names(std::string what, std::string sort) : what_(std::move(what)), sort_(std::move(sort)) {}

  /// Reports a name that is there already, with the place of the first.
  void add(const Value& value, const std::string& name);

 private:
  std::string what_;
  std::string sort_;
  std::map<std::string, diag::Place> places_;
};

/// The ids of a list of things, in the order of the list.
class Ids {
 public:
  explicit Ids(std::string what) : what_(what), names_(std::move(what), "id") {}

  /// Reads the id of the next thing and reports one that is missing, malformed or a second
  /// use. Gives the id, empty where there is none.
  std::string add(const Table& table);

  /// The position of the thing that a text names; reports one that is not there.
  std::optional<std::size_t> find(const Value& value) const;

 private:
  std::string what_;
  Names names_;
  std::vector<std::string> ids_;
};

/// A reference in a list of ids.
struct Reference {
  std::size_t index = 0;
  Value value;
};

/// An array of ids.
struct ReferenceList {
  bool is_given = false;
  bool is_sound = true;  ///< Nothing in it was reported.
  std::vector<Reference> references;
};
ReferenceList read_references(const Table& table, std::string_view key, const Ids& ids);

}  // namespace wattweek::read
