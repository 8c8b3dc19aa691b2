#include <iostream>
#include <iterator>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/read/read.hpp"
#include "wattweek/report/report.hpp"

using namespace wattweek;

int main() {
  const std::string text(std::istreambuf_iterator<char>(std::cin), {});
  const auto no_files = [](auto&&...) { return read::Unreadable{"this program opens no files"}; };
  const auto input = read::study({"stdin", "stdin", text}, {no_files, calendar::zone_rules});
  for (const auto& problem : input.problems) std::cerr << diag::to_text(problem) << '\n';
  if (!input.value) return 2;
  const auto result = decide::assess(input.value->study, input.value->zone);
  const auto* all = std::get_if<decide::Assessment>(&result);
  if (all == nullptr) return 2;
  std::cout << report::text(input.value->study, *all, {}, report::Scope::compare, {});
}
