// Writes the log that readers of logs are held against: a year at one sample a second, 31.5 million
// rows of `2025-01-01T00:00:00+00:00,30.2`; and a file of what was in use, thousands of uses of
// four workloads. `year_log LOG.csv ACTIVITY.csv [ROWS]`; the same bytes every time.

#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace {

constexpr std::int64_t kYear_s = 31'536'000;
constexpr std::array kWorkloads = {"films", "backup", "uploads", "photos"};
constexpr std::array kTenths_w = {55, 120, 23, 81};

// G. Marsaglia, Journal of Statistical Software 8 (2003), 14: xorshift64.
class Chance {
 public:
  std::uint64_t below(std::uint64_t end) {
    state_ ^= state_ << 13;
    state_ ^= state_ >> 7;
    state_ ^= state_ << 17;
    return (state_ >> 11) % end;
  }

 private:
  std::uint64_t state_ = 88172645463325252;
};

std::string stamp(std::int64_t at_s) {
  constexpr std::array kDays = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  auto day = static_cast<int>(at_s / 86400);
  std::size_t month = 0;
  while (day >= kDays[month]) day -= kDays[month++];
  const auto s = static_cast<int>(at_s % 86400);
  return fmt::format("2025-{:02}-{:02}T{:02}:{:02}:{:02}+00:00", month + 1, day + 1, s / 3600,
                     s / 60 % 60, s % 60);
}

// Each workload is in use for up to an hour, then not for up to five.
class Uses {
 public:
  explicit Uses(std::FILE* file) : file_(file) {
    fmt::print(file_, "workload,start,end,units\n");
    for (std::size_t workload = 0; workload < kWorkloads.size(); ++workload) plan(workload, 0);
  }

  int tenths_w(std::int64_t at_s) {
    int sum = 0;
    for (std::size_t workload = 0; workload < kWorkloads.size(); ++workload) {
      if (at_s >= ends_s_[workload]) plan(workload, at_s);
      if (at_s >= begins_s_[workload]) sum += kTenths_w[workload];
    }
    return sum;
  }

 private:
  void plan(std::size_t workload, std::int64_t now_s) {
    begins_s_[workload] = now_s + 1 + static_cast<std::int64_t>(chance_.below(18'000));
    ends_s_[workload] = begins_s_[workload] + 60 + static_cast<std::int64_t>(chance_.below(3540));
    if (ends_s_[workload] >= kYear_s) return;
    fmt::print(file_, "{},{},{},1\n", kWorkloads[workload], stamp(begins_s_[workload]),
               stamp(ends_s_[workload]));
  }

  std::FILE* file_;
  Chance chance_;
  std::array<std::int64_t, kWorkloads.size()> begins_s_{};
  std::array<std::int64_t, kWorkloads.size()> ends_s_{};
};

void write_rows(std::FILE* log, std::FILE* activity, std::int64_t rows) {
  Uses uses(activity);
  Chance chance;
  double slow = 0;
  std::string minute;
  for (std::int64_t at_s = 0; at_s < rows; ++at_s) {
    if (at_s % 60 == 0) minute = stamp(at_s).substr(0, 17);
    slow = 0.99 * slow + (static_cast<double>(chance.below(1000)) - 499.5) * 0.003;
    const int tenths = 300 + uses.tenths_w(at_s) + static_cast<int>(slow);
    fmt::print(log, "{}{:02}+00:00,{}.{}\n", minute, at_s % 60, tenths / 10, tenths % 10);
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) return 1;
  std::FILE* log = std::fopen(argv[1], "wb");
  std::FILE* activity = std::fopen(argv[2], "wb");
  if (log == nullptr || activity == nullptr) return 1;
  write_rows(log, activity, argc > 3 ? std::atoll(argv[3]) : kYear_s);
  return std::fclose(log) == 0 && std::fclose(activity) == 0 ? 0 : 1;
}
