#include "wattweek/calendar/fold.hpp"

#include <algorithm>
#include <cassert>
#include <unordered_map>
#include <utility>

#include "bits.hpp"
#include "day_filters.hpp"
#include "pieces.hpp"

namespace wattweek::calendar {

using std::chrono::days;
using std::chrono::seconds;

namespace {

// One window of a condition or band.
struct WindowRef {
  const model::Window* window = nullptr;
  std::size_t filter = 0;
  std::size_t owner = 0;     // Condition or band.
  std::size_t of_owner = 0;  // Which of the owner's windows.
};

// Calls `visit(begin_s, end_s)` for each part of the day in which the window holds.
template <class Visit>
void visit_spans(const model::Window& window, bool today, bool yesterday, Visit visit) {
  for (const model::HourSpan& span : window.hours) {
    const std::int64_t start = std::int64_t{span.start_min} * 60;
    const std::int64_t end = std::int64_t{span.end_min} * 60;
    if (!span.crosses_midnight()) {
      if (today) visit(start, end);
      continue;
    }
    if (today) visit(start, std::int64_t{86400});
    if (yesterday) visit(std::int64_t{0}, end);
  }
}

}  // namespace

// Walks the local days once and cuts each distinct kind of day once.
class Folder {
 public:
  Folder(const FoldInput& input, const ZoneRules& zone) : zone_(zone) {
    fold_.months = calendar_months(zone, input.start, input.months);
    fold_.bands = std::max<std::size_t>(1, input.bands.size());
    add_windows(input.conditions, conditions_, fold_.condition_windows_ever_hold);
    add_windows(input.bands, bands_, fold_.band_windows_ever_hold);
    has_bands_ = !input.bands.empty();
    fold_.words_ = words_for(input.conditions.size());
  }

  Fold run() {
    for (const Piece& piece : pieces_of(fold_.months, zone_)) {
      const auto first = std::chrono::floor<days>(piece.begin);
      for (model::CivilDay day = first; LocalTime{day} < piece.end; day += days{1}) {
        add_day(part_of(piece, day), piece.month);
      }
    }
    return std::move(fold_);
  }

 private:
  void add_windows(const std::vector<Condition>& owners, std::vector<WindowRef>& refs,
                   std::vector<std::vector<bool>>& ever_hold) {
    for (std::size_t o = 0; o < owners.size(); ++o) {
      const Condition& owner = owners[o];
      ever_hold.emplace_back(owner.windows.size(), false);
      for (std::size_t w = 0; w < owner.windows.size(); ++w) {
        refs.push_back({owner.windows[w], filters_.add(owner, *owner.windows[w]), o, w});
      }
    }
  }

  void add_day(const DayPart& part, std::uint32_t month) {
    filters_.move_to(part.day);
    if (!part.whole()) {
      count(cut(part), month);
      return;
    }
    const auto [known, is_new] = pattern_of_key_.try_emplace(filters_.key(), 0);
    if (is_new) known->second = cut(part);
    count(known->second, month);
  }

  void count(std::size_t pattern, std::uint32_t month) {
    auto& counts = fold_.patterns[pattern].counts;
    if (counts.empty() || counts.back().month != month) counts.push_back({month, 0});
    ++counts.back().days;
  }

  // Cuts a day at the edges of the windows that hold on it; returns the new pattern's index.
  std::size_t cut(const DayPart& part) {
    find_edges(part);
    const std::size_t stretches = edges_.size() - 1;
    situation_bits_.assign(stretches * fold_.words_, 0);
    bands_at_.assign(stretches, has_bands_ ? kNoBand : 0);
    mark(conditions_, part, fold_.condition_windows_ever_hold,
         [this](std::size_t stretch, std::size_t condition) {
           set_bit(&situation_bits_[stretch * fold_.words_], condition);
         });
    mark(bands_, part, fold_.band_windows_ever_hold, [this](std::size_t stretch, std::size_t band) {
      bands_at_[stretch] = std::min(bands_at_[stretch], static_cast<std::uint32_t>(band));
    });
    fold_.patterns.push_back({LocalTime{part.day} + seconds{part.begin_s}, slices(part), {}});
    return fold_.patterns.size() - 1;
  }

  void find_edges(const DayPart& part) {
    edges_.assign({part.begin_s, part.end_s});
    for (const auto* refs : {&conditions_, &bands_}) {
      for (const WindowRef& ref : *refs) {
        visit_spans(*ref.window, filters_.today(ref.filter), filters_.yesterday(ref.filter),
                    [&](std::int64_t begin, std::int64_t end) {
                      if (begin > part.begin_s && begin < part.end_s) edges_.push_back(begin);
                      if (end > part.begin_s && end < part.end_s) edges_.push_back(end);
                    });
      }
    }
    std::sort(edges_.begin(), edges_.end());
    edges_.erase(std::unique(edges_.begin(), edges_.end()), edges_.end());
  }

  std::size_t edge_index(std::int64_t second) const {
    return static_cast<std::size_t>(std::lower_bound(edges_.begin(), edges_.end(), second) -
                                    edges_.begin());
  }

  template <class Mark>
  void mark(const std::vector<WindowRef>& refs, const DayPart& part,
            std::vector<std::vector<bool>>& ever_hold, Mark mark_stretch) {
    for (const WindowRef& ref : refs) {
      visit_spans(*ref.window, filters_.today(ref.filter), filters_.yesterday(ref.filter),
                  [&](std::int64_t begin, std::int64_t end) {
                    const std::size_t from = edge_index(std::max(begin, part.begin_s));
                    const std::size_t to = edge_index(std::min(end, part.end_s));
                    if (from < to) ever_hold[ref.owner][ref.of_owner] = true;
                    for (std::size_t s = from; s < to; ++s) mark_stretch(s, ref.owner);
                  });
    }
  }

  // The stretches as slices, neighbours that do not differ joined.
  std::vector<Slice> slices(const DayPart& part) {
    std::vector<Slice> result;
    for (std::size_t s = 0; s + 1 < edges_.size(); ++s) {
      if (bands_at_[s] == kNoBand && !fold_.first_uncovered) {
        fold_.first_uncovered = LocalTime{part.day} + seconds{edges_[s]};
      }
      const Slice slice{edges_[s + 1] - edges_[s], bands_at_[s], situation_of(s)};
      if (!result.empty() && result.back().band == slice.band &&
          result.back().situation == slice.situation) {
        result.back().seconds += slice.seconds;
      } else {
        result.push_back(slice);
      }
    }
    return result;
  }

  std::uint32_t situation_of(std::size_t stretch) {
    if (fold_.words_ == 0) return 0;
    const auto* bits = &situation_bits_[stretch * fold_.words_];
    scratch_.assign(bits, bits + fold_.words_);
    const auto next = static_cast<std::uint32_t>(situation_of_bits_.size());
    const auto [known, is_new] = situation_of_bits_.try_emplace(scratch_, next);
    if (is_new) fold_.bits_.insert(fold_.bits_.end(), scratch_.begin(), scratch_.end());
    return known->second;
  }

  const ZoneRules& zone_;
  Fold fold_;
  bool has_bands_ = false;
  DayFilters filters_;
  std::vector<WindowRef> conditions_;
  std::vector<WindowRef> bands_;
  std::unordered_map<Words, std::size_t, WordsHash> pattern_of_key_;
  std::unordered_map<Words, std::uint32_t, WordsHash> situation_of_bits_;

  std::vector<std::int64_t> edges_;  // Of the day being cut, in seconds since midnight.
  Words situation_bits_;
  std::vector<std::uint32_t> bands_at_;
  Words scratch_;
};

Fold fold(const FoldInput& input, const ZoneRules& zone) { return Folder(input, zone).run(); }

LocalTime first_time_of(const Fold& folded, const std::vector<bool>& marked_situations) {
  std::optional<LocalTime> first;
  for (const DayPattern& pattern : folded.patterns) {
    LocalTime at = pattern.first;
    for (const Slice& slice : pattern.slices) {
      if (marked_situations[slice.situation] && (!first || at < *first)) first = at;
      at += seconds{slice.seconds};
    }
  }
  assert(first && "the situation occurs");
  return first.value_or(LocalTime{});
}

std::vector<std::int64_t> seconds_by_situation(const Fold& folded) {
  std::vector<std::int64_t> sums(folded.situations(), 0);
  for (const DayPattern& pattern : folded.patterns) {
    std::int64_t occurrences = 0;
    for (const DayPattern::Count& count : pattern.counts) occurrences += count.days;
    for (const Slice& slice : pattern.slices) sums[slice.situation] += slice.seconds * occurrences;
  }
  return sums;
}

std::vector<std::int64_t> seconds_by_cell(const Fold& folded) {
  return seconds_by_cell_and_group(folded, std::vector<std::uint32_t>(folded.situations(), 0), 1);
}

std::vector<std::int64_t> seconds_by_cell_and_group(const Fold& folded,
                                                    const std::vector<std::uint32_t>& group_of,
                                                    std::size_t groups) {
  const std::size_t cells = folded.cells();
  std::vector<std::int64_t> sums(groups * cells, 0);
  for (const DayPattern& pattern : folded.patterns) {
    for (const Slice& slice : pattern.slices) {
      std::int64_t* of_group = &sums[group_of[slice.situation] * cells];
      for (const DayPattern::Count& count : pattern.counts) {
        of_group[folded.cell(count.month, slice.band)] += slice.seconds * count.days;
      }
    }
  }
  return sums;
}

}  // namespace wattweek::calendar
