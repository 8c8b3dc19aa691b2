#include "wattweek/calendar/fold.hpp"

#include <algorithm>
#include <cassert>
#include <unordered_map>
#include <utility>

namespace wattweek::calendar {

using std::chrono::days;
using std::chrono::seconds;

namespace {

using Words = std::vector<std::uint64_t>;

constexpr std::size_t words_for(std::size_t bits) { return (bits + 63) / 64; }
bool test(const Words& words, std::size_t bit) { return (words[bit / 64] >> (bit % 64) & 1U) != 0; }
void set(std::uint64_t* words, std::size_t bit) { words[bit / 64] |= std::uint64_t{1} << (bit % 64); }

struct WordsHash {
  std::size_t operator()(const Words& words) const {
    std::uint64_t hash = 0x9E3779B97F4A7C15U;
    for (const std::uint64_t word : words) {
      hash = (hash ^ word) * 0xFF51AFD7ED558CCDU;
      hash ^= hash >> 32U;
    }
    return static_cast<std::size_t>(hash);
  }
};

// What decides on which governing days a window can hold: all of it but the hours.
struct DayFilter {
  const model::Window* window = nullptr;
  const std::vector<model::DateSpan>* except = nullptr;
  const model::Holidays* holidays = nullptr;

  bool same_as(const DayFilter& other) const {
    return window->days == other.window->days && window->months == other.window->months &&
           window->dates == other.window->dates && *except == *other.except &&
           holidays == other.holidays;
  }
};

std::chrono::weekday weekday_as_counted(model::CivilDay day, const model::Holidays* holidays) {
  if (holidays != nullptr && holidays->count_as &&
      std::binary_search(holidays->dates.begin(), holidays->dates.end(), day)) {
    return *holidays->count_as;
  }
  return std::chrono::weekday{day};
}

bool passes(const DayFilter& filter, model::CivilDay day, unsigned month_bit) {
  const model::Window& window = *filter.window;
  if (!window.months[month_bit]) return false;
  if (window.dates && !window.dates->contains(day)) return false;
  if (!window.days[model::weekday_bit(weekday_as_counted(day, filter.holidays))]) return false;
  return std::none_of(filter.except->begin(), filter.except->end(),
                      [day](const model::DateSpan& span) { return span.contains(day); });
}

// One window of a condition or band.
struct WindowRef {
  const model::Window* window = nullptr;
  std::size_t filter = 0;
  std::size_t owner = 0;      // Condition or band.
  std::size_t of_owner = 0;   // Which of the owner's windows.
};

// A run of local time under one UTC offset within one month.
struct Piece {
  std::uint32_t month = 0;
  LocalTime begin;
  LocalTime end;
};

std::vector<Piece> pieces_of(const std::vector<Month>& months, const ZoneRules& zone) {
  std::vector<Piece> pieces;
  for (std::size_t m = 0; m < months.size(); ++m) {
    Instant begin = months[m].begin;
    auto change = std::upper_bound(zone.changes.begin(), zone.changes.end(), begin,
                                   [](Instant i, const OffsetChange& c) { return i < c.at; });
    while (begin < months[m].end) {
      const Instant end =
          change == zone.changes.end() ? months[m].end : std::min(change->at, months[m].end);
      const LocalTime shown = local_time(zone, begin);
      pieces.push_back({static_cast<std::uint32_t>(m), shown, shown + (end - begin)});
      begin = end;
      if (change != zone.changes.end()) ++change;
    }
  }
  return pieces;
}

// The part of a local day that a piece covers, in seconds since its midnight.
struct DayPart {
  model::CivilDay day;
  std::int64_t begin_s = 0;
  std::int64_t end_s = 86400;

  bool whole() const { return begin_s == 0 && end_s == 86400; }
};

DayPart part_of(const Piece& piece, model::CivilDay day) {
  const LocalTime midnight{day};
  const auto begin = std::max(piece.begin, midnight) - midnight;
  const auto end = std::min(piece.end, midnight + days{1}) - midnight;
  return {day, begin.count(), end.count()};
}

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
    note_midnight_crossings();
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
        const DayFilter filter{owner.windows[w], &owner.except, owner.holidays};
        refs.push_back({owner.windows[w], filter_index(filter), o, w});
      }
    }
  }

  std::size_t filter_index(const DayFilter& filter) {
    const auto same = std::find_if(filters_.begin(), filters_.end(),
                                   [&](const DayFilter& f) { return f.same_as(filter); });
    if (same != filters_.end()) return static_cast<std::size_t>(same - filters_.begin());
    filters_.push_back(filter);
    return filters_.size() - 1;
  }

  // Whether a filter passed yesterday matters only where one of its windows reaches into today.
  void note_midnight_crossings() {
    reaches_over_.assign(words_for(filters_.size()), 0);
    for (const auto* refs : {&conditions_, &bands_}) {
      for (const WindowRef& ref : *refs) {
        const auto& hours = ref.window->hours;
        if (std::any_of(hours.begin(), hours.end(),
                        [](const model::HourSpan& span) { return span.crosses_midnight(); })) {
          set(reaches_over_.data(), ref.filter);
        }
      }
    }
  }

  void add_day(const DayPart& part, std::uint32_t month) {
    note_filters(part.day);
    if (!part.whole()) {
      count(cut(part), month);
      return;
    }
    const auto [known, is_new] = pattern_of_key_.try_emplace(key_, 0);
    if (is_new) known->second = cut(part);
    count(known->second, month);
  }

  // Which filters pass today and, where it matters, yesterday.
  void note_filters(model::CivilDay day) {
    const std::size_t words = words_for(filters_.size());
    if (noted_day_ && *noted_day_ == day) return;
    if (noted_day_ && *noted_day_ + days{1} == day) {
      yesterday_.swap(today_);
    } else {
      filter_bits(day - days{1}, yesterday_);
    }
    filter_bits(day, today_);
    noted_day_ = day;
    key_ = today_;
    for (std::size_t w = 0; w < words; ++w) key_.push_back(yesterday_[w] & reaches_over_[w]);
  }

  void filter_bits(model::CivilDay day, Words& bits) const {
    bits.assign(words_for(filters_.size()), 0);
    const std::chrono::year_month_day date{day};
    const unsigned month_bit = static_cast<unsigned>(date.month()) - 1;
    for (std::size_t f = 0; f < filters_.size(); ++f) {
      if (passes(filters_[f], day, month_bit)) set(bits.data(), f);
    }
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
           set(&situation_bits_[stretch * fold_.words_], condition);
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
        visit_spans(*ref.window, test(today_, ref.filter), test(yesterday_, ref.filter),
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
      visit_spans(*ref.window, test(today_, ref.filter), test(yesterday_, ref.filter),
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
  std::vector<DayFilter> filters_;
  std::vector<WindowRef> conditions_;
  std::vector<WindowRef> bands_;
  Words reaches_over_;  // By filter: a window of it crosses midnight.

  std::optional<model::CivilDay> noted_day_;
  Words today_;
  Words yesterday_;
  Words key_;
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
