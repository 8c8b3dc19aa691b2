#include "canvas.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "wattweek/diag/markup.hpp"
#include "wattweek/diag/number_text.hpp"

namespace wattweek::chart {
namespace {

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

}  // namespace

std::string coordinate(double value) { return diag::rounded(value, 1); }

std::string coordinates(double x, double y) { return coordinate(x) + ' ' + coordinate(y); }

std::string box_path(double left, double top, double right, double bottom) {
  return fmt::format("M{}H{}V{}H{}z", coordinates(left, top), coordinate(right), coordinate(bottom),
                     coordinate(left));
}

std::string isolated(std::string_view text) {
  const std::string safe = diag::markup_text(text);
  if (is_ascii(safe)) return safe;
  return "\u2068" + safe + "\u2069";  // First strong isolate, pop directional isolate.
}

void Canvas::path(std::string_view data, std::string_view classes, std::string_view attributes) {
  if (data.empty()) return;
  fmt::format_to(std::back_inserter(out_), "<path class=\"{}\"{}{} d=\"{}\"/>\n", classes,
                 attributes.empty() ? "" : " ", attributes, data);
}

void Canvas::text(double x, double y, std::string_view words, std::string_view classes) {
  fmt::format_to(std::back_inserter(out_), "<text x=\"{}\" y=\"{}\"", coordinate(x), coordinate(y));
  if (!classes.empty()) fmt::format_to(std::back_inserter(out_), " class=\"{}\"", classes);
  fmt::format_to(std::back_inserter(out_), ">{}</text>\n", diag::markup_text(words));
}

void Canvas::hover(double left, double top, double right, double bottom, std::string_view title) {
  fmt::format_to(std::back_inserter(out_),
                 "<path class=\"hit\" d=\"{}\"><title>{}</title></path>\n",
                 box_path(left, top, right, bottom), title);
}

}  // namespace wattweek::chart
