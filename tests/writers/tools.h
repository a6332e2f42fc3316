// Helpers of the writer tests: a folder that goes away again, outside programs that must be there,
// a sample packet with everything in it.
#pragma once

#include <string>
#include <vector>

#include "ink/ink.h"

namespace splay::writer_tests {

class Folder {
 public:
  Folder();
  ~Folder();
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  const std::string& path() const { return path_; }
  std::string save(const std::string& name, const std::string& bytes) const;  // its whole path

 private:
  std::string path_;
};

std::string slurp(const std::string& path);

struct Ran {
  int status = -1;
  std::string output;  // standard output and error
};
// By the shell. A program that is not installed fails the test: the check must not be left out.
Ran run(const std::string& command);

ink::Page page_of(const std::string& title, const std::string& label, std::vector<ink::Item> items);

// Four pages: every dash, fill, face and symbol, nested bookmarks, links, turned text.
ink::Packet sample_packet();
// The words printed on its pages.
std::vector<std::string> sample_words();

}  // namespace splay::writer_tests
