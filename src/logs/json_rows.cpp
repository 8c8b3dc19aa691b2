#include "json_rows.hpp"

#include <simdjson.h>

#include <algorithm>
#include <map>

namespace wattweek::logs {
namespace {

namespace json = simdjson::ondemand;

// What the fields point to.
struct Holder {
  explicit Holder(const std::string& from) : text(from) {}

  simdjson::padded_string text;
  json::parser parser;
};

// The number, word or string that a value is; empty for null and for what is no single value.
std::string_view field_of(json::value value) {
  switch (value.type()) {
    case json::json_type::string:
      return value.get_string();
    case json::json_type::number:
    case json::json_type::boolean:
      return trimmed(value.raw_json_token());
    default:
      return {};
  }
}

// Line ends behind the last token belong to no token.
std::string_view without_line_ends(std::string_view token) {
  while (!token.empty() && (token.back() == '\n' || token.back() == '\r')) token.remove_suffix(1);
  return trimmed(token);
}

class Reader {
 public:
  explicit Reader(const Holder& holder) : counted_(holder.text.data()) {}

  void read(json::document& document) {
    if (document.type() == json::json_type::array) {
      read_rows(document.get_array());
    } else {
      read_object(document.get_object());
    }
  }

  JsonRows take() { return std::move(rows_); }
  std::uint64_t line() const { return line_; }

 private:
  // An array of objects: each is a row.
  void read_rows(json::array array) {
    for (json::value element : array) {
      if (element.type() != json::json_type::object) {
        throw std::string(
            "expected rows that are objects, such as {\"time\": ..., \"power\": ...}");
      }
      rows_.lines.push_back(0);
      rows_.fields.resize(rows_.fields.size() + rows_.names.size());
      read_row(element.get_object(), "");
      rows_.lines.back() = line_;
    }
  }

  void read_row(json::object object, const std::string& outer) {
    for (json::field field : object) {
      count_lines(field.key().raw());
      const std::string name = outer + std::string(std::string_view(field.unescaped_key()));
      json::value value = field.value();
      if (value.type() == json::json_type::object) {
        read_row(value.get_object(), name + ".");
      } else {
        const std::size_t column = column_of(name);
        rows_.fields[rows_.fields.size() - rows_.names.size() + column] =
            without_line_ends(field_of(value));
      }
    }
  }

  // Members come in the same order in nearly all rows, so that the next is looked at first.
  std::size_t column_of(const std::string& name) {
    for (std::size_t tried = 0; tried < rows_.names.size(); ++tried) {
      if (next_column_ >= rows_.names.size()) next_column_ = 0;
      if (rows_.names[next_column_] == name) return next_column_++;
      ++next_column_;
    }
    add_column(name);
    return rows_.names.size() - 1;
  }

  void add_column(const std::string& name) {
    const std::size_t width = rows_.names.size();
    std::vector<std::string_view> wider((width + 1) * rows_.rows());
    for (std::size_t row = 0; row < rows_.rows(); ++row) {
      std::copy_n(rows_.fields.begin() + static_cast<std::ptrdiff_t>(row * width), width,
                  wider.begin() + static_cast<std::ptrdiff_t>(row * (width + 1)));
    }
    rows_.fields = std::move(wider);
    rows_.names.push_back(name);
  }

  // An object: of parallel arrays, or with an array of rows in it.
  void read_object(json::object object) {
    std::vector<std::vector<std::string_view>> columns;
    for (json::field field : object) {
      count_lines(field.key().raw());
      const std::string name(std::string_view(field.unescaped_key()));
      json::value value = field.value();
      if (value.type() == json::json_type::array) {
        json::array array = value.get_array();
        if (begins_with_object(array)) {
          read_rows(array);
        } else {
          rows_.names.push_back(name);
          columns.push_back(column_in(array));
        }
      } else if (name == "unit" || name == "units") {
        rows_.unit = std::string(field_of(value));
      }
    }
    if (!columns.empty()) put_side_by_side(columns);
  }

  static bool begins_with_object(json::array& array) {
    bool begins = false;
    for (json::value first : array) {
      begins = first.type() == json::json_type::object;
      break;
    }
    array.reset();
    return begins;
  }

  static std::vector<std::string_view> column_in(json::array array) {
    std::vector<std::string_view> column;
    for (json::value value : array) column.push_back(without_line_ends(field_of(value)));
    return column;
  }

  void put_side_by_side(const std::vector<std::vector<std::string_view>>& columns) {
    if (rows_.rows() > 0) throw std::string("rows and columns stand beside each other");
    std::size_t rows = 0;
    for (const auto& column : columns) rows = std::max(rows, column.size());
    for (std::size_t c = columns.size(); c-- > 0;) {
      if (columns[c].size() == rows) continue;
      throw "the arrays '" + rows_.names[0] + "' and '" + rows_.names[c] +
          "' differ in length; expected one element in each for every row";
    }
    rows_.lines.assign(rows, line_);
    rows_.fields.resize(rows * columns.size());
    for (std::size_t row = 0; row < rows; ++row) {
      for (std::size_t c = 0; c < columns.size(); ++c) {
        rows_.fields[row * columns.size() + c] = columns[c][row];
      }
    }
  }

  void count_lines(const char* until) {
    if (until <= counted_) return;
    line_ += static_cast<std::uint64_t>(std::count(counted_, until, '\n'));
    counted_ = until;
  }

  const char* counted_;
  std::uint64_t line_ = 1;
  std::size_t next_column_ = 0;
  JsonRows rows_;
};

JsonMistake mistake_at(const Holder& holder, const char* at, std::string message) {
  const std::string_view before(holder.text.data(),
                                static_cast<std::size_t>(at - holder.text.data()));
  const std::size_t line_begin = before.rfind('\n') + 1;
  return {1 + static_cast<std::uint64_t>(std::count(before.begin(), before.end(), '\n')),
          static_cast<int>(before.size() - line_begin) + 1, std::move(message)};
}

}  // namespace

void JsonRows::row(std::size_t row, Fields& to) const {
  const auto begin = fields.begin() + static_cast<std::ptrdiff_t>(row * names.size());
  to.assign(begin, begin + static_cast<std::ptrdiff_t>(names.size()));
}

std::variant<JsonRows, JsonMistake> json_rows(std::string text) {
  const auto holder = std::make_shared<Holder>(text);
  text = {};
  Reader reader(*holder);
  json::document document;
  try {
    document = holder->parser.iterate(holder->text);
    reader.read(document);
    if (document.current_location().error() == simdjson::SUCCESS) {
      throw simdjson::simdjson_error(simdjson::TRAILING_CONTENT);
    }
  } catch (const simdjson::simdjson_error& error) {
    const char* at = nullptr;
    if (document.current_location().get(at) != simdjson::SUCCESS) {
      at = holder->text.data() + holder->text.size();
    }
    return mistake_at(*holder, at, std::string("this is no JSON: ") + error.what());
  } catch (const std::string& message) {
    return JsonMistake{reader.line(), 1, message};
  }
  JsonRows rows = reader.take();
  rows.holder = holder;
  return rows;
}

bool is_json(std::string_view beginning) {
  const std::size_t first = beginning.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && (beginning[first] == '{' || beginning[first] == '[');
}

}  // namespace wattweek::logs
