# A static library hands its own dependencies on to whoever links it.
include(CMakeFindDependencyMacro)
find_dependency(Threads)
find_dependency(Eigen3 3.4 NO_MODULE)
find_dependency(absl)
find_dependency(tomlplusplus 3.3)
find_dependency(fmt 9)
find_dependency(nlohmann_json 3.11)
include(${CMAKE_CURRENT_LIST_DIR}/wattweek-targets.cmake)
