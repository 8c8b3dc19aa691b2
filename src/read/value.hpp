#pragma once
// One value of a file, what to call it in a message, and the readers of plain values.
//
// A reader returns nothing where the value is not what it should be, and has then reported it.

#include <chrono>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "file.hpp"
#include "wattweek/model/window.hpp"

namespace wattweek::read {

class Value {
 public:
  Value(File& file, const toml::node& node, std::string name)
      : file_(&file), node_(&node), name_(std::move(name)) {}

  File& file() const { return *file_; }
  const toml::node& node() const { return *node_; }
  /// The whole name of its key: `candidate.device.watts.busy`.
  const std::string& name() const { return name_; }
  diag::Place place() const { return file_->place(node_->source().begin); }
  std::string typed() const { return file_->typed(node_->source()); }

  /// Reports `NAME = TYPED: expected ACCEPTED`, with `; HINT` where there is one.
  void refuse(std::string_view accepted, std::string_view hint = {}) const;
  /// Reports `NAME = TYPED: PROBLEM`.
  void complain(std::string_view problem) const;

  /// The entries of an array, named like the array.
  std::vector<Value> elements() const;

 private:
  File* file_;
  const toml::node* node_;
  std::string name_;
};

/// Text for people: not empty, no control characters.
std::optional<std::string> read_text(const Value& value, std::string_view accepted);

/// An id: lower-case letters, digits, `-` and `_`.
std::optional<std::string> read_id(const Value& value);
bool is_id(std::string_view text);
inline constexpr std::string_view kIdAccepted =
    "an id in quotes: lower-case letters, digits, - and _";

/// One of a few words; gives its index in `words`.
std::optional<std::size_t> read_word(const Value& value,
                                     const std::vector<std::string_view>& words);

/// A TOML date.
std::optional<std::chrono::year_month_day> read_date(const Value& value, std::string_view accepted);

/// The nearest of the known words, `, did you mean "a"?`, or all: `; expected "a" or "b"`.
std::string meant_or_known(std::string_view word, const std::vector<std::string_view>& known);

/// `"a"`, `"a" or "b"`, `"a", "b" or "c"`: a list in words, of the first where there are
/// very many.
std::string listed(const std::vector<std::string_view>& words, bool quoted);

/// The text, cut where it is long; and the same in quotes.
std::string shortened(std::string_view text);
std::string in_quotes(std::string_view text);

}  // namespace wattweek::read
