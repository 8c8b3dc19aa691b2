#pragma once
// How many studies are drawn: hundreds in a release build, fewer where asserts or sanitizers
// make each of them slow.

namespace wattweek::oracle {

#ifdef NDEBUG
inline constexpr int kLotDivisor = 1;
#else
inline constexpr int kLotDivisor = 5;
#endif

}  // namespace wattweek::oracle
