#include "json_rows.hpp"

#include <simdjson.h>

#include <algorithm>

#include "json_lines.hpp"
#include "json_mistake.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

namespace json = simdjson::ondemand;

// What the fields point to. The parser looks at some bytes behind the text.
struct Holder {
  explicit Holder(std::string from) : text(std::move(from)) {
    text.reserve(text.size() + simdjson::SIMDJSON_PADDING);
  }

  simdjson::padded_string_view padded() const {
    return simdjson::padded_string_view(text.data(), text.size(), text.capacity());
  }

  std::string text;
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
    if (rows_.rows() == 0 && !columns_.empty()) put_side_by_side();
  }

  JsonRows take() { return std::move(rows_); }
  std::uint64_t line() const { return line_; }

 private:
  // An array of objects or of arrays: each is a row; or of arrays of rows.
  void read_rows(json::array array) {
    for (json::value element : array) {
      if (element.type() == json::json_type::object) {
        begin_row();
        read_row(element.get_object(), "");
        rows_.lines.back() = line_;
      } else if (element.type() == json::json_type::array) {
        read_row_or_rows(element.get_array());
      } else {
        throw std::string(
            "expected rows that are objects, such as {\"time\": ..., \"power\": ...}, or arrays");
      }
    }
  }

  void read_row_or_rows(json::array array) {
    if (begins_with(json::json_type::object, array)) return read_rows(array);
    begin_row();
    read_row(array);
    rows_.lines.back() = line_;
  }

  void begin_row() {
    rows_.lines.push_back(0);
    rows_.fields.resize(rows_.fields.size() + rows_.names.size());
  }

  void read_row(json::array array) {
    std::size_t column = 0;
    for (json::value value : array) {
      count_lines(value.raw_json_token().data());
      if (column == rows_.names.size()) add_column("");
      put(column++, field_of(value));
    }
  }

  void read_row(json::object object, const std::string& outer) {
    for (json::field field : object) {
      count_lines(field.key().raw());
      const std::string_view name = field.unescaped_key();
      json::value value = field.value();
      if (value.type() == json::json_type::object) {
        read_row(value.get_object(), outer + std::string(name) + ".");
      } else {
        put(column_of(outer, name), field_of(value));
      }
    }
  }

  void put(std::size_t column, std::string_view field) {
    rows_.fields[rows_.fields.size() - rows_.names.size() + column] = without_line_ends(field);
  }

  // Members come in the same order in nearly all rows, so that the next is looked at first.
  std::size_t column_of(const std::string& outer, std::string_view name) {
    for (std::size_t tried = 0; tried < rows_.names.size(); ++tried) {
      if (next_column_ >= rows_.names.size()) next_column_ = 0;
      const std::string_view whole = rows_.names[next_column_];
      if (whole.size() == outer.size() + name.size() && whole.substr(outer.size()) == name &&
          whole.substr(0, outer.size()) == outer) {
        return next_column_++;
      }
      ++next_column_;
    }
    add_column(outer + std::string(name));
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

  // An object: of parallel arrays, or with an array of rows somewhere in it.
  void read_object(json::object object) {
    for (json::field field : object) {
      count_lines(field.key().raw());
      const std::string name(std::string_view(field.unescaped_key()));
      json::value value = field.value();
      if (value.type() == json::json_type::object) {
        read_object(value.get_object());
      } else if (value.type() == json::json_type::array) {
        read_array(name, value.get_array());
      } else if (name == "unit" || name == "units") {
        rows_.unit = std::string(field_of(value));
      }
    }
  }

  void read_array(const std::string& name, json::array array) {
    if (begins_with(json::json_type::object, array) || begins_with(json::json_type::array, array)) {
      return read_rows(array);
    }
    columns_.push_back({name, column_in(array)});
  }

  static bool begins_with(json::json_type type, json::array& array) {
    bool begins = false;
    for (json::value first : array) {
      begins = first.type() == type;
      break;
    }
    array.reset();
    return begins;
  }

  static std::vector<std::string_view> column_in(json::array array) {
    std::vector<std::string_view> column;
    column.reserve(array.count_elements());
    for (json::value value : array) column.push_back(without_line_ends(field_of(value)));
    return column;
  }

  void put_side_by_side() {
    const std::size_t rows = columns_.front().fields.size();
    for (const Column& column : columns_) {
      rows_.names.push_back(column.name);
      if (column.fields.size() == rows) continue;
      throw "the arrays '" + diag::printable(columns_.front().name) + "' and '" +
          diag::printable(column.name) + "' differ in length (" + std::to_string(rows) + " and " +
          std::to_string(column.fields.size()) + "); expected one element in each for every row";
    }
    for (Column& column : columns_) rows_.columns.push_back(std::move(column.fields));
    rows_.last_line = line_;
  }

  void count_lines(const char* until) {
    if (until <= counted_) return;
    line_ += static_cast<std::uint64_t>(std::count(counted_, until, '\n'));
    counted_ = until;
  }

  struct Column {
    std::string name;
    std::vector<std::string_view> fields;
  };

  const char* counted_;
  std::uint64_t line_ = 1;
  std::vector<Column> columns_;  // Arrays of single values.
  std::size_t next_column_ = 0;
  JsonRows rows_;
};

}  // namespace

void JsonRows::row(std::size_t row, Fields& to) const {
  if (!columns.empty()) {
    to.clear();
    for (const auto& column : columns) to.push_back(column[row]);
    return;
  }
  const auto begin = fields.begin() + static_cast<std::ptrdiff_t>(row * names.size());
  to.assign(begin, begin + static_cast<std::ptrdiff_t>(names.size()));
}

std::variant<JsonRows, JsonMistake> json_rows(std::string text) {
  bool was_lines = false, is_open = false;
  const auto holder = std::make_shared<Holder>(as_array(std::move(text), was_lines));
  Reader reader(*holder);
  json::document document;
  try {
    document = holder->parser.iterate(holder->padded());
    is_open = true;
    reader.read(document);
    if (document.current_location().error() == simdjson::SUCCESS) {
      throw simdjson::simdjson_error(simdjson::TRAILING_CONTENT);
    }
  } catch (const simdjson::simdjson_error& error) {
    // A document that could not be begun has no place to be at.
    const char* at = holder->text.data();
    if (is_open && document.current_location().get(at) != simdjson::SUCCESS) {
      at = holder->text.data() + holder->text.size();
    }
    JsonMistake mistake = mistake_of(holder->text, error.error(), at);
    if (was_lines && mistake.line == 1 && mistake.column > 1) --mistake.column;
    return mistake;
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
