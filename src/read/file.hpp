#pragma once
// A file while it is being read: its text, the places in it, and the problems found so far.

#include <toml++/toml.h>

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "wattweek/diag/diagnostic.hpp"
#include "wattweek/read/read.hpp"

namespace wattweek::read {

class File {
 public:
  File(const SourceText& source, FileKind kind);
  File(const File&) = delete;
  File& operator=(const File&) = delete;

  FileKind kind() const { return kind_; }
  const std::string& name() const { return *name_; }
  std::string_view text() const { return text_; }

  diag::Place start() const { return {name_, 1, 1}; }
  diag::Place place(toml::source_position position) const;
  diag::Place place_of_byte(std::size_t offset) const;

  /// A line as the user typed it, without its end; empty beyond the last.
  std::string_view line(std::size_t number) const;
  /// What stands in a region, as the user typed it; cut where it is long or the line ends.
  std::string typed(const toml::source_region& region) const;

  void report(diag::Place place, std::string message);
  const std::vector<diag::Diagnostic>& problems() const { return problems_; }
  std::size_t problem_count() const { return problems_.size(); }

 private:
  std::shared_ptr<const std::string> name_;
  FileKind kind_;
  std::string_view text_;  // without the byte order mark; the source outlives the reading
  bool is_ascii_ = false;  // then columns are bytes, and long lines cost nothing
  std::vector<std::size_t> line_starts_;
  std::vector<diag::Diagnostic> problems_;
};

/// The file's name without folder and extension.
std::string stem(std::string_view path);

/// The part of a UTF-8 text from the code point `first` on, at most `count` code points.
std::string_view code_points(std::string_view text, std::size_t first, std::size_t count);

}  // namespace wattweek::read
