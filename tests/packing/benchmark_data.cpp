#include "packing/benchmark_data.h"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace splay::packing::benchmark {

namespace {

std::ifstream open(const std::string& file) {
  std::ifstream in(folder() + "/" + file);
  if (!in) throw std::runtime_error("cannot read " + folder() + "/" + file);
  return in;
}

std::vector<std::string> fields(const std::string& line, char separator) {
  std::vector<std::string> found;
  std::istringstream in(line);
  for (std::string field; std::getline(in, field, separator);) found.push_back(field);
  return found;
}

SheetProblem limited(const std::string& file, const std::string& name) {
  std::ifstream in = open(file);
  SheetProblem problem{name, 0, 0, {}};
  int count = 0;  // of kinds or of copies: the files differ
  in >> count >> problem.width >> problem.height;
  for (Offer o; in >> o.piece.width >> o.piece.height >> o.copies >> o.value;)
    problem.offers.push_back(o);
  return problem;
}

}  // namespace

std::string folder() {
  const char* value = std::getenv("SPLAYBOOK_BENCHMARKS");
  return value == nullptr ? "" : value;
}

SheetProblem gcut(int number) {
  SheetProblem problem{"gcut" + std::to_string(number), 0, 0, {}};
  std::ifstream in = open("gcut/" + problem.name + ".txt");
  int count = 0;
  in >> count >> problem.width >> problem.height;
  for (Offer o; in >> o.piece.width >> o.piece.height >> o.value;) problem.offers.push_back(o);
  return problem;
}

SheetProblem cgcut(int number) {
  const std::string name = "cgcut" + std::to_string(number);
  return limited("cgcut/" + name + ".txt", name);
}

SheetProblem okp(int number) {
  const std::string name = "okp" + std::to_string(number);
  return limited("okp/" + name + ".txt", name);
}

std::vector<SheetProblem> ngcut() {
  std::ifstream in = open("ngcut/ngcutap.txt");
  int count = 0;
  in >> count;
  std::vector<SheetProblem> problems;
  for (int number = 1; number <= count; ++number) {
    SheetProblem problem{"ngcut" + std::to_string(number), 0, 0, {}};
    std::size_t kinds = 0;
    in >> kinds >> problem.width >> problem.height;
    problem.offers.resize(kinds);
    for (Offer& o : problem.offers) {
      int least = 0;
      in >> o.piece.width >> o.piece.height >> least >> o.copies >> o.value;
    }
    problems.push_back(std::move(problem));
  }
  return problems;
}

std::vector<PieceProblem> strips() {
  std::vector<PieceProblem> problems;
  for (int category = 1; category <= 7; ++category) {
    for (int number = 1; number <= 3; ++number) {
      PieceProblem problem;
      problem.name = "c" + std::to_string(category) + "p" + std::to_string(number);
      std::ifstream in = open("strip_ht/" + problem.name + ".txt");
      std::size_t count = 0;
      in >> count >> problem.width >> problem.height;
      problem.pieces.resize(count);
      for (Piece& p : problem.pieces) {
        in >> p.width >> p.height;
        p.may_turn = true;
      }
      problems.push_back(std::move(problem));
    }
  }
  return problems;
}

std::vector<PieceProblem> sheets() {
  std::ifstream in = open("bpp2d/bwmv_class01-10.txt");
  std::vector<PieceProblem> problems;
  for (std::string line; std::getline(in, line);) {
    const std::vector<std::string> parts = fields(line, ';');
    if (parts.size() < 5) continue;
    PieceProblem problem{parts[0], std::stoll(parts[2]), std::stoll(parts[3]), {}};
    for (std::size_t i = 4; i < parts.size(); ++i) {
      const std::vector<std::string> sizes = fields(parts[i], ',');
      if (sizes.size() < 2) continue;
      const std::size_t copies = sizes.size() > 2 ? std::stoul(sizes[2]) : 1;
      problem.pieces.insert(problem.pieces.end(), copies,
                            {std::stoll(sizes[0]), std::stoll(sizes[1]), true});
    }
    problems.push_back(std::move(problem));
  }
  return problems;
}

namespace {

void read_falkenauer(const std::string& file, std::vector<LengthProblem>& problems) {
  std::ifstream in = open(file);
  int count = 0;
  for (in >> count; count > 0; --count) {
    LengthProblem problem;
    double bar = 0, length = 0;  // with one decimal
    std::size_t pieces = 0;
    int known = 0;
    in >> problem.name >> bar >> pieces >> known;
    problem.bar = std::llround(bar * 10);
    while (problem.lengths.size() < pieces && in >> length)
      problem.lengths.push_back(std::llround(length * 10));
    problems.push_back(std::move(problem));
  }
}

// Two problems of the first file have one name: they are told apart by A and B, in file order.
void read_waescher_gau(const std::string& set, std::vector<LengthProblem>& problems) {
  std::ifstream in = open("bpp1d/" + set + ".BPP");
  bool twin_seen = false;
  for (std::string name; in >> name;) {
    name = name.substr(1, name.size() - 2);
    if (set == "WAE_GAU1" && name == "TEST0055") {
      name.append(twin_seen ? "B" : "A");
      twin_seen = true;
    }
    LengthProblem problem{set, 0, {}};
    problem.name.append("_").append(name);
    int kinds = 0;
    for (in >> kinds >> problem.bar; kinds > 0; --kinds) {
      Units length = 0;
      std::size_t copies = 0;
      in >> length >> copies;
      problem.lengths.insert(problem.lengths.end(), copies, length);
    }
    problems.push_back(std::move(problem));
  }
}

}  // namespace

std::vector<LengthProblem> lengths() {
  std::vector<LengthProblem> problems;
  read_falkenauer("bpp1d/falkenauer_u250.txt", problems);
  read_falkenauer("bpp1d/falkenauer_t60.txt", problems);
  read_waescher_gau("WAE_GAU1", problems);
  read_waescher_gau("WAE_GAU2", problems);
  for (int number = 0; number < 10; ++number) {
    LengthProblem problem{"HARD" + std::to_string(number), 0, {}};
    std::ifstream in = open("bpp1d/" + problem.name + ".BPP");
    std::size_t count = 0;
    in >> count >> problem.bar;
    problem.lengths.resize(count);
    for (Units& length : problem.lengths) in >> length;
    problems.push_back(std::move(problem));
  }
  return problems;
}

std::vector<std::vector<std::string>> table(const std::string& file) {
  std::ifstream in = open(file);
  std::vector<std::vector<std::string>> rows;
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line)) rows.push_back(fields(line, ','));
  return rows;
}

}  // namespace splay::packing::benchmark
