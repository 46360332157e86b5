# layer(NAME USES … LINK … SOURCES …): one library a folder of src/. USES names the layers it may include, LINK outside libraries.
function(layer name)
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "USES;LINK;SOURCES")
  add_library(${name} STATIC ${arg_SOURCES})
  target_include_directories(${name} PUBLIC ${PROJECT_SOURCE_DIR}/src)
  target_link_libraries(${name} PUBLIC ${arg_USES} PRIVATE strict kind ${arg_LINK})
  target_link_libraries(${name} INTERFACE kind)
endfunction()

# layer_test(NAME USES … LINK … SOURCES …): the doctest program of one folder of tests/, run by CTest.
function(layer_test name)
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "USES;LINK;SOURCES")
  add_executable(${name}_test ${arg_SOURCES} ${PROJECT_SOURCE_DIR}/tests/support/main.cpp)
  target_include_directories(${name}_test PRIVATE ${PROJECT_SOURCE_DIR}/tests)
  target_link_libraries(${name}_test PRIVATE ${arg_USES} ${arg_LINK} strict kind doctest::doctest)
  target_compile_definitions(${name}_test PRIVATE TESTS_DIR="${PROJECT_SOURCE_DIR}/tests" SOURCE_DIR="${PROJECT_SOURCE_DIR}")
  add_test(NAME ${name} COMMAND ${name}_test)
endfunction()
