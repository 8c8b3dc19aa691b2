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

}  // namespace

int main(int argc, char** argv) {
  // A reader that has gone away is told by the failing write, not by a signal.
  std::signal(SIGPIPE, SIG_IGN);
  const Outcome outcome = outcome_of({argv + (argc > 0 ? 1 : 0), argv + argc});
  wattweek::cli::write_error(outcome.err);
  const std::string problem = wattweek::cli::write_output(outcome.out);
  if (problem.empty()) return outcome.exit_code;
  wattweek::cli::write_error(wattweek::cli::error_line(problem));
  return wattweek::cli::kFailed;
}
