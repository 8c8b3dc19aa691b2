#include "value.hpp"

#include <algorithm>

namespace wattweek::read {

namespace {

constexpr std::size_t kLongestShown = 60;
constexpr std::size_t kMostListed = 20;

bool is_control(char letter) { return static_cast<unsigned char>(letter) < 0x20 || letter == 0x7F; }

bool is_blank(const std::string& text) {
  return text.find_first_not_of(" \t\r\n") == std::string::npos;
}

bool is_id_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
}

// For a date in quotes, the same without them.
std::string unquoted_date_hint(const std::string* text) {
  const bool looks_like_date = text != nullptr && text->size() == 10 && (*text)[4] == '-';
  return looks_like_date ? "write " + *text + " without quotes" : "";
}

}  // namespace

void Value::refuse(std::string_view accepted, std::string_view hint) const {
  std::string problem = "expected " + std::string(accepted);
  if (!hint.empty()) problem += "; " + std::string(hint);
  complain(problem);
}

void Value::complain(std::string_view problem) const {
  file_->report(place(), name_ + " = " + typed() + ": " + std::string(problem));
}

std::vector<Value> Value::elements() const {
  std::vector<Value> values;
  if (const toml::array* array = node_->as_array()) {
    for (const toml::node& element : *array) values.emplace_back(*file_, element, name_);
  }
  return values;
}

std::optional<std::string> read_text(const Value& value, std::string_view accepted) {
  const auto text = value.node().value_exact<std::string>();
  if (!text) {
    value.refuse(accepted);
    return std::nullopt;
  }
  if (is_blank(*text)) {
    value.complain("the text is empty; expected " + std::string(accepted));
    return std::nullopt;
  }
  if (std::any_of(text->begin(), text->end(), is_control)) {
    value.complain("the text has a line break or another control character; expected " +
                   std::string(accepted) + " on one line");
    return std::nullopt;
  }
  return text;
}

bool is_id(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), is_id_letter);
}

std::optional<std::string> read_id(const Value& value) {
  const auto text = value.node().value_exact<std::string>();
  if (text && is_id(*text)) return text;
  value.refuse(kIdAccepted);
  return std::nullopt;
}

std::optional<std::size_t> read_word(const Value& value,
                                     const std::vector<std::string_view>& words) {
  const auto text = value.node().value_exact<std::string>();
  if (text) {
    const auto found = std::find(words.begin(), words.end(), *text);
    if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  }
  const std::string_view near = text ? diag::nearest(*text, words) : std::string_view();
  value.refuse(listed(words, true), near.empty() ? "" : "did you mean " + in_quotes(near) + "?");
  return std::nullopt;
}

std::optional<std::chrono::year_month_day> read_date(const Value& value,
                                                     std::string_view accepted) {
  const auto date = value.node().value_exact<toml::date>();
  if (!date) {
    const toml::value<std::string>* text = value.node().as_string();
    value.refuse(accepted, unquoted_date_hint(text == nullptr ? nullptr : &text->get()));
    return std::nullopt;
  }
  return std::chrono::year(date->year) / date->month / date->day;
}

std::string meant_or_known(std::string_view word, const std::vector<std::string_view>& known) {
  const std::string_view near = diag::nearest(word, known);
  if (near.empty()) return "; expected " + listed(known, true);
  return ", did you mean " + in_quotes(near) + "?";
}

std::string listed(const std::vector<std::string_view>& words, bool quoted) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i == kMostListed) return list + ", ...";
    if (i > 0) list += i + 1 == words.size() ? " or " : ", ";
    list += quoted ? in_quotes(words[i]) : std::string(words[i]);
  }
  return list;
}

std::string shortened(std::string_view text) {
  const std::string_view shown = code_points(text, 0, kLongestShown);
  return std::string(shown) + (shown.size() < text.size() ? "..." : "");
}

std::string in_quotes(std::string_view text) { return '"' + shortened(text) + '"'; }

}  // namespace wattweek::read
