#include "wattweek/logs/read_log.hpp"

#include <algorithm>
#include <array>

#include "infer.hpp"
#include "json_rows.hpp"
#include "text_rows.hpp"
#include "text_source.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

using Problems = std::vector<diag::Diagnostic>;

constexpr std::size_t kSampleBytes = 64 << 20;
constexpr std::uint64_t kProgressBytes = 16 << 20;
// A size that is told wrongly must not take all memory.
constexpr std::uint64_t kMostToReserve = 1 << 30;
constexpr int kFurthestLine = 2'000'000'000;

// Tells of the bytes that go through.
class Told : public ByteSource {
 public:
  Told(std::unique_ptr<ByteSource> source, const Progress& progress)
      : source_(std::move(source)), progress_(progress) {}

  std::size_t read(std::span<char> bytes) override {
    const std::size_t got = source_->read(bytes);
    through_ += got;
    if (progress_ && through_ >= told_ + kProgressBytes) progress_(told_ = through_);
    return got;
  }

  std::string failure() const override { return source_->failure(); }

 private:
  std::unique_ptr<ByteSource> source_;
  const Progress& progress_;
  std::uint64_t through_ = 0;
  std::uint64_t told_ = 0;
};

// One reading of a log.
class LogReader {
 public:
  LogReader(const LogFile& file, const LogOptions& options, ReadingSink& sink,
            const Progress& progress)
      : file_(file),
        options_(options),
        sink_(sink),
        progress_(progress),
        name_(std::make_shared<const std::string>(file.name)) {}

  std::variant<LogReport, Problems> read() {
    auto text = open();
    if (!text) return problems_;
    if (begins_as_json(*text)) return read_json();
    const auto beginning = first_lines();
    return beginning ? read_text(*beginning) : problems_;
  }

 private:
  std::unique_ptr<ByteSource> open() {
    LogFile told = file_;
    told.open = [this] { return std::make_unique<Told>(file_.open(), progress_); };
    auto text = open_text(told);
    if (auto* reason = std::get_if<std::string>(&text)) return fail(1, 1, *reason), nullptr;
    return std::move(std::get<std::unique_ptr<ByteSource>>(text));
  }

  static bool begins_as_json(ByteSource& text) {
    std::array<char, 256> beginning{};
    const std::size_t got = text.read(beginning);
    return is_json({beginning.data(), got});
  }

  // The lines from which the layout is inferred.
  std::optional<std::string> first_lines() {
    auto source = open();
    if (!source) return std::nullopt;
    LineBlocks blocks(std::move(source));
    std::string text;
    std::size_t lines = 0;
    while (lines < kInferredRows && text.size() < kSampleBytes) {
      const std::string_view block = blocks.next();
      if (block.empty()) break;
      text.append(block);
      lines += static_cast<std::size_t>(std::count(block.begin(), block.end(), '\n'));
    }
    if (blocks.failure().empty()) return text;
    fail(lines + 1, 1, blocks.failure());
    return std::nullopt;
  }

  std::variant<LogReport, Problems> read_text(const std::string& beginning) {
    char delimiter = ',';
    auto table = infer_table(beginning, options_.delimiter, delimiter);
    if (const auto* refusal = std::get_if<Refusal>(&table)) return refused(*refusal);
    auto& sample = std::get<Sample>(table);
    Inference inference{options_, file_.name, std::move(sample)};
    inference.layout.delimiter = delimiter;
    if (auto refusal = infer(inference)) {
      return refused(*refusal, inference.sample, beginning);
    }
    say_delimiter(inference);
    return read_rows(inference, [&](RowReader& reader, InOrder& in_order) {
      return read_text_rows(inference.layout, reader, in_order);
    });
  }

  std::variant<LogReport, Problems> read_json() {
    std::string text;
    if (!read_whole(text)) return problems_;
    auto parsed = json_rows(std::move(text));
    if (const auto* mistake = std::get_if<JsonMistake>(&parsed)) {
      return fail(mistake->line, mistake->column, mistake->message);
    }
    const auto& rows = std::get<JsonRows>(parsed);
    LogOptions options = options_;
    if (!options.unit) options.unit = unit_of(rows.unit);
    Inference inference{options, file_.name, sample_of(rows)};
    if (inference.sample.rows() == 0) return fail(1, 1, "there are no rows in this log");
    if (auto refusal = infer(inference)) return refused(*refusal, inference.sample, {});
    return read_rows(inference, [&](RowReader& reader, InOrder& in_order) {
      return read_json_rows(rows, reader, in_order);
    });
  }

  // Until the rows are as far in order as is taken for granted. A file that begins with its newest
  // row shows the second pass of a doubled hour first, and only its end whether there is another.
  template <class ReadRows>
  std::variant<LogReport, Problems> read_rows(Inference& inference, ReadRows&& rows) {
    const Layout& layout = inference.layout;
    const bool is_local = !layout.time.names_zone && !layout.time.is_utc;
    LocalClock::Hours written_once;
    for (Disorder most = Disorder::none;;) {
      sink_.begin(layout.meaning);
      RowReader reader(layout, is_local ? &*options_.zone : nullptr, written_once);
      InOrder in_order(sink_, most);
      const bool is_done = rows(reader, in_order);
      if (!problems_.empty()) return problems_;
      if (const auto& contradiction = reader.contradiction()) {
        return fail(contradiction->line, 1, contradiction->message);
      }
      const auto hours = reader.without_first_pass();
      if (!is_done) {
        most = more_than(most);
      } else if (layout.newest_first && !hours.empty()) {
        written_once.insert(hours.begin(), hours.end());
      } else {
        in_order.finish();
        return report(inference, reader, in_order, most);
      }
    }
  }

  bool read_text_rows(const Layout& layout, RowReader& reader, InOrder& in_order) {
    auto text = open();
    if (!text) return false;
    LineBlocks blocks(std::move(text));
    const TextRead got = logs::read_text_rows(blocks, layout, reader, in_order);
    if (!blocks.failure().empty()) fail(got.line, 1, blocks.failure());
    return got.is_done;
  }

  static bool read_json_rows(const JsonRows& rows, RowReader& reader, InOrder& in_order) {
    Fields fields;
    for (std::size_t row = 0; row < rows.rows(); ++row) {
      rows.row(row, fields);
      const auto reading = reader.read(fields, rows.line(row));
      if (reading ? !in_order.add(*reading) : reader.contradiction().has_value()) return false;
    }
    return true;
  }

  bool read_whole(std::string& text) {
    auto source = open();
    if (!source) return false;
    std::vector<char> piece(1 << 20);
    text.reserve(std::min<std::uint64_t>(file_.bytes, kMostToReserve) + piece.size());
    while (const std::size_t got = source->read(piece)) text.append(piece.data(), got);
    if (!source->failure().empty()) fail(1, 1, source->failure());
    return problems_.empty();
  }

  static Sample sample_of(const JsonRows& rows) {
    Sample sample;
    sample.names = rows.names;
    Fields fields;
    for (std::size_t row = 0; row < std::min(rows.rows(), kInferredRows); ++row) {
      rows.row(row, fields);
      sample.add(fields, rows.line(row));
    }
    return sample;
  }

  static std::optional<Unit> unit_of(const std::string& name) {
    const auto number = number_of("1 " + name, {});
    return number ? number->unit : std::nullopt;
  }

  static Step infer(Inference& inference) {
    inference.layout.first_line = inference.sample.first_line;
    inference.layout.names = inference.sample.names;
    for (const auto step : {infer_time, infer_date_order, infer_where, infer_value,
                            infer_number_style, infer_kind, infer_stamps}) {
      if (auto refusal = step(inference)) return refusal;
    }
    inference.layout.newest_first = goes_back(times_of(inference));
    inference.sample = {};
    return std::nullopt;
  }

  static bool goes_back(const std::vector<RowTime>& times) {
    std::size_t forth = 0, back = 0;
    for (std::size_t i = 1; i < times.size(); ++i) {
      forth += times[i].us > times[i - 1].us;
      back += times[i].us < times[i - 1].us;
    }
    return back > forth;
  }

  void say_delimiter(Inference& inference) const {
    if (options_.delimiter) return;
    const char c = inference.layout.delimiter;
    const std::string name = c == '\t' ? "tabs" : c == ' ' ? "blanks" : std::string("'") + c + "'";
    inference.said.insert(inference.said.begin(),
                          "columns: separated by " + name + " (--delimiter)");
  }

  static LogReport report(const Inference& inference, const RowReader& reader,
                          const InOrder& in_order, Disorder most) {
    LogReport report;
    report.meaning = inference.layout.meaning;
    report.rows = reader.rows();
    report.used = in_order.used();
    report.dropped = reader.dropped();
    if (in_order.same_time() > 0) report.dropped.push_back({"same-time", in_order.same_time(), 0});
    report.inferred = inference.said;
    report.stamps_name_zone = inference.layout.time.names_zone || inference.layout.time.is_utc;
    report.out_of_order = in_order.out_of_order();
    report.sorted_whole = most == Disorder::any;
    return report;
  }

  Problems fail(std::uint64_t line, int column, std::string message) {
    const auto shown = static_cast<int>(std::min<std::uint64_t>(line, kFurthestLine));
    problems_.push_back({{name_, shown, column}, std::move(message)});
    return problems_;
  }

  Problems refused(const Refusal& refusal) { return fail(1, 1, refusal.message); }

  Problems refused(const Refusal& refusal, const Sample& sample, std::string_view text) {
    if (refusal.row >= sample.rows()) return fail(1, 1, refusal.message);
    return fail(sample.line(refusal.row),
                column_in(text, sample.field(refusal.row, refusal.column)), refusal.message);
  }

  // Where a field stands in its line, in characters from 1.
  static int column_in(std::string_view text, std::string_view field) {
    if (field.data() < text.data() || field.data() > text.data() + text.size()) return 1;
    const std::string_view before =
        text.substr(0, static_cast<std::size_t>(field.data() - text.data()));
    const std::string_view line = before.substr(before.rfind('\n') + 1);
    const auto is_first_byte = [](char c) {
      return (static_cast<unsigned char>(c) & 0xc0) != 0x80;
    };
    return static_cast<int>(std::count_if(line.begin(), line.end(), is_first_byte)) + 1;
  }

  const LogFile& file_;
  const LogOptions& options_;
  ReadingSink& sink_;
  const Progress& progress_;
  std::shared_ptr<const std::string> name_;
  Problems problems_;
};

}  // namespace

std::variant<LogReport, std::vector<diag::Diagnostic>> read_log(const LogFile& file,
                                                                const LogOptions& options,
                                                                ReadingSink& sink,
                                                                const Progress& progress) {
  return LogReader(file, options, sink, progress).read();
}

}  // namespace wattweek::logs
