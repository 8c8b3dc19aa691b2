#pragma once
// What a command leaves behind: everything it wants to print, and its exit code.

#include <array>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "wattweek/diag/diagnostic.hpp"

namespace wattweek::cli {

inline constexpr int kDone = 0;
inline constexpr int kFailed = 1;      ///< Neither the command line nor an input file is to blame.
inline constexpr int kWrongInput = 2;  ///< The command line or an input file is wrong.

struct ExitCode {
  int code;
  std::string_view meaning;
};

/// All that there are, as help and the man page tell them.
inline constexpr std::array<ExitCode, 3> kExitCodes = {
    {{kDone, "done"},
     {kWrongInput, "the command line or an input file is wrong"},
     {kFailed, "all else"}}};

/// Takes a piece of output; false where it cannot be written.
using Write = std::function<bool(const std::string& piece)>;

struct Outcome {
  int exit_code = kDone;
  std::string out;    ///< For standard output; empty with `kWrongInput`.
  std::string err{};  ///< For standard error.
  /// Where set: writes what follows `out`, too large to be held whole, piece by piece. Returns why
  /// it could not be reckoned to its end; nothing where it was.
  std::function<std::string(const Write& write)> rest{};
};

/// `wattweek: error: MESSAGE`.
std::string error_line(std::string_view message);

/// A command line that is wrong, or a file that cannot be read.
Outcome refused(std::string_view message);

/// Files that are wrong: each mistake on a line; of more than 50 only the number of the rest.
Outcome refused(std::vector<diag::Diagnostic> problems);

/// `; did you mean 'WORD'?` where an accepted word is near, and the accepted words, of many only
/// the first: `; did you mean 'json'? Accepted are text, json`.
std::string suggestion(std::string_view found, const std::vector<std::string_view>& accepted);

}  // namespace wattweek::cli
