# For whoever works on this: cmake -C tests/support/dev.cmake -S . -B build/dev -G Ninja
# Rooms compiled whole and lightly optimised, with the tests, and warnings as CI takes them.
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
set(CMAKE_UNITY_BUILD_BATCH_SIZE 100 CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE -O1 CACHE STRING "")
set(CMAKE_COMPILE_WARNING_AS_ERROR ON CACHE BOOL "")
set(INCHWRIGHT_TESTS ON CACHE BOOL "")
