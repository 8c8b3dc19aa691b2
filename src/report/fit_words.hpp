#pragma once
// Figures of a log as people read them.

#include <string>

namespace wattweek::report {

/// `9.31 W`, `4.91 kWh`, `502.9 h`: digits by size; what is little as `3.2 Wh` and `15 min`.
std::string watts(double value);
std::string kwh(double value);
std::string hours(double value);

/// `2 s`, `15 min`, `22 h`, `3 days`.
std::string duration(double seconds);

/// `99.2 %` of a part of one. What is not quite all is never called all.
std::string percent(double part);

}  // namespace wattweek::report
