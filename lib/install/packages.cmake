# Debian's packages, made by CPack from a build tree: cmake --build FOLDER --target package. They are left in FOLDER/packages.
#   libletterlode0.1      the core; a game or a server needs nothing else
#   libletterlode-art0.1  the artwork library, with all that draws
#   libletterlode-dev     what a program is built with
#   letterlode            the program
# prepare_packages.cmake makes of an installed tree what Debian expects, finish_packages.cmake adds what CPack cannot say, and
# tests/consumers/packages.sh judges the result.

# Version, maintainer and date stand in the changelog, as in every package of Debian.
file(STRINGS ${CMAKE_CURRENT_LIST_DIR}/changelog changelog)
list(GET changelog 0 first_line)
list(FILTER changelog INCLUDE REGEX "^ -- ")
list(GET changelog 0 signature)
if(NOT first_line MATCHES "^letterlode \\(([^)]+)\\)" OR NOT CMAKE_MATCH_1 STREQUAL PROJECT_VERSION)
  message(FATAL_ERROR "lib/install/changelog begins with another version than ${PROJECT_VERSION}: ${first_line}")
endif()
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${CMAKE_CURRENT_LIST_DIR}/changelog)
if(NOT signature MATCHES "^ -- (.+>)  (.+)$")
  message(FATAL_ERROR "lib/install/changelog is signed otherwise than ' -- NAME <ADDRESS>  DATE': ${signature}")
endif()
set(CPACK_DEBIAN_PACKAGE_MAINTAINER "${CMAKE_MATCH_1}")
execute_process(COMMAND date -d "${CMAKE_MATCH_2}" +%s OUTPUT_VARIABLE changelog_date OUTPUT_STRIP_TRAILING_WHITESPACE
  COMMAND_ERROR_IS_FATAL ANY)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME letterlode)
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "")  # each package has its own
set(CPACK_PACKAGE_DIRECTORY ${PROJECT_BINARY_DIR}/packages)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_COMPRESSION_TYPE none)
set(CPACK_COMPONENTS_ALL library art_library development program)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_COMPONENTS_GROUPING IGNORE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SOURCE letterlode)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS_PRIVATE_DIRS ${PROJECT_BINARY_DIR}/lib)
set(CPACK_DEBIAN_ENABLE_COMPONENT_DEPENDS ON)
configure_file(${CMAKE_CURRENT_LIST_DIR}/packages_date.cmake.in ${PROJECT_BINARY_DIR}/package/packages_date.cmake @ONLY)
set(CPACK_PROJECT_CONFIG_FILE ${PROJECT_BINARY_DIR}/package/packages_date.cmake)
set(CPACK_PRE_BUILD_SCRIPTS ${CMAKE_CURRENT_LIST_DIR}/prepare_packages.cmake)
set(CPACK_POST_BUILD_SCRIPTS ${CMAKE_CURRENT_LIST_DIR}/finish_packages.cmake)

set(what_it_is "letterlode turns a list of words into a word-grid puzzle that is proved right:
every word can be found once, and nothing that should not be read can be.")

# The core library and the one that draws; whoever links the first must not get what the second needs.
foreach(component LIBRARY ART_LIBRARY)
  set(CPACK_DEBIAN_${component}_PACKAGE_SECTION libs)
  set(CPACK_DEBIAN_${component}_PACKAGE_CONTROL_EXTRA ${CMAKE_CURRENT_LIST_DIR}/triggers)
endforeach()
set(CPACK_DEBIAN_PACKAGE_GENERATE_SHLIBS ON)
set(CPACK_DEBIAN_PACKAGE_GENERATE_SHLIBS_POLICY ">=")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME libletterlode${abi})
set(CPACK_DEBIAN_LIBRARY_DESCRIPTION "word-grid puzzles, made and audited: the library
${what_it_is}
.
This is its engine, for programs in C and C++. It uses no font and draws
nothing.")
set(CPACK_DEBIAN_ART_LIBRARY_PACKAGE_NAME libletterlode-art${abi})
set(CPACK_COMPONENT_ART_LIBRARY_DEPENDS library)
set(CPACK_DEBIAN_ART_LIBRARY_DESCRIPTION "word-grid puzzles, drawn to be cut and printed: the library
${what_it_is}
.
This is its other library, which draws puzzles at true size for cutting and
lays out pages for printing.")

set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libletterlode-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_COMPONENT_DEVELOPMENT_DEPENDS library art_library)
list(JOIN static_packages ", " CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS)
set(CPACK_DEBIAN_DEVELOPMENT_DESCRIPTION "word-grid puzzles: headers and static libraries
${what_it_is}
.
This package is for those who build programs with its libraries, by CMake or
by pkg-config. It describes the JSON that is read and written, too.")

set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME letterlode)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION graphics)
set(CPACK_COMPONENT_PROGRAM_DEPENDS library art_library)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS fonts-dejavu-core)
set(CPACK_DEBIAN_PROGRAM_DESCRIPTION "words to certified word-grid puzzles, pages and cut files
${what_it_is}
.
The program makes puzzles, audits and rates them, prints worksheets with
their answer keys, and writes artwork at true size, a file a layer, ready to
be cut from adhesive film.")

include(CPack)
