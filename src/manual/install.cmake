# The manual page, completion for bash, and the Debian package: cpack -G DEB in the build folder.
configure_file(${CMAKE_CURRENT_LIST_DIR}/splaybook.1.in ${CMAKE_BINARY_DIR}/splaybook.1 @ONLY)
install(FILES ${CMAKE_BINARY_DIR}/splaybook.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${CMAKE_CURRENT_LIST_DIR}/splaybook.bash
  DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions RENAME splaybook)
install(FILES README.md LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(FILES projects/tutorial.md DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(DIRECTORY projects DESTINATION ${CMAKE_INSTALL_DOCDIR}
  FILES_MATCHING PATTERN "*.toml" PATTERN "starters" EXCLUDE)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME splaybook)
set(CPACK_PACKAGE_CONTACT "The splaybook developers <splaybook@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "binders for furniture that is not square, from one text file")
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# The libraries are found by the linker; the fonts the pages are set in are not.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-liberation, fonts-dejavu-extra")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
include(CPack)
