#include "bins.hpp"

namespace wattweek::metering {

std::size_t bin_of(double watts) { return bins::bin_of(watts); }

double lower_w(std::size_t bin) { return bins::lower_w(bin); }

}  // namespace wattweek::metering
