#pragma once
// What a wall meter and a bill say, as options: `--idle`, `--busy`, `--price`, `--currency`.

#include <optional>
#include <string>
#include <variant>

#include "cli/arguments.hpp"

namespace wattweek::cli {

/// The figures that were given; the others are absent.
struct Readings {
  std::optional<double> idle_w;
  std::optional<double> busy_w;  ///< Not below `idle_w` where both are given.
  std::optional<double> price_per_kwh;
  std::optional<std::string> currency;  ///< Three capitals.
};

std::variant<Readings, Misuse> readings_of(const Arguments& arguments);

/// Reads one number into `target`; leaves it where the option is absent.
std::optional<Misuse> read_number(const Arguments& arguments, std::string_view option,
                                  const Limits& limits, std::optional<double>& target);

}  // namespace wattweek::cli
