#include "slips.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace wattweek::read {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string lower_case(std::string_view text) {
  std::string lowered(text);
  for (char& c : lowered) c = lower(c);
  return lowered;
}

// A figure at the start of a text: digits with at most one point or comma between them.
struct Figure {
  Decimal number;
  bool has_comma = false;
  std::string_view rest;
};

std::optional<Figure> leading_figure(std::string_view text) {
  Figure figure;
  std::size_t i = 0;
  bool has_mark = false;
  if (i < text.size() && (text[i] == '-' || text[i] == '+')) ++i;
  const std::size_t first = i;
  for (; i < text.size(); ++i) {
    const bool digit_follows = i + 1 < text.size() && is_digit(text[i + 1]);
    const bool mark = (text[i] == '.' || text[i] == ',') && !has_mark && digit_follows;
    if (!is_digit(text[i]) && !mark) break;
    has_mark |= mark;
    figure.has_comma |= mark && text[i] == ',';
    figure.number.digits += mark ? '.' : text[i];
  }
  if (i == first) return std::nullopt;
  if (figure.number.digits.front() == '.') figure.number.digits.insert(0, 1, '0');
  if (first > 0 && text[0] == '-') figure.number.digits.insert(0, 1, '-');
  figure.number = figure.number.shifted(0);  // without idle zeros
  figure.rest = trimmed(text.substr(i));
  return figure;
}

struct Suffix {
  std::string_view text;
  Unit unit;
  int powers_of_ten;  // from the suffix to the unit of the key
  std::string_view why;
};

constexpr std::string_view kWattsWhy = "watts are meant";
constexpr std::string_view kCentsWhy = "the price is in whole units of the currency, not in cents";
constexpr std::string_view kMoneyWhy = "the amount is in the tariff's currency, not in cents";

constexpr std::array<Suffix, 26> kSuffixes{{
    {"w", Unit::watts, 0, kWattsWhy},
    {"watt", Unit::watts, 0, kWattsWhy},
    {"watts", Unit::watts, 0, kWattsWhy},
    {"kw", Unit::watts, 3, "watts are meant, 1 kW is 1000 W"},
    {"mw", Unit::watts, -3, "watts are meant, 1 mW is 0.001 W"},
    {"wh", Unit::kwh, -3, "kWh are meant"},
    {"kwh", Unit::kwh, 0, "kWh are meant"},
    {"mwh", Unit::kwh, 3, "kWh are meant, 1 MWh is 1000 kWh"},
    {"ct", Unit::price, -2, kCentsWhy},
    {"cent", Unit::price, -2, kCentsWhy},
    {"cents", Unit::price, -2, kCentsWhy},
    {"c", Unit::price, -2, kCentsWhy},
    {"p", Unit::price, -2, kCentsWhy},
    {"pence", Unit::price, -2, kCentsWhy},
    {"ct", Unit::money, -2, kMoneyWhy},
    {"cent", Unit::money, -2, kMoneyWhy},
    {"cents", Unit::money, -2, kMoneyWhy},
    {"c", Unit::money, -2, kMoneyWhy},
    {"p", Unit::money, -2, kMoneyWhy},
    {"pence", Unit::money, -2, kMoneyWhy},
    {"min", Unit::minutes, 0, "minutes are meant"},
    {"minutes", Unit::minutes, 0, "minutes are meant"},
    {"kg", Unit::kg_per_kwh, 0, "kg per kWh are meant"},
    {"g", Unit::kg_per_kwh, -3, "kg per kWh are meant"},
    {"percent", Unit::fraction, -2, "a fraction is meant"},
    {"%", Unit::fraction, -2, "a fraction is meant"},
}};

bool is_volt_amperes(std::string_view suffix) { return suffix == "va" || suffix == "kva"; }

// EUR, €, $: letters or a sign that name a currency.
bool is_currency(std::string_view suffix) {
  for (const std::string_view sign : {"€", "$", "£", "¥", "euro", "euros", "dollar", "dollars"}) {
    if (suffix == sign) return true;
  }
  bool letters = suffix.size() == 3;
  for (const char c : suffix) letters = letters && c >= 'a' && c <= 'z';
  return letters;
}

std::string_view without_per_kwh(std::string_view suffix) {
  for (const std::string_view tail : {"/kwh", "per kwh", "/ kwh"}) {
    if (suffix.size() > tail.size() && suffix.substr(suffix.size() - tail.size()) == tail) {
      return trimmed(suffix.substr(0, suffix.size() - tail.size()));
    }
  }
  return suffix;
}

std::string write(const Decimal& number, std::string_view why) {
  std::string advice = "write " + number.digits;
  if (!why.empty()) advice += " (" + std::string(why) + ")";
  return advice;
}

// A unit that is not known from the key takes the first meaning of a suffix.
std::optional<std::string> suffix_advice(const Decimal& number, std::string_view suffix,
                                         Unit unit) {
  if (is_volt_amperes(suffix) && (unit == Unit::watts || unit == Unit::none)) {
    return "volt-amperes are not watts: write the meter's real power, in W";
  }
  for (const Suffix& known : kSuffixes) {
    const bool fits = known.unit == unit || unit == Unit::none;
    if (fits && known.text == suffix) return write(number.shifted(known.powers_of_ten), known.why);
  }
  const bool in_money = unit == Unit::money || unit == Unit::price || unit == Unit::none;
  if (in_money && is_currency(suffix)) {
    return write(number, "the number alone; the tariff's currency says the rest");
  }
  return std::nullopt;
}

// "13-14", "13..14", "13 to 14": a range written as text.
std::optional<std::string> range_advice(const Decimal& low, std::string_view rest) {
  for (const std::string_view dash : {"-", "..", "to ", "–"}) {
    if (rest.substr(0, dash.size()) != dash) continue;
    const auto high = leading_figure(trimmed(rest.substr(dash.size())));
    if (!high || !high->rest.empty()) return std::nullopt;
    return "write [" + low.digits + ", " + high->number.digits + "] for a range";
  }
  return std::nullopt;
}

// "€0.25": the sign of a currency before the figure.
std::string_view without_currency_sign(std::string_view text) {
  for (const std::string_view sign : {"€", "$", "£", "¥"}) {
    if (text.substr(0, sign.size()) == sign) return trimmed(text.substr(sign.size()));
  }
  return text;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

Decimal Decimal::shifted(int powers_of_ten) const {
  const bool negative = digits.front() == '-';
  std::string all = negative ? digits.substr(1) : digits;
  std::size_t point = std::min(all.find('.'), all.size());
  if (point < all.size()) all.erase(point, 1);
  for (; powers_of_ten > 0; --powers_of_ten) {
    if (++point > all.size()) all += '0';
  }
  for (; powers_of_ten < 0; ++powers_of_ten) {
    if (point == 0) {
      all.insert(0, 1, '0');
    } else {
      --point;
    }
  }
  std::string whole = all.substr(0, point);
  std::string fraction = all.substr(point);
  whole.erase(0, whole.find_first_not_of('0'));
  fraction.erase(fraction.find_last_not_of('0') + 1);
  std::string text = whole.empty() ? "0" : whole;
  if (!fraction.empty()) text += "." + fraction;
  return {(negative ? "-" : "") + text};
}

std::optional<std::string> number_advice(std::string_view text, Unit unit) {
  const auto figure = leading_figure(without_currency_sign(trimmed(text)));
  if (!figure) return std::nullopt;
  if (const auto range = range_advice(figure->number, figure->rest)) return range;
  const std::string suffix = lower_case(figure->rest);
  if (suffix.empty() || suffix == ".") {
    return write(figure->number, figure->has_comma ? "with a decimal point" : "");
  }
  return suffix_advice(figure->number, without_per_kwh(suffix), unit);
}

std::string percent_advice(std::string_view typed) {
  const auto figure = leading_figure(typed);
  if (!figure || !figure->rest.empty()) return {};
  return "write " + figure->number.shifted(-2).digits + " for " + figure->number.digits + " %";
}

}  // namespace wattweek::read
