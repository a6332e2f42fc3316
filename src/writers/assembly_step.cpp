// The piece as an assembly of solids after ISO 10303-214 (AP214, schema AUTOMOTIVE_DESIGN): one
// product for each part in its own frame, placed in one for the piece. Faces are planes and edges
// straight lines; a curved surface comes as its facets. Entities and their attributes from memory
// of the standard; the tests read the file back by OpenCASCADE.
#include <algorithm>
#include <cmath>
#include <map>

#include "base/tolerance.h"
#include "writers/formats.h"
#include "writers/step_file.h"

namespace splay::writers {

namespace {

std::string ref(int number) { return StepFile::ref(number); }

// The corners of a boundary, each once, and loops in which every edge has both ends in common with
// the edge of the face beside it: where a corner of a neighbour stands within an edge, it divides
// it.
struct Corners {
  std::vector<Vec3> points;
  std::vector<std::vector<std::vector<int>>> loops;  // face, loop, corner

  explicit Corners(const Boundary& boundary) {
    for (const Face& face : boundary.faces)
      for (const auto& loop : face.loops)
        for (const Vec3& p : loop) find(p);
    for (const Face& face : boundary.faces) {
      loops.emplace_back();
      for (const auto& loop : face.loops) loops.back().push_back(divided(loop));
    }
  }

 private:
  int find(Vec3 p) {
    for (std::size_t i = 0; i < points.size(); ++i)
      if (norm(points[i] - p) < 2 * tolerance::weld) return static_cast<int>(i);
    points.push_back(p);
    return static_cast<int>(points.size()) - 1;
  }

  std::vector<int> divided(const std::vector<Vec3>& loop) {
    std::vector<int> result;
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Vec3 from = loop[i], along = loop[(i + 1) % loop.size()] - from;
      const double length = norm(along);
      const Vec3 u = along * (1 / length);
      std::vector<std::pair<double, int>> within;
      for (std::size_t k = 0; k < points.size(); ++k) {
        const Vec3 to = points[k] - from;
        const double at = dot(to, u);
        if (at > 2 * tolerance::weld && at < length - 2 * tolerance::weld &&
            norm(to - u * at) < 2 * tolerance::weld)
          within.emplace_back(at, static_cast<int>(k));
      }
      std::sort(within.begin(), within.end());
      result.push_back(find(from));
      for (const auto& [at, corner] : within) result.push_back(corner);
    }
    return result;
  }
};

class Brep {
 public:
  Brep(StepFile& file, const Solid& solid) : file_(file), boundary_(solid.boundary()) {}

  int write(const std::string& name) {
    const Corners corners(boundary_);
    points_ = corners.points;
    for (const Vec3& p : points_) {
      corners_.push_back(file_.point(p));
      vertices_.push_back(file_.add("VERTEX_POINT(''," + ref(corners_.back()) + ")"));
    }
    std::vector<int> faces;
    for (std::size_t i = 0; i < boundary_.faces.size(); ++i)
      faces.push_back(face(boundary_.faces[i], corners.loops[i]));
    const int shell = file_.add("CLOSED_SHELL(''," + StepFile::refs(faces) + ")");
    return file_.add("MANIFOLD_SOLID_BREP(" + step_text(name) + "," + ref(shell) + ")");
  }

 private:
  // The edge between two corners and whether it is walked as it was written. Each is walked once
  // each way; where two edges of a solid lie in one place there are two of them.
  std::pair<int, bool> edge(int from, int to) {
    std::vector<int>& waiting = waiting_[{to, from}];
    if (!waiting.empty()) {
      const int known = waiting.back();
      waiting.pop_back();
      return {known, false};
    }
    const auto at = [&](int corner) { return points_[static_cast<std::size_t>(corner)]; };
    const auto vertex = [&](int corner) {
      return ref(vertices_[static_cast<std::size_t>(corner)]);
    };
    const int along = file_.direction(unit(at(to) - at(from)));
    const int vector = file_.add("VECTOR(''," + ref(along) + ",1.)");
    const int line = file_.add("LINE(''," + ref(corners_[static_cast<std::size_t>(from)]) + "," +
                               ref(vector) + ")");
    const int made =
        file_.add("EDGE_CURVE(''," + vertex(from) + "," + vertex(to) + "," + ref(line) + ",.T.)");
    waiting_[{from, to}].push_back(made);
    return {made, true};
  }

  int loop(const std::vector<int>& corners) {
    std::vector<int> walked;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const auto [number, forward] = edge(corners[i], corners[(i + 1) % corners.size()]);
      walked.push_back(
          file_.add("ORIENTED_EDGE('',*,*," + ref(number) + (forward ? ",.T.)" : ",.F.)")));
    }
    return file_.add("EDGE_LOOP(''," + StepFile::refs(walked) + ")");
  }

  int face(const Face& face, const std::vector<std::vector<int>>& loops) {
    std::vector<int> bounds;
    for (const std::vector<int>& each : loops) {
      const std::string kind = bounds.empty() ? "FACE_OUTER_BOUND" : "FACE_BOUND";
      const int edges = loop(each);
      bounds.push_back(file_.add(kind + "(''," + ref(edges) + ",.T.)"));
    }
    const Vec3 origin = points_[static_cast<std::size_t>(loops.front()[0])];
    const Vec3 along = points_[static_cast<std::size_t>(loops.front()[1])] - origin;
    const int place = file_.placement(origin, face.plane.n, unit(along));
    const int plane = file_.add("PLANE(''," + ref(place) + ")");
    return file_.add("ADVANCED_FACE(''," + StepFile::refs(bounds) + "," + ref(plane) + ",.T.)");
  }

  StepFile& file_;
  Boundary boundary_;
  std::vector<Vec3> points_;
  std::vector<int> corners_, vertices_;                      // instances of the points and vertices
  std::map<std::pair<int, int>, std::vector<int>> waiting_;  // walked once so far
};

class AssemblyFile {
 public:
  explicit AssemblyFile(const Subject& subject) : subject_(subject) {
    application_ =
        file_.add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')");
    file_.add("APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000," +
              ref(application_) + ")");
    const int length = file_.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
    const int angle = file_.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
    const int solid = file_.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
    const int near = file_.add("UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(" +
                               step_real(tolerance::weld) + ")," + ref(length) +
                               ",'distance_accuracy_value','points nearer than this are one')");
    context_ =
        file_.add("(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((" +
                  ref(near) + "))GLOBAL_UNIT_ASSIGNED_CONTEXT((" + ref(length) + "," + ref(angle) +
                  "," + ref(solid) + "))REPRESENTATION_CONTEXT('',''))");
  }

  std::string write() {
    const model::Job& job = subject_.plan.project->job;
    const Product piece = product(subject_.name, *job.title);
    const int origin = file_.placement({}, {0, 0, 1}, {1, 0, 0});
    std::vector<int> items{origin};
    std::vector<Placed> placed;
    const std::vector<parts::Part>& parts = subject_.plan.assembly.parts;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      placed.push_back(part(static_cast<int>(i), parts[i]));
      items.push_back(placed.back().place);
    }
    const int shape =
        file_.add("SHAPE_REPRESENTATION(''," + StepFile::refs(items) + "," + ref(context_) + ")");
    file_.add("SHAPE_DEFINITION_REPRESENTATION(" + ref(piece.shape) + "," + ref(shape) + ")");
    for (std::size_t i = 0; i < placed.size(); ++i)
      use(piece, shape, placed[i], std::to_string(i + 1), parts[i].name);
    return file_.finish(*job.title, subject_.name + ".step",
                        model::iso_date(*job.date) + "T00:00:00", "splaybook",
                        "AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }");
  }

 private:
  struct Product {
    int definition = 0, shape = 0;
  };
  struct Placed {
    Product product;
    int representation = 0, frame = 0, place = 0;  // its own frame, and that frame in the piece
  };

  Product product(const std::string& id, const std::string& name) {
    const int frame = file_.add("PRODUCT_CONTEXT(''," + ref(application_) + ",'mechanical')");
    const int made =
        file_.add("PRODUCT(" + step_text(id) + "," + step_text(name) + ",'',(" + ref(frame) + "))");
    file_.add("PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(" + ref(made) + "))");
    const int formation =
        file_.add("PRODUCT_DEFINITION_FORMATION(" +
                  step_text(*subject_.plan.project->job.revision) + ",''," + ref(made) + ")");
    const int view = file_.add("PRODUCT_DEFINITION_CONTEXT('part definition'," + ref(application_) +
                               ",'design')");
    Product result;
    result.definition =
        file_.add("PRODUCT_DEFINITION('design',''," + ref(formation) + "," + ref(view) + ")");
    result.shape = file_.add("PRODUCT_DEFINITION_SHAPE('',''," + ref(result.definition) + ")");
    return result;
  }

  Placed part(int index, const parts::Part& part) {
    const std::string name = subject_.plan.mark_of(index) + " " + part.name;
    Placed placed{product(std::to_string(index + 1), name)};
    placed.frame = file_.placement({}, {0, 0, 1}, {1, 0, 0});
    const int brep = Brep(file_, part.body).write(name);
    placed.representation =
        file_.add("ADVANCED_BREP_SHAPE_REPRESENTATION(" + step_text(name) + "," +
                  StepFile::refs({placed.frame, brep}) + "," + ref(context_) + ")");
    file_.add("SHAPE_DEFINITION_REPRESENTATION(" + ref(placed.product.shape) + "," +
              ref(placed.representation) + ")");
    placed.place = file_.placement(part.place.origin, part.place.ez, part.place.ex);
    return placed;
  }

  void use(const Product& piece, int whole, const Placed& placed, const std::string& id,
           const std::string& name) {
    const int occurrence =
        file_.add("NEXT_ASSEMBLY_USAGE_OCCURRENCE(" + step_text(id) + "," + step_text(name) +
                  ",''," + ref(piece.definition) + "," + ref(placed.product.definition) + ",$)");
    const int shape = file_.add("PRODUCT_DEFINITION_SHAPE('',''," + ref(occurrence) + ")");
    const int turn = file_.add("ITEM_DEFINED_TRANSFORMATION('',''," + ref(placed.frame) + "," +
                               ref(placed.place) + ")");
    const int relation =
        file_.add("(REPRESENTATION_RELATIONSHIP('',''," + ref(placed.representation) + "," +
                  ref(whole) + ")REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(" + ref(turn) +
                  ")SHAPE_REPRESENTATION_RELATIONSHIP())");
    file_.add("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(" + ref(relation) + "," + ref(shape) + ")");
  }

  const Subject& subject_;
  StepFile file_;
  int application_ = 0, context_ = 0;
};

}  // namespace

Files write_assembly_step(const Subject& subject) {
  return {{subject.name + ".step", AssemblyFile(subject).write()}};
}

}  // namespace splay::writers
