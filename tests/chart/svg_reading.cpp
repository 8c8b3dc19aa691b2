#include "svg_reading.hpp"

#include <doctest/doctest.h>

#include <cctype>
#include <cstdlib>

namespace wattweek::chart {
namespace {

// `&` begins one of the five entities that XML knows, or a character by number.
void check_entities(const std::string& text) {
  for (std::size_t at = 0; (at = text.find('&', at)) != std::string::npos; ++at) {
    const std::string entity = text.substr(at, text.find(';', at) - at + 1);
    CAPTURE(text);
    const bool known = entity == "&amp;" || entity == "&lt;" || entity == "&gt;" ||
                       entity == "&quot;" || entity == "&#39;";
    CHECK(known);
  }
}

// The inside of a tag that starts an element, without a slash at its end.
Element element_of(const std::string& tag) {
  Element element;
  std::size_t at = tag.find(' ');
  element.name = tag.substr(0, at);
  while (at != std::string::npos && at + 1 < tag.size()) {
    const std::size_t equals = tag.find("=\"", at);
    REQUIRE(equals != std::string::npos);
    const std::size_t end = tag.find('"', equals + 2);
    REQUIRE(end != std::string::npos);
    const std::string key = tag.substr(at + 1, equals - at - 1);
    const std::string value = tag.substr(equals + 2, end - equals - 2);
    check_entities(value);
    CHECK(element.attributes.emplace(key, value).second);
    at = end + 1 < tag.size() ? end + 1 : std::string::npos;
  }
  return element;
}

}  // namespace

double Element::number(const std::string& attribute) const {
  return std::strtod(attributes.at(attribute).c_str(), nullptr);
}

bool Element::has_class(const std::string& name_of_class) const {
  const auto found = attributes.find("class");
  if (found == attributes.end()) return false;
  return (' ' + found->second + ' ').find(' ' + name_of_class + ' ') != std::string::npos;
}

std::vector<Element> elements(const std::string& svg) {
  std::vector<Element> all;
  std::vector<std::size_t> open;
  std::size_t at = 0;
  while ((at = svg.find('<', at)) != std::string::npos) {
    const std::size_t end = svg.find('>', at);
    REQUIRE(end != std::string::npos);
    std::string tag = svg.substr(at + 1, end - at - 1);
    REQUIRE(tag.find('<') == std::string::npos);
    if (tag.front() == '/') {
      REQUIRE(!open.empty());
      CHECK(all[open.back()].name == tag.substr(1));
      open.pop_back();
    } else {
      const bool alone = tag.back() == '/';
      if (alone) tag.pop_back();
      all.push_back(element_of(tag));
      if (!alone) open.push_back(all.size() - 1);
    }
    at = end + 1;
    const std::string text = svg.substr(at, svg.find('<', at) - at);
    check_entities(text);
    if (!open.empty()) all[open.back()].text += text;
  }
  CHECK(open.empty());
  return all;
}

std::vector<Element> elements(const std::string& svg, const std::string& name) {
  std::vector<Element> found;
  for (const Element& element : elements(svg)) {
    if (element.name == name) found.push_back(element);
  }
  return found;
}

std::vector<Element> texts_that_say(const std::string& svg, const std::string& words) {
  std::vector<Element> found;
  for (const Element& element : elements(svg, "text")) {
    if (element.text == words) found.push_back(element);
  }
  return found;
}

std::vector<Element> texts_with(const std::string& svg, const std::string& words) {
  std::vector<Element> found;
  for (const Element& element : elements(svg, "text")) {
    if (element.text.find(words) != std::string::npos) found.push_back(element);
  }
  return found;
}

std::vector<double> numbers_in(const std::string& data) {
  std::vector<double> numbers;
  const char* at = data.c_str();
  while (*at != '\0') {
    const bool starts = *at == '-' || *at == '.' || std::isdigit(static_cast<unsigned char>(*at));
    if (!starts) {
      ++at;
      continue;
    }
    char* end = nullptr;
    numbers.push_back(std::strtod(at, &end));
    at = end;
  }
  return numbers;
}

}  // namespace wattweek::chart
