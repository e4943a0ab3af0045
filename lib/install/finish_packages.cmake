# Read by CPack when its packages are there, not yet compressed: packs each again by Debian's own tool, for two things that CPack
# 3.25 cannot say. That libraries of several processors may be installed at once, and that the loader learns of a library by
# Debian's trigger; the scripts that CPack writes for that go.
cmake_minimum_required(VERSION 3.25)

foreach(package IN LISTS CPACK_PACKAGE_FILES)
  set(folder ${package}.parts)
  execute_process(COMMAND dpkg-deb --raw-extract ${package} ${folder} COMMAND_ERROR_IS_FATAL ANY)
  file(REMOVE ${folder}/DEBIAN/postinst ${folder}/DEBIAN/postrm)
  file(READ ${folder}/DEBIAN/control control)
  if(control MATCHES "Package: letterlode\n")
    string(PREPEND control "Multi-Arch: foreign\n")
  else()
    string(PREPEND control "Multi-Arch: same\n")
  endif()
  file(WRITE ${folder}/DEBIAN/control "${control}")
  # It takes dates from SOURCE_DATE_EPOCH where they are later, as those of what was written here are.
  execute_process(COMMAND dpkg-deb --root-owner-group -Zxz --build ${folder} ${package} OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
  file(REMOVE_RECURSE ${folder})
endforeach()
