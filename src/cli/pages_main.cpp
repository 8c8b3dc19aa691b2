// Writes the man page and the completions of the shells below the folder that is named, each
// whole and where an installation has it below `share`.

#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <string>

#include "cli/completions.hpp"
#include "cli/man_page.hpp"

namespace {

namespace fs = std::filesystem;

void write(const fs::path& path, const std::string& text) {
  fs::create_directories(path.parent_path());
  const fs::path unfinished = path.string() + ".new";
  std::ofstream out(unfinished, std::ios::binary);
  out << text;
  out.close();
  if (!out) throw fs::filesystem_error("cannot be written", path, {});
  fs::rename(unfinished, path);
}

void write_all(const fs::path& share) {
  using namespace wattweek::cli;
  write(share / "man/man1/wattweek.1", man_page());
  write(share / "bash-completion/completions/wattweek", bash_completion());
  write(share / "zsh/site-functions/_wattweek", zsh_completion());
  write(share / "fish/vendor_completions.d/wattweek.fish", fish_completion());
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fputs("usage: wattweek_pages FOLDER\n", stderr);
    return 2;
  }
  try {
    write_all(argv[1]);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "wattweek_pages: error: %s\n", error.what());
    return 1;
  }
  return 0;
}
