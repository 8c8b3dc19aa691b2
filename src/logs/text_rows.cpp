#include "text_rows.hpp"

#include "known_day.hpp"

namespace wattweek::logs {
namespace {

// The rows, block by block.
class BlockRows {
 public:
  BlockRows(const Layout& layout, RowReader& reader, InOrder& in_order)
      : layout_(layout), reader_(reader), in_order_(in_order), known_(layout) {}

  bool read(std::string_view block) {
    const char* p = block.data();
    const char* const end = p + block.size();
    Reading reading;
    for (; p != end; ++line_) {
      if (const char* const next = known_.read(p, end, reading)) {
        reader_.count_row();
        if (!in_order_.add(reading)) return false;
        last_us_ = reading.at_us;
        p = next;
        continue;
      }
      std::string_view rest(p, static_cast<std::size_t>(end - p));
      if (!read_line(take_line(rest))) return false;
      p = rest.data();
    }
    return true;
  }

  std::uint64_t line() const { return line_; }

 private:
  bool read_line(std::string_view line) {
    if (line_ < layout_.first_line || is_silent(line)) return true;
    split(line, layout_.delimiter, fields_);
    if (last_us_ != 0) reader_.went_on_to(last_us_);
    const auto reading = reader_.read(fields_, line_);
    if (!reading) return !reader_.contradiction();
    last_us_ = 0;
    known_.learn(line, reading->at_us);
    return in_order_.add(*reading);
  }

  const Layout& layout_;
  RowReader& reader_;
  InOrder& in_order_;
  KnownDay known_;
  Fields fields_;
  std::uint64_t line_ = 1;    // The next.
  Microseconds last_us_ = 0;  // Of the rows that the general way did not see; 0: none.
};

}  // namespace

TextRead read_text_rows(LineBlocks& blocks, const Layout& layout, RowReader& reader,
                        InOrder& in_order) {
  BlockRows rows(layout, reader, in_order);
  for (auto block = blocks.next(); !block.empty(); block = blocks.next()) {
    if (!rows.read(block)) return {false, rows.line()};
  }
  return {true, rows.line()};
}

}  // namespace wattweek::logs
