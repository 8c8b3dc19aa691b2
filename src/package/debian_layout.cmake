# Runs in each package's folder before it is packed: what Debian wants in another place or form.
set(share ${CPACK_TEMPORARY_INSTALL_DIRECTORY}/*${CPACK_PACKAGING_INSTALL_PREFIX}/share)
file(GLOB pages ${share}/man/man1/*.1)
foreach(page IN LISTS pages)
  execute_process(COMMAND gzip -9n ${page} COMMAND_ERROR_IS_FATAL ANY)
endforeach()

# Debian's zsh reads packages' completions from a folder of its own.
file(GLOB completions ${share}/zsh/site-functions/_*)
foreach(completion IN LISTS completions)
  cmake_path(GET completion PARENT_PATH folder)
  cmake_path(GET folder PARENT_PATH zsh)
  file(RENAME ${folder} ${zsh}/vendor-completions)
endforeach()
