# Packs the build, unpacks both packages into one folder, and uses what is in it as people would.
#   cmake -D BUILD=... -D ROOT=... -D STUDY=... -P deb.cmake
function(run)
  execute_process(COMMAND ${ARGV} OUTPUT_VARIABLE said ERROR_VARIABLE said COMMAND_ERROR_IS_FATAL ANY)
  set(said ${said} PARENT_SCOPE)
endfunction()

file(REMOVE_RECURSE ${ROOT})
file(MAKE_DIRECTORY ${ROOT})
run(${CMAKE_CPACK_COMMAND} --config ${BUILD}/CPackConfig.cmake -G DEB -B ${ROOT}/packages)
file(GLOB packages ${ROOT}/packages/*.deb)
list(LENGTH packages count)
if(NOT count EQUAL 2)
  message(FATAL_ERROR "expected two packages: ${packages}")
endif()
foreach(package IN LISTS packages)
  run(dpkg-deb --extract ${package} ${ROOT})
endforeach()

foreach(file IN ITEMS
    share/man/man1/wattweek.1.gz
    share/bash-completion/completions/wattweek
    share/zsh/vendor-completions/_wattweek
    share/fish/vendor_completions.d/wattweek.fish
    share/doc/wattweek/copyright
    share/doc/libwattweek-dev/copyright
    include/wattweek/version.hpp)
  if(NOT EXISTS ${ROOT}/usr/${file})
    message(FATAL_ERROR "no package has ${file}")
  endif()
endforeach()

run(gzip --test ${ROOT}/usr/share/man/man1/wattweek.1.gz)
run(${ROOT}/usr/bin/wattweek new --list)
if(NOT said MATCHES "shipped:palm-size-box\n.*shipped:two-rate-night\n")
  message(FATAL_ERROR "shipped files are not found: ${said}")
endif()
run(${ROOT}/usr/bin/wattweek compare ${ROOT}/usr/share/doc/wattweek/docs/examples/ostrawick.toml)
if(NOT said MATCHES "^Ostrawick\n")
  message(FATAL_ERROR "the packed demo does not run: ${said}")
endif()
