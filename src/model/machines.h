// What the author says of his machines. Every default is a sensible one of the trade, not measured
// on his own: what he gives is used instead.
#pragma once

#include "model/field.h"

namespace splay::model {

// How an angle scale reads when the tool is square.
enum class Scale { zero_is_square, ninety_is_square };
enum class Tilts { left, right };
// What to do where a part is too long for the position its cut needs.
enum class Beyond { propose, track_saw, hand, split };

// The table saw.
struct Saw : Fields {
  Given<Angle> tilt{Angle::degrees(45)};
  Given<Tilts> tilts{Tilts::left};
  Given<Length> kerf{Length{3.2}};
  Given<Length> longest_on_end{Length{900}};
  Given<Length> widest_on_end{Length{600}};
  Given<Length> longest_crosscut{Length{1270}};
  Given<Length> height{Length{79}};  // of the blade, upright
  Given<Length> height_at_45{Length{54}};
  Given<Length> rip_right{Length{760}}, rip_left{Length{300}};
  Given<Length> tall_fence{Length{200}};                                 // height; 0: there is none
  Given<Length> narrowest_stack{Length{6.35}}, widest_stack{Length{0}};  // 0: there is none
  Given<Angle> gauge{Angle::degrees(60)};  // the mitre gauge's range off square
  Given<Scale> tilt_scale{Scale::zero_is_square}, gauge_scale{Scale::zero_is_square};
  Given<Angle> reads_to{Angle::degrees(0.1)};  // smallest angle that can be set
  Given<Beyond> beyond{Beyond::propose};
  void fields(FieldVisitor& visit) override;
};

struct MitreSaw : Fields {  // used when its table is in the file
  Given<Angle> mitre{Angle::degrees(50)}, bevel{Angle::degrees(45)};
  Given<Length> widest{Length{300}}, thickest{Length{90}};
  Given<Length> kerf{Length{2.8}};
  Given<Scale> scale{Scale::zero_is_square};
  Given<Angle> reads_to{Angle::degrees(0.1)};
  void fields(FieldVisitor& visit) override;
};

struct TrackSaw : Fields {  // used when its table is in the file
  Given<Angle> tilt{Angle::degrees(47)};
  Given<Length> depth{Length{54}};  // upright
  Given<Length> longest{Length{2600}};
  Given<Length> kerf{Length{2.2}};
  Given<Angle> reads_to{Angle::degrees(0.1)};
  void fields(FieldVisitor& visit) override;
};

struct BandSaw : Fields {  // used when its table is in the file
  Given<Length> height{Length{200}}, throat{Length{350}};
  Given<Length> kerf{Length{1.0}};
  void fields(FieldVisitor& visit) override;
};

struct Router : Fields {
  Given<Length> deepest{Length{50}};
  Given<Length> widest_bit{Length{25}}, narrowest_bit{Length{3}};
  void fields(FieldVisitor& visit) override;
};

struct Drill : Fields {
  Given<Angle> tilt{Angle::degrees(45)};  // of its table
  void fields(FieldVisitor& visit) override;
};

struct Jointer : Fields {
  Given<Length> widest{Length{200}};
  void fields(FieldVisitor& visit) override;
};

struct Planer : Fields {
  Given<Length> widest{Length{330}};
  void fields(FieldVisitor& visit) override;
};

}  // namespace splay::model
