// The same recipes by OpenCASCADE.
#pragma once

#include <TopoDS_Shape.hxx>
#include <vector>

#include "geometry/hidden_lines.h"
#include "oracle/recipe.h"

namespace oracle::occt {

TopoDS_Shape make_shape(const PartRecipe& recipe);
std::vector<TopoDS_Shape> make_shapes(const std::vector<PartRecipe>& recipes);

bool is_valid(const TopoDS_Shape& shape);
double volume(const TopoDS_Shape& shape);
double area(const TopoDS_Shape& shape);
splay::Vec3 centroid(const TopoDS_Shape& shape);  // by volume
double common_volume(const TopoDS_Shape& a, const TopoDS_Shape& b);

// Exact hidden lines of all shapes together, as they come: repeated lengths are not united.
std::vector<splay::ViewLine> hidden_lines(const std::vector<TopoDS_Shape>& shapes,
                                          const splay::View& view);

}  // namespace oracle::occt
