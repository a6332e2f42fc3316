#include "oracle/occt.h"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRepLib.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRep_Builder.hxx>
#include <GProp_GProps.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_HLRToShape.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Compound.hxx>
#include <gp_Ax2.hxx>
#include <gp_Trsf.hxx>
#include <stdexcept>

namespace oracle::occt {
namespace {

gp_Pnt point(splay::Vec3 p) { return {p.x, p.y, p.z}; }
gp_Dir direction(splay::Vec3 v) { return {v.x, v.y, v.z}; }

gp_Trsf motion(const splay::Rigid& r) {
  gp_Trsf t;
  t.SetTransformation(gp_Ax3(point(r.origin), direction(r.ez), direction(r.ex)),
                      gp_Ax3(gp::Origin(), gp::DZ(), gp::DX()));
  return t;
}

TopoDS_Shape prism(const PrismRecipe& recipe) {
  BRepBuilderAPI_MakePolygon wire;
  for (const splay::Vec2 c : recipe.outline) {
    wire.Add(point(recipe.frame.point({c.x, c.y, recipe.low})));
  }
  wire.Close();
  const splay::Vec3 up = recipe.frame.ez * (recipe.high - recipe.low);
  return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(wire.Wire(), true).Face(),
                               gp_Vec(up.x, up.y, up.z))
      .Shape();
}

void add_lines(TopoDS_Shape edges, bool hidden, std::vector<splay::ViewLine>& lines) {
  if (edges.IsNull()) return;
  BRepLib::BuildCurves3d(edges);
  for (TopExp_Explorer e(edges, TopAbs_EDGE); e.More(); e.Next()) {
    const BRepAdaptor_Curve curve(TopoDS::Edge(e.Current()));
    const gp_Pnt a = curve.Value(curve.FirstParameter()), b = curve.Value(curve.LastParameter());
    lines.push_back({{a.X(), a.Y()}, {b.X(), b.Y()}, hidden, 0});
  }
}

}  // namespace

TopoDS_Shape make_shape(const PartRecipe& recipe) {
  TopoDS_Shape shape = prism(recipe.blank);
  for (const PrismRecipe& cutter : recipe.cutters) {
    BRepAlgoAPI_Cut cut(shape, prism(cutter));
    if (!cut.IsDone()) throw std::runtime_error("OpenCASCADE could not cut");
    shape = cut.Shape();
  }
  return shape.Moved(TopLoc_Location(motion(recipe.place)));
}

std::vector<TopoDS_Shape> make_shapes(const std::vector<PartRecipe>& recipes) {
  std::vector<TopoDS_Shape> shapes;
  for (const PartRecipe& recipe : recipes) shapes.push_back(make_shape(recipe));
  return shapes;
}

bool is_valid(const TopoDS_Shape& shape) { return BRepCheck_Analyzer(shape).IsValid(); }

double volume(const TopoDS_Shape& shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  return properties.Mass();
}

splay::Vec3 centroid(const TopoDS_Shape& shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  const gp_Pnt at = properties.CentreOfMass();
  return {at.X(), at.Y(), at.Z()};
}

double area(const TopoDS_Shape& shape) {
  GProp_GProps properties;
  BRepGProp::SurfaceProperties(shape, properties);
  return properties.Mass();
}

double common_volume(const TopoDS_Shape& a, const TopoDS_Shape& b) {
  BRepAlgoAPI_Common common(a, b);
  if (!common.IsDone()) throw std::runtime_error("OpenCASCADE could not intersect");
  return volume(common.Shape());
}

std::vector<splay::ViewLine> hidden_lines(const std::vector<TopoDS_Shape>& shapes,
                                          const splay::View& view) {
  BRep_Builder builder;
  TopoDS_Compound all;
  builder.MakeCompound(all);
  for (const TopoDS_Shape& shape : shapes) builder.Add(all, shape);
  Handle(HLRBRep_Algo) algorithm = new HLRBRep_Algo;
  algorithm->Add(all);
  algorithm->Projector(
      HLRAlgo_Projector(gp_Ax2(gp::Origin(), direction(view.toward), direction(view.right))));
  algorithm->Update();
  algorithm->Hide();
  HLRBRep_HLRToShape result(algorithm);
  std::vector<splay::ViewLine> lines;
  add_lines(result.VCompound(), false, lines);
  add_lines(result.OutLineVCompound(), false, lines);
  add_lines(result.HCompound(), true, lines);
  add_lines(result.OutLineHCompound(), true, lines);
  return lines;
}

}  // namespace oracle::occt
