// The assembly's STEP file as OpenCASCADE reads it: every demo's solids are valid, as many as there
// are parts, of the parts' volumes and where the parts are.
#include <catch2/catch.hpp>

#include <IFSelect_ReturnStatus.hxx>
#include <STEPControl_Reader.hxx>
#include <TopExp_Explorer.hxx>
#include <fstream>

#include "constructs/construct.h"
#include "oracle/occt.h"
#include "reading/reading.h"
#include "support/demos.h"
#include "writers/formats.h"

namespace {

std::vector<TopoDS_Shape> solids_in(const std::string& bytes) {
  const std::string path =
      (std::filesystem::temp_directory_path() / "splaybook_oracle.step").string();
  std::ofstream(path, std::ios::binary) << bytes;
  STEPControl_Reader reader;
  REQUIRE(reader.ReadFile(path.c_str()) == IFSelect_RetDone);
  reader.TransferRoots();
  std::filesystem::remove(path);
  std::vector<TopoDS_Shape> solids;
  for (TopExp_Explorer each(reader.OneShape(), TopAbs_SOLID); each.More(); each.Next())
    solids.push_back(each.Current());
  return solids;
}

}  // namespace

TEST_CASE("an assembly's STEP file is read back solid by solid") {
  for (const std::filesystem::path& demo : splay::test::demos()) {
    CAPTURE(demo.string());
    const std::string text = splay::test::text_of(demo);
    splay::reading::ProjectReading result =
        splay::reading::read_project(text, demo.string(), splay::constructs::registry());
    REQUIRE(result.project.has_value());
    const splay::fabrication::Plan plan =
        splay::fabrication::make_plan(*result.project, splay::constructs::build(*result.project));
    const splay::ink::Packet packet;
    const splay::ink::FontSet fonts;
    const splay::writers::Files files =
        splay::writers::write_assembly_step({plan, packet, fonts, "piece-A", "shop"});
    REQUIRE(files.size() == 1);
    REQUIRE(files.begin()->first == "piece-A.step");

    const std::vector<TopoDS_Shape> solids = solids_in(files.begin()->second);
    REQUIRE(solids.size() == plan.assembly.parts.size());
    for (std::size_t i = 0; i < solids.size(); ++i) {
      const splay::parts::Part& part = plan.assembly.parts[i];
      CAPTURE(part.name);
      CHECK(oracle::occt::is_valid(solids[i]));
      CHECK(oracle::occt::volume(solids[i]) == Approx(part.body.volume()).epsilon(1e-9));
      CHECK(norm(oracle::occt::centroid(solids[i]) - part.world.centroid()) < 1e-6);
    }
  }
}
