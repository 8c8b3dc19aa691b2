#pragma once
// What tells series apart besides their names: a colour, and a pattern or dashes with it.

#include <cstddef>
#include <string>
#include <string_view>

namespace wattweek::chart {

/// The `<pattern>`s of the first `count` series. \pre count <= 8.
std::string pattern_definitions(std::string_view prefix, std::size_t count);

/// The attribute that fills a shape with a series' colour and pattern.
std::string pattern_fill(std::string_view prefix, std::size_t series);

/// The class that gives a series' colour to what is drawn in `currentColor`. Colours repeat after
/// eight series.
std::string colour_class(std::size_t series);

/// The attribute of a series' dashes, empty for a solid line. Where colours repeat dashes do not:
/// 64 series have a pair of their own.
std::string dashes(std::size_t series);

}  // namespace wattweek::chart
