# The two libraries as others see them: shared and static, in the build tree and after an install.
#   letterlode::core  letterlode::art                  shared; what they use inside stays inside
#   letterlode::core-static  letterlode::art-static    static; whoever links them links what they use as well
# The names are the same after add_subdirectory() and after find_package(letterlode).
# What is installed falls into four components: library and art_library (the shared libraries), development, program.
include(CMakePackageConfigHelpers)

option(LODE_INSTALL "Install the libraries, the program and their data" ${PROJECT_IS_TOP_LEVEL})

set(core_needs ICU::uc ICU::i18n ICU::data)
set(core_modules icu-uc icu-i18n)
set(art_needs ICU::uc PkgConfig::LODE_ART)
set(art_modules icu-uc freetype2 harfbuzz fontconfig cairo polyclipping pugixml libqpdf)
# Debian's packages of all these modules.
set(static_packages libicu-dev libfreetype-dev libharfbuzz-dev libfontconfig-dev libcairo2-dev libpolyclipping-dev
  libpugixml-dev libqpdf-dev)

# A static library hands these on to its user, who may stand in a folder above this one.
set_target_properties(${core_needs} ${art_needs} PROPERTIES IMPORTED_GLOBAL TRUE)

# Until version 1 a minor release may change the binary interface.
if(PROJECT_VERSION_MAJOR EQUAL 0)
  set(abi ${PROJECT_VERSION_MAJOR}.${PROJECT_VERSION_MINOR})
  set(compatibility SameMinorVersion)
else()
  set(abi ${PROJECT_VERSION_MAJOR})
  set(compatibility SameMajorVersion)
endif()

# lode_library(TARGET SHARED|STATIC OBJECTS PUBLIC_NAME FILE_NAME)
function(lode_library target kind objects public_name file_name)
  add_library(${target} ${kind} $<TARGET_OBJECTS:${objects}>)
  add_library(letterlode::${public_name} ALIAS ${target})
  target_include_directories(${target} INTERFACE
    $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/include> $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>)
  target_compile_features(${target} INTERFACE cxx_std_20)
  target_link_options(${target} PRIVATE $<TARGET_PROPERTY:lode_build,INTERFACE_LINK_OPTIONS>)
  set_target_properties(${target} PROPERTIES
    LINKER_LANGUAGE CXX
    EXPORT_NAME ${public_name}
    OUTPUT_NAME ${file_name}
    VERSION ${PROJECT_VERSION}
    SOVERSION ${abi}
    INSTALL_RPATH $ORIGIN
    BUILD_WITH_INSTALL_RPATH ON)  # what it needs of this tree lies beside it, as built and as installed
  if(kind STREQUAL SHARED)
    target_link_options(${target} PRIVATE -Wl,--version-script=${CMAKE_CURRENT_SOURCE_DIR}/exports.map)
    set_target_properties(${target} PROPERTIES LINK_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/exports.map)
  endif()
  if(kind STREQUAL SHARED AND NOT LODE_SANITIZE)
    target_link_options(${target} PRIVATE -Wl,-z,defs)  # a library that misses a dependency fails here, not at its user's
  endif()
endfunction()

lode_library(letterlode SHARED lode_core_objects core letterlode)
lode_library(letterlode-static STATIC lode_core_objects core-static letterlode)
foreach(target letterlode letterlode-static)
  target_link_libraries(${target} PRIVATE ${core_needs})
endforeach()

lode_library(letterlode-art SHARED lode_art_objects art letterlode-art)
lode_library(letterlode-art-static STATIC lode_art_objects art-static letterlode-art)
target_link_libraries(letterlode-art PUBLIC letterlode PRIVATE ${art_needs})
target_link_libraries(letterlode-art-static PUBLIC letterlode-static PRIVATE ${art_needs})

if(NOT LODE_INSTALL)
  return()
endif()

# One export a library, so that a user of the shared ones need not have what the static ones ask for.
set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/letterlode)
set(build_package_folder ${PROJECT_BINARY_DIR}/package)
function(lode_install_library target component)
  get_target_property(public_name ${target} EXPORT_NAME)
  install(TARGETS ${target} EXPORT letterlode-${public_name}
    LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT ${component} NAMELINK_COMPONENT development
    ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT development)
  # Each file reads all that start with its own name: the kind must not come last in it.
  install(EXPORT letterlode-${public_name} NAMESPACE letterlode:: DESTINATION ${package_folder}
    FILE ${public_name}-targets.cmake COMPONENT development)
  export(EXPORT letterlode-${public_name} NAMESPACE letterlode::
    FILE ${build_package_folder}/${public_name}-targets.cmake)
endfunction()
lode_install_library(letterlode library)
lode_install_library(letterlode-art art_library)
lode_install_library(letterlode-static development)
lode_install_library(letterlode-art-static development)

configure_package_config_file(install/letterlodeConfig.cmake.in ${build_package_folder}/letterlodeConfig.cmake
  INSTALL_DESTINATION ${package_folder} NO_SET_AND_CHECK_MACRO)
write_basic_package_version_file(${build_package_folder}/letterlodeConfigVersion.cmake COMPATIBILITY ${compatibility})
install(FILES ${build_package_folder}/letterlodeConfig.cmake ${build_package_folder}/letterlodeConfigVersion.cmake
  DESTINATION ${package_folder} COMPONENT development)

# A pkg-config file finds its prefix from where it lies, so that an installed tree can be moved; where the library
# folder is an absolute path it cannot, and the prefix is written out.
if(IS_ABSOLUTE "${CMAKE_INSTALL_LIBDIR}")
  set(pc_prefix "${CMAKE_INSTALL_PREFIX}")
else()
  file(RELATIVE_PATH up "/${CMAKE_INSTALL_LIBDIR}/pkgconfig" "/")
  string(REGEX REPLACE "/$" "" up "${up}")
  set(pc_prefix "\${pcfiledir}/${up}")
endif()
# An absolute second part takes the place of the first.
set(pc_libdir "\${prefix}")
cmake_path(APPEND pc_libdir "${CMAKE_INSTALL_LIBDIR}")
set(pc_includedir "\${prefix}")
cmake_path(APPEND pc_includedir "${CMAKE_INSTALL_INCLUDEDIR}")

function(lode_pkg_config name description requires modules)
  set(pc_name ${name})
  set(pc_description "${description}")
  set(pc_requires "${requires}")
  list(JOIN modules " " pc_requires_private)
  configure_file(install/library.pc.in ${build_package_folder}/${name}.pc @ONLY)
  install(FILES ${build_package_folder}/${name}.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig
    COMPONENT development)
endfunction()
lode_pkg_config(letterlode "Word-grid puzzles, placed, filled and audited" "" "${core_modules}")
lode_pkg_config(letterlode-art "Cut-ready artwork of word-grid puzzles" "letterlode = ${PROJECT_VERSION}" "${art_modules}")

install(DIRECTORY ${PROJECT_SOURCE_DIR}/include/letterlode DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}
  COMPONENT development FILES_MATCHING PATTERN "*.hpp" PATTERN "*.h")
install(DIRECTORY ${PROJECT_SOURCE_DIR}/data/schema
  DESTINATION ${CMAKE_INSTALL_DATADIR}/letterlode COMPONENT development)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/data/avoid ${PROJECT_SOURCE_DIR}/data/samples
  DESTINATION ${CMAKE_INSTALL_DATADIR}/letterlode COMPONENT program)
install(FILES ${PROJECT_SOURCE_DIR}/README.md DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)

# The program is described in cli/, after this file, so its rules wait until the whole project has been read.
# It finds the shared libraries by the way from its own folder, and beside the core its part that links the art library, so that an installed tree can be moved.
function(lode_install_program)
  file(RELATIVE_PATH libraries "${CMAKE_INSTALL_FULL_BINDIR}" "${CMAKE_INSTALL_FULL_LIBDIR}")
  set_target_properties(letterlode_cli PROPERTIES INSTALL_RPATH "$ORIGIN/${libraries}")
  install(TARGETS letterlode_cli RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT program)
  set_target_properties(lode_artwork_module PROPERTIES INSTALL_RPATH "$ORIGIN/..")
  install(TARGETS lode_artwork_module LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR}/letterlode COMPONENT program)
  get_target_property(written letterlode_cli BINARY_DIR)
  install(FILES ${written}/letterlode.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
  install(FILES ${written}/letterlode.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
    RENAME letterlode COMPONENT program)
  install(FILES ${written}/letterlode.zsh DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/site-functions
    RENAME _letterlode COMPONENT program)
endfunction()
cmake_language(DEFER DIRECTORY ${PROJECT_SOURCE_DIR} CALL lode_install_program)
if(PROJECT_IS_TOP_LEVEL AND EXISTS /etc/debian_version AND NOT IS_ABSOLUTE "${CMAKE_INSTALL_LIBDIR}")
  include(install/packages.cmake)
endif()
