#pragma once
// The figures of a new study, guessed where none was given. The guesses stand here and nowhere
// else.

#include <string>

#include "cli/readings.hpp"

namespace wattweek::cli {

/// Streams at once that the reading `--busy` is taken for: the most in the new study.
inline constexpr int kStreams = 2;

struct NewFigures {
  double idle_w = 0;
  bool is_idle_given = false;
  double busy_w = 0;    ///< With `kStreams` streams.
  double stream_w = 0;  ///< What each stream adds to idle.
  bool is_busy_given = false;
  std::string currency;
  bool is_currency_given = false;
  double price_per_kwh = 0;
  bool is_price_given = false;
  double night_price_per_kwh = 0;  ///< An example, lower than the price.
  double purchase = 0;             ///< Of the alternative; always a guess.
};

NewFigures new_figures(const Readings& readings);

/// A TOML float that reads back as the same double.
std::string toml_number(double value);

/// A TOML string. Control characters and what is not UTF-8 are shown as `\xNN`.
std::string toml_string(const std::string& text);

/// The shortest text of a number, as people write it: `13.5`, `29`.
std::string plain_number(double value);

}  // namespace wattweek::cli
