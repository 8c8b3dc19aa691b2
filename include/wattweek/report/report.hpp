#pragma once
// Start here: results as text that people and programs read. No files, no streams, no
// computing: everything shown was reckoned before.

#include <string>
#include <vector>

#include "wattweek/decide/assessment.hpp"
#include "wattweek/decide/quick.hpp"
#include "wattweek/decide/several_tariffs.hpp"
#include "wattweek/decide/week.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::report {

/// Which question the output answers.
enum class Scope {
  estimate,  ///< Each candidate by itself.
  compare,   ///< The same, and each against the baseline.
};

/// JSON of the format `wattweek-estimate-1`: full double precision, keys in a fixed order,
/// the same bytes for the same results. See docs/json.md.
std::string json(const model::Study& study, const decide::Assessment& assessment, Scope scope);

/// How plain text is laid out.
struct Style {
  int columns = 80;       ///< The widest line, counted in characters.
  bool emphasis = false;  ///< Headings in bold, by the terminal's escape sequences (ECMA-48).
};

/// The candidates side by side, where and when each one's energy goes, what a little more costs,
/// what is saved, and every note as a sentence. `weeks` is what `decide::weeks` returns; empty: no
/// pictures of the week.
std::string text(const model::Study& study, const decide::Assessment& assessment,
                 const std::vector<decide::Week>& weeks, Scope scope, const Style& style);

/// The same in Markdown, to be pasted under an article.
std::string markdown(const model::Study& study, const decide::Assessment& assessment,
                     const std::vector<decide::Week>& weeks, Scope scope);

/// The household's paper bill of one month, line by line, without and with each candidate.
/// \pre `month` is an index into the assessment's months.
std::string month_bills_text(const model::Study& study, const decide::Assessment& assessment,
                             std::size_t month, const Style& style);

/// The same in Markdown.
std::string month_bills_markdown(const model::Study& study, const decide::Assessment& assessment,
                                 std::size_t month);

/// One row for each candidate, RFC 4180. Text cells that a spreadsheet would take for a formula are
/// neutralised. Notes about the study as a whole stand in every row.
std::string csv(const model::Study& study, const decide::Assessment& assessment, Scope scope);

/// One study under several contracts: a table of contracts by candidates, each row in its currency
/// and with the best candidate named, what changes from contract to contract, and every note, with
/// the contracts that it holds under.
/// \pre `all` is what `several` was made of.
std::string tariffs_text(const std::vector<decide::UnderTariff>& all,
                         const decide::SeveralTariffs& several, const Style& style);

/// The same in Markdown.
std::string tariffs_markdown(const std::vector<decide::UnderTariff>& all,
                             const decide::SeveralTariffs& several);

/// The same as one row for each contract and candidate, otherwise as `csv`.
std::string tariffs_csv(const std::vector<decide::UnderTariff>& all,
                        const decide::SeveralTariffs& several);

/// JSON of the format `wattweek-tariffs-1`.
std::string tariffs_json(const std::vector<decide::UnderTariff>& all,
                         const decide::SeveralTariffs& several);

/// JSON of the format `wattweek-quick-1`. An empty `currency` (none was named) is null.
std::string quick_json(const decide::QuickResult& result, const std::string& currency);

/// The same as sentences, with a caution on measuring. An empty `currency` leaves the amounts
/// without a code.
std::string quick_text(const decide::QuickInput& input, const decide::QuickResult& result,
                       const std::string& currency, const Style& style);

}  // namespace wattweek::report
