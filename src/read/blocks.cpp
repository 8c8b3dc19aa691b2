#include "blocks.hpp"

#include <array>
#include <limits>

#include "numbers.hpp"
#include "windows.hpp"

namespace wattweek::read {

namespace {

constexpr NumberRule kLimit{Bounds::positive, Unit::kwh};
constexpr double kNoLimit = std::numeric_limits<double>::infinity();
constexpr std::array<std::string_view, 12> kMonthNames{
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};

model::Block read_block(const Table& table) {
  model::Block block;
  if (const auto limit = table.find("up_to")) block.up_to_kwh = read_number(*limit, kLimit);
  if (const auto price = table.require("price", accepted_range(kPrice))) {
    block.price = as<units::UnitPrice>(read_range(*price, kPrice).value_or(units::Range<double>()));
    block.price_place = price->place();
  }
  block.months = read_month_filter(table);
  return block;
}

// One month's ladder, climbed block by block; each fault is told once, at the first month
// that shows it.
class Ladder {
 public:
  explicit Ladder(std::string_view month) : month_(month) {}

  // Gives the problem of the next block, empty where it fits.
  std::string climb(const Table& table, const model::Block& block) {
    std::string problem;
    if (ended_) {
      problem = "this block follows one without up_to in " + std::string(month_) +
                "; expected only the last block of a month to have none";
    } else if (block.up_to_kwh.value_or(kNoLimit) <= below_kwh_) {
      problem = table.name_of("up_to") + " = " + table.find("up_to")->typed() +
                ": not above the block before in " + std::string(month_) +
                "; expected limits that rise from block to block";
    }
    ended_ |= !block.up_to_kwh.has_value();
    below_kwh_ = block.up_to_kwh.value_or(kNoLimit);
    last_ = &table;
    return problem;
  }

  // The last block, where the ladder has one and it is not the end.
  const Table* open_end() const { return ended_ ? nullptr : last_; }

 private:
  std::string_view month_;
  const Table* last_ = nullptr;
  double below_kwh_ = 0;  // limits are above 0
  bool ended_ = false;
};

diag::Place limit_place(const Table& table) {
  return table.has("up_to") ? table.find("up_to")->place() : table.place();
}

bool check_month(const std::vector<Table>& tables, const std::vector<model::Block>& blocks,
                 std::size_t month) {
  Ladder ladder(kMonthNames[month]);
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    if (!blocks[i].months.test(month)) continue;
    const std::string problem = ladder.climb(tables[i], blocks[i]);
    if (problem.empty()) continue;
    tables[i].file().report(limit_place(tables[i]), problem);
    return false;
  }
  const Table* last = ladder.open_end();
  if (last == nullptr) return true;
  last->file().report(limit_place(*last),
                      last->name_of("up_to") + " = " + last->find("up_to")->typed() +
                          ": the last block of " + std::string(kMonthNames[month]) +
                          " has a limit; expected one more block without up_to");
  return false;
}

}  // namespace

std::vector<model::Block> read_blocks(const Table& tariff) {
  const std::vector<Table> tables = tariff.repeated("block");
  const std::size_t problems_before = tariff.file().problem_count();
  std::vector<model::Block> blocks;
  for (const Table& table : tables) blocks.push_back(read_block(table));
  if (tariff.file().problem_count() > problems_before) return blocks;
  for (std::size_t month = 0; month < kMonthNames.size(); ++month) {
    if (!check_month(tables, blocks, month)) break;
  }
  return blocks;
}

}  // namespace wattweek::read
