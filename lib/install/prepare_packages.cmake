# Read by CPack between the install into its own folders, one a component, and the packing: makes of them what Debian expects.
# A plain install leaves all of this out, since its tree can be moved and is nobody's package.
cmake_minimum_required(VERSION 3.25)

# Without these CPack would leave out what the packages depend on, and say so in passing.
foreach(tool dpkg-shlibdeps file readelf strip gzip)
  find_program(found_${tool} ${tool})
  if(NOT found_${tool})
    message(FATAL_ERROR "Packing for Debian needs ${tool}; install dpkg-dev, file, binutils and gzip.")
  endif()
endforeach()

function(run)
  execute_process(COMMAND ${ARGV} COMMAND_ERROR_IS_FATAL ANY)
endfunction()
function(pack_by_gzip file)
  run(gzip -9n ${file})  # n: without a name and a date
endfunction()

foreach(component IN LISTS CPACK_COMPONENTS_ALL)
  string(TOUPPER ${component} variable)
  set(package ${CPACK_DEBIAN_${variable}_PACKAGE_NAME})
  set(usr ${CPACK_TEMPORARY_DIRECTORY}/${component}/usr)

  # The loader finds the libraries by itself. file(RPATH_REMOVE) is what CMake's own install scripts call; there is no documented
  # command that does it without another tool.
  file(GLOB loaded ${usr}/bin/* ${usr}/lib/*/lib*.so.*.*.* ${usr}/lib/*/letterlode/*.so)
  foreach(file IN LISTS loaded)
    file(RPATH_REMOVE FILE ${file})
    run(strip --remove-section=.comment --remove-section=.note ${file})
  endforeach()
  file(GLOB archives ${usr}/lib/*/*.a)
  foreach(file IN LISTS archives)
    run(strip --strip-debug --enable-deterministic-archives --remove-section=.comment --remove-section=.note ${file})
  endforeach()

  # This tree will not be moved, and what lies below /usr is left out of a compiler's flags only where it is named so.
  file(GLOB modules ${usr}/lib/*/pkgconfig/*.pc)
  foreach(file IN LISTS modules)
    file(READ ${file} text)
    string(REGEX REPLACE "^prefix=[^\n]*" "prefix=/usr" text "${text}")
    file(WRITE ${file} "${text}")
  endforeach()

  # Debian's zsh reads what packages bring from a folder of its own.
  if(EXISTS ${usr}/share/zsh/site-functions)
    file(RENAME ${usr}/share/zsh/site-functions ${usr}/share/zsh/vendor-completions)
  endif()

  set(documents ${usr}/share/doc/${package})
  file(MAKE_DIRECTORY ${documents})
  file(COPY ${CMAKE_CURRENT_LIST_DIR}/copyright ${CMAKE_CURRENT_LIST_DIR}/changelog DESTINATION ${documents})
  file(GLOB packed ${documents}/changelog ${usr}/share/man/man1/*.1)
  foreach(file IN LISTS packed)
    pack_by_gzip(${file})
  endforeach()

  # Whoever unpacked the source, and whenever.
  run(chmod -R u=rwX,go=rX ${CPACK_TEMPORARY_DIRECTORY}/${component})
  run(find ${CPACK_TEMPORARY_DIRECTORY}/${component} -exec touch -h -d @$ENV{SOURCE_DATE_EPOCH} {} +)
endforeach()
