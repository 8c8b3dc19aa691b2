#pragma once
// Where and when the clocks do odd things.

#include <string>
#include <vector>

namespace wattweek::oracle {

struct OddMonth {
  std::string zone;
  int year = 2027;
  unsigned month = 1;
};

/// Months in which the clocks of a zone change, and what is odd about it (from the time zone
/// database).
// clang-format off
inline const std::vector<OddMonth> kOddMonths{
    {"Europe/Berlin", 2027, 3},         // forth at 02:00
    {"Europe/Berlin", 2027, 10},        // back at 03:00
    {"Europe/Dublin", 2026, 3},         // forth at 01:00
    {"Europe/Dublin", 2026, 10},
    {"America/New_York", 2026, 11},     // back on the first of the month
    {"America/New_York", 2027, 3},
    {"America/Santiago", 2026, 4},      // back at midnight, 23 h comes twice
    {"America/Santiago", 2026, 9},      // forth at midnight
    {"America/Havana", 2026, 3},        // forth at midnight
    {"America/Havana", 2026, 11},       // back on the first of the month, midnight comes twice
    {"Asia/Beirut", 2026, 3},           // forth at midnight
    {"Asia/Beirut", 2026, 10},          // back at midnight
    {"Africa/Cairo", 2024, 10},         // back as the month ends
    {"Africa/Cairo", 2026, 4},
    {"Africa/Juba", 2021, 1},           // back as the month ends, for good
    {"America/Asuncion", 2024, 3},
    {"America/Sao_Paulo", 2018, 11},    // forth at midnight
    {"America/Sao_Paulo", 2019, 2},     // back at midnight
    {"Australia/Lord_Howe", 2026, 4},   // back by half an hour
    {"Australia/Lord_Howe", 2026, 10},
    {"Asia/Pyongyang", 2015, 8},        // back by half an hour at midnight
    {"Asia/Pyongyang", 2018, 5},        // forth by half an hour to midnight
    {"Antarctica/Troll", 2026, 3},      // forth by two hours
    {"Antarctica/Troll", 2026, 10},
    {"Africa/Casablanca", 2026, 2},     // back for Ramadan
    {"Africa/Casablanca", 2026, 3},     // and forth
    {"Pacific/Apia", 2011, 12},         // without its 30th
    {"Pacific/Apia", 2012, 4},
    {"Pacific/Chatham", 2026, 4},       // back at 03:45
    {"Pacific/Chatham", 2026, 9},
    {"America/Caracas", 2016, 5},       // half an hour on the first of the month
    {"America/St_Johns", 2009, 10},     // back at 00:01 of the first: October comes twice
    {"America/St_Johns", 2009, 11},
    {"America/St_Johns", 2010, 3},      // forth at 00:01
    {"America/St_Johns", 2011, 3},
    {"Asia/Kathmandu", 2027, 2},        // never, but 5:45 off
    {"Asia/Kathmandu", 2028, 2},
    {"Etc/UTC", 2027, 1},
    {"Etc/UTC", 2028, 2},
};
// clang-format on

}  // namespace wattweek::oracle
