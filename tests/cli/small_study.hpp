#pragma once
// A study of two set-ups without any note to it, as small as that can be.

#include <string>

namespace wattweek::cli {

inline const std::string kSmallStudy =
    "title = \"small\"\n"
    "time_zone = \"Etc/UTC\"\n"
    "start = 2027-01-01\n"
    "[tariff]\n"
    "currency = \"EUR\"\n"
    "band = [{ name = \"all\", price = 0.25 }]\n"
    "[[candidate]]\n"
    "id = \"old\"\n"
    "[[candidate.device]]\n"
    "watts = { idle = 40 }\n"
    "[[candidate]]\n"
    "id = \"new\"\n"
    "purchase = 200\n"
    "[[candidate.device]]\n"
    "watts = { idle = 10 }\n";

/// The study with one part of its text replaced.
inline std::string small_study_with(const std::string& part, const std::string& other) {
  std::string text = kSmallStudy;
  return text.replace(text.find(part), part.size(), other);
}

}  // namespace wattweek::cli
