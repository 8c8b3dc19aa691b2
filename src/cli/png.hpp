#pragma once
// Pictures of dots from pictures of lines, by another program, where that is installed.

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace wattweek::cli {

inline constexpr std::string_view kConverter = "rsvg-convert";

/// Where `kConverter` is, on the PATH; nothing where it is not.
std::optional<std::filesystem::path> converter();

/// Makes a PNG of an SVG, twice as wide as the charts are. What the program says is caught in the
/// file `said`. Returns why that failed; nothing where it did not.
std::optional<std::string> convert(const std::filesystem::path& program,
                                   const std::filesystem::path& svg,
                                   const std::filesystem::path& png,
                                   const std::filesystem::path& said);

}  // namespace wattweek::cli
