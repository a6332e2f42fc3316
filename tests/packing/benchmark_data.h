// Readers of the published cutting and packing problems; benchmark_test.cpp cites the papers. The
// files are not part of this repository: SPLAYBOOK_BENCHMARKS names the folder that holds them.
#pragma once

#include <string>

#include "geometry/packing_table.h"

namespace splay::packing::benchmark {

// The folder, or "" if the variable is not set.
std::string folder();

struct SheetProblem {
  std::string name;
  Units width = 0, height = 0;
  std::vector<Offer> offers;
};
// One large sheet, any number of copies: `gcut<number>.txt`.
SheetProblem gcut(int number);
// One sheet, limited copies: `cgcut<number>.txt` and `okp<number>.txt`.
SheetProblem cgcut(int number);
SheetProblem okp(int number);
// The problems of ngcutap.txt, limited copies.
std::vector<SheetProblem> ngcut();

struct PieceProblem {
  std::string name;
  Units width = 0, height = 0;  // of a sheet; of a strip the height of the best layout
  std::vector<Piece> pieces;    // all may turn
};
std::vector<PieceProblem> strips();
std::vector<PieceProblem> sheets();

struct LengthProblem {
  std::string name;
  Units bar = 0;
  std::vector<Units> lengths;
};
std::vector<LengthProblem> lengths();

// The fields of a comma separated file after its first line.
std::vector<std::vector<std::string>> table(const std::string& file);

}  // namespace splay::packing::benchmark
