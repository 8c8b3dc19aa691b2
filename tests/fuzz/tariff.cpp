// Whatever the bytes, a tariff is read or its problems are told, never both and never a crash.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "wattweek/read/read.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace wattweek;
  const std::string text(data, data + size);
  const auto got = read::tariff({"tariff.toml", "tariff.toml", text});
  if (got.value.has_value() != got.problems.empty()) std::abort();
  for (const diag::Diagnostic& problem : got.problems) (void)diag::to_text(problem);
  return 0;
}
