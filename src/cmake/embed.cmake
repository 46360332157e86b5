# embed(TARGET NAMESPACE FILES…): the text of each file as `inline constexpr char NAME_EXT[]` in <embedded/NAMESPACE.hpp>.
# The file is also its own script: run by `cmake -P` it writes that header.
if(CMAKE_SCRIPT_MODE_FILE)
  set(text "// Made from the files named below; change those.\n#pragma once\n\nnamespace ${NAMESPACE} {\n")
  string(REPLACE "," ";" FILES "${FILES}")
  foreach(file IN LISTS FILES)
    get_filename_component(name ${file} NAME)
    string(REPLACE "." "_" symbol ${name})
    file(READ ${file} body)
    string(APPEND text "\n// ${name}\ninline constexpr char ${symbol}[] = R\"embedded(${body})embedded\";\n")
  endforeach()
  file(WRITE ${OUT} "${text}\n}  // namespace ${NAMESPACE}\n")
  return()
endif()

set(EMBED_SCRIPT ${CMAKE_CURRENT_LIST_FILE})
function(embed target namespace)
  set(out ${CMAKE_CURRENT_BINARY_DIR}/embedded/embedded/${namespace}.hpp)
  string(REPLACE ";" "," joined "${ARGN}")
  add_custom_command(OUTPUT ${out} DEPENDS ${ARGN} ${EMBED_SCRIPT}
    COMMAND ${CMAKE_COMMAND} -DNAMESPACE=${namespace} -DFILES=${joined} -DOUT=${out} -P ${EMBED_SCRIPT} VERBATIM)
  target_sources(${target} PRIVATE ${out})
  target_include_directories(${target} PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/embedded)
endfunction()
