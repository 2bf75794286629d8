# Writes the schema WHAT that PROGRAM gives to OUT.
execute_process(COMMAND ${CMAKE_COMMAND} -E env ASAN_OPTIONS=detect_leaks=0 ${PROGRAM} schema ${WHAT} OUTPUT_FILE ${OUT} RESULT_VARIABLE code)
if(code)
  file(REMOVE ${OUT})
  message(FATAL_ERROR "burrowline schema ${WHAT} ended with ${code}")
endif()
