# SPDX-License-Identifier: MIT
# What a Debian package of clampbook holds beside the programs and the library, and how CPack makes three of it: the program, which
# needs the C library alone; the press, which needs Pango; and the library for programs of others.
set(package_doc ${CMAKE_INSTALL_DATAROOTDIR}/doc)
set(package_source ${CMAKE_CURRENT_LIST_DIR})
set(package_build ${CMAKE_CURRENT_BINARY_DIR}/package)

# Compressed without a time stamp: the same sources give the same bytes.
find_program(CLAMPBOOK_GZIP gzip REQUIRED)
file(MAKE_DIRECTORY ${package_build}/man)
add_custom_command(OUTPUT ${package_build}/man/clampbook.1.gz
  COMMAND ${CMAKE_COMMAND} -E rm -rf ${package_build}/man
  COMMAND ${CMAKE_COMMAND} -E copy_directory ${manual_folder} ${package_build}/man
  COMMAND find ${package_build}/man -name "*.1" -exec ${CLAMPBOOK_GZIP} -9n {} +
  DEPENDS ${manual_folder}/clampbook.1 COMMENT "Compressing the manual pages" VERBATIM)
configure_file(${package_source}/changelog.in ${package_build}/changelog @ONLY)
add_custom_command(OUTPUT ${package_build}/changelog.gz ${package_build}/changelog.Debian.gz
  COMMAND ${CLAMPBOOK_GZIP} -9nc ${PROJECT_SOURCE_DIR}/CHANGELOG.md > ${package_build}/changelog.gz
  COMMAND ${CLAMPBOOK_GZIP} -9nc ${package_build}/changelog > ${package_build}/changelog.Debian.gz
  DEPENDS ${PROJECT_SOURCE_DIR}/CHANGELOG.md ${package_build}/changelog VERBATIM)
add_custom_target(package_files ALL DEPENDS ${package_build}/man/clampbook.1.gz ${package_build}/changelog.gz)

# Our own terms, and those of the libraries that are linked statically, as their packages tell them.
file(READ ${PROJECT_SOURCE_DIR}/LICENSE terms)
foreach(library libsqlite3-dev libsqlitecpp-dev nettle-dev libcsv-dev libfmt-dev nlohmann-json3-dev libcli11-dev libstdc++-12-dev)
  set(of_library /usr/share/doc/${library}/copyright)
  if(EXISTS ${of_library})
    file(READ ${of_library} text)
    string(APPEND terms "\n\n---- Part of the programs: what is in ${library} ----\n\n${text}")
  endif()
endforeach()
file(WRITE ${package_build}/copyright "${terms}")

# The doc folder and lintian's overrides of one package.
function(package_papers component name)
  install(FILES ${package_build}/copyright ${package_build}/changelog.gz ${package_build}/changelog.Debian.gz
    DESTINATION ${package_doc}/${name} COMPONENT ${component})
  configure_file(${package_source}/lintian.in ${package_build}/${name}.lintian @ONLY)
  install(FILES ${package_build}/${name}.lintian RENAME ${name}
    DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/lintian/overrides COMPONENT ${component})
endfunction()
package_papers(program clampbook)
package_papers(development libclampbook-dev)

install(DIRECTORY ${package_build}/man/ DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program PATTERN "clampbook-press*" EXCLUDE)
install(FILES ${PROJECT_SOURCE_DIR}/README.md DESTINATION ${package_doc}/clampbook COMPONENT program)
install(PROGRAMS ${PROJECT_SOURCE_DIR}/examples/compile_spec_sheet.sh ${PROJECT_SOURCE_DIR}/examples/one_training_morning.sh
  DESTINATION ${package_doc}/clampbook/examples COMPONENT program)
install(FILES ${PROJECT_SOURCE_DIR}/examples/show.sh DESTINATION ${package_doc}/clampbook/examples COMPONENT program)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/schema/json/ DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/clampbook/schema/json COMPONENT program)
set(completion ${PROJECT_SOURCE_DIR}/src/completion)
install(FILES ${completion}/clampbook.bash RENAME clampbook
  DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/bash-completion/completions COMPONENT program)
install(FILES ${completion}/_clampbook DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/zsh/vendor-completions COMPONENT program)
install(FILES ${completion}/clampbook.fish DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/fish/vendor_completions.d COMPONENT program)

set(CPACK_COMPONENTS_ALL program development)
if(CLAMPBOOK_PRESS)
  list(APPEND CPACK_COMPONENTS_ALL press)
  package_papers(press clampbook-press)
  install(FILES ${package_build}/man/clampbook-press.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT press)
endif()

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_PACKAGE_CONTACT "clampbook contributors <contributors@clampbook.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "tightening book of a workshop")
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_DEBIAN_COMPRESSION_TYPE xz)

set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME clampbook)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION utils)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_RECOMMENDS clampbook-press)
set(CPACK_DEBIAN_PROGRAM_DESCRIPTION "Keeps the tightening values of threaded fasteners (drain, fill and level
plugs, cover and pump screws) and says of every figure where it came from.
The shop enters its own figures with document and page, a second person
checks them, and sheets are printed from them. Where there is no figure, a
generic one is computed from published standards, labelled so. Lessons show
how torque and preload belong together.")

set(CPACK_DEBIAN_PRESS_PACKAGE_NAME clampbook-press)
set(CPACK_DEBIAN_PRESS_PACKAGE_SECTION utils)
set(CPACK_DEBIAN_PRESS_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PRESS_PACKAGE_DEPENDS "fonts-dejavu-core, fonts-dejavu-extra")
set(CPACK_DEBIAN_PRESS_PACKAGE_ENHANCES clampbook)
set(CPACK_DEBIAN_PRESS_DESCRIPTION "This is its press. It sets the sheets, lessons and charts of clampbook as
PDF, SVG, pictures and spreadsheets. It is a program of its own, so that a
lookup in the book does not wait for fonts.")

set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libclampbook-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS
  "libfmt-dev, libsqlitecpp-dev, libsqlite3-dev, nettle-dev, libcsv-dev, nlohmann-json3-dev")
set(CPACK_DEBIAN_DEVELOPMENT_DESCRIPTION "This is its library for C++: thread geometry, loads, preload, friction,
stripping and the curated figures behind clampbook as static libraries with
their headers, found by find_package(clampbook CONFIG).")
include(CPack)
