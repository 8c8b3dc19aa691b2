#include <csignal>
#include <exception>

#include "cli/console.hpp"
#include "cli/run.hpp"

namespace {

using wattweek::cli::Outcome;

Outcome outcome_of(const std::vector<std::string>& words) {
  try {
    return wattweek::cli::run(words, wattweek::cli::output_style());
  } catch (const std::bad_alloc&) {
    return {wattweek::cli::kFailed, "", wattweek::cli::error_line("out of memory")};
  } catch (const std::exception& error) {
    return {wattweek::cli::kFailed, "", wattweek::cli::error_line(error.what())};
  }
}

/// Why not all of it was written; nothing where it was.
std::string write_rest(const Outcome& outcome) {
  std::string unwritten;
  const std::string unreckoned = outcome.rest([&unwritten](const std::string& piece) {
    unwritten = wattweek::cli::write_output(piece);
    return unwritten.empty();
  });
  return unwritten.empty() ? unreckoned : unwritten;
}

}  // namespace

int main(int argc, char** argv) {
  // A reader that has gone away is told by the failing write, not by a signal.
  std::signal(SIGPIPE, SIG_IGN);
  const Outcome outcome = outcome_of({argv + (argc > 0 ? 1 : 0), argv + argc});
  wattweek::cli::write_error(outcome.err);
  std::string problem = wattweek::cli::write_output(outcome.out);
  if (problem.empty() && outcome.rest) problem = write_rest(outcome);
  if (problem.empty()) return outcome.exit_code;
  wattweek::cli::write_error(wattweek::cli::error_line(problem));
  return wattweek::cli::kFailed;
}
