# What every target of ours is compiled with. `strict` holds the warnings, `kind` what the build kind adds.
add_library(strict INTERFACE)
target_compile_options(strict INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wshadow -Wold-style-cast -Wdouble-promotion
  -Wswitch-enum -Wnon-virtual-dtor -Woverloaded-virtual
  # Designated initialisers leave members at their stated default on purpose (every member has one).
  -Wno-missing-field-initializers)

# On the CI machine nobody steps through the program: lines for a stack trace are enough, and take a third less time to compile.
set(debug_info -g)
if("$ENV{CI}" STREQUAL "true")
  set(debug_info -g1)
endif()

add_library(kind INTERFACE)
if(GRAFTSIDE_KIND STREQUAL "debug")
  target_compile_options(kind INTERFACE -O1 ${debug_info})
elseif(GRAFTSIDE_KIND STREQUAL "sanitize")
  target_compile_options(kind INTERFACE -O1 ${debug_info} -fno-omit-frame-pointer -fsanitize=address,undefined -fno-sanitize-recover=all)
  # SHORT_WALKS: sanitizers look at the code, not at what it shows, and take many times as long. Tests that go through every view or
  # every call of the disk go through a part; the other kinds go through all.
  target_compile_definitions(kind INTERFACE _GLIBCXX_ASSERTIONS SHORT_WALKS)
  target_link_options(kind INTERFACE -fsanitize=address,undefined)
elseif(GRAFTSIDE_KIND STREQUAL "release")
  target_compile_options(kind INTERFACE -O2)
else()
  message(FATAL_ERROR "GRAFTSIDE_KIND is ${GRAFTSIDE_KIND}; allowed: debug, sanitize, release")
endif()
