// The tolerances of the whole program; all are lengths in millimetres.
#pragma once

namespace splay::tolerance {

inline constexpr double weld = 1e-6;           // two points nearer than this are one
inline constexpr double on_plane = 1e-6;       // a point nearer than this lies on the plane
inline constexpr double hidden_side = 1e-5;    // sideways offset of the two hidden-line test lines
inline constexpr double shortest_line = 1e-2;  // a drawn fragment shorter than this is dropped
inline constexpr double gap = 1e-6;            // a joint that closes within this is closed

}  // namespace splay::tolerance
