#pragma once
// Just enough reading of SVG to hold our pictures against rules.

#include <map>
#include <string>
#include <vector>

namespace wattweek::chart {

/// One element: its name, its attributes as written, and the text directly in it as written.
struct Element {
  std::string name;
  std::map<std::string, std::string> attributes;
  std::string text;

  double number(const std::string& attribute) const;
  bool has_class(const std::string& name_of_class) const;
};

/// All elements in order of their start. Fails the running test case where tags are not balanced,
/// an attribute stands twice, or a `<` or `&` stands for itself.
std::vector<Element> elements(const std::string& svg);

/// Those of one name.
std::vector<Element> elements(const std::string& svg, const std::string& name);

/// The text elements that say this, as written.
std::vector<Element> texts_that_say(const std::string& svg, const std::string& words);

/// The text elements of which this is a part.
std::vector<Element> texts_with(const std::string& svg, const std::string& words);

/// The numbers in path data, in order.
std::vector<double> numbers_in(const std::string& data);

}  // namespace wattweek::chart
