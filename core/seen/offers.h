#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry/homography.h"
#include "core/measure/length.h"

namespace inchwright::seen {

/// A box of pixels of the upright picture, from its top left corner.
struct PictureBox {
  double x = 0;
  double y = 0;
  double w = 0;
  double h = 0;

  bool operator==(const PictureBox&) const = default;
};

/// What speaks for a candidate. See `Witnesses::letters`.
struct Witnesses {
  bool plain = false;   ///< G: the glyphs are plain, and nothing else comes near
  bool unsure = false;  ///< g: the glyphs may be these
  bool scale = false;   ///< S: the drawn distance agrees, and with no other candidate
  bool closes = false;  ///< C: what has been confirmed closes with it, exactly

  /// One Enter may take it.
  bool ready() const { return plain && scale; }
  /// As a confirmed reading keeps them: `G S`, `g S C`; empty for none.
  std::string letters() const;
  bool operator==(const Witnesses&) const = default;
};

/// One way a figure may be lettered.
struct Candidate {
  std::string text;        ///< `1 3/16`, `(2)`, `.375 ±.002`, `58°`
  std::int64_t ticks = 0;  ///< its value: ticks of 10 pm; micro-arcseconds for an angle
  double glyphs = 0;       ///< mean odds of a glyph, 0 … 1
  double scale = 0;        ///< how many standard deviations the drawing differs from it
  bool closes = false;

  bool operator==(const Candidate&) const = default;
};

enum class OfferedReading : std::uint8_t { alongX, alongY, centres, angle };

/// A dimension line and what may be lettered on it. Nothing in it is measured: `from` and `to` say
/// where the line is drawn, in inches of the face, and the candidates only what is lettered.
struct ReadingOffer {
  OfferedReading kind = OfferedReading::alongX;
  PlanePoint from;  ///< the end of the lower coordinate; of an angle, its corner
  PlanePoint to;
  std::vector<Candidate> candidates;  ///< the likeliest first; may be empty
  Witnesses witnesses;                ///< of the first candidate
  PictureBox figure;                  ///< of the lettering; of size 0 where none was found
  PictureBox cut;                     ///< the figure, its line and both ends
  int view = 0;                       ///< of the print's views, 0 the one the face's zero is on
  double sure = 0;                    ///< of the line, 0 … 1

  bool operator==(const ReadingOffer&) const = default;
};

enum class OfferedFeature : std::uint8_t { hole, edge, slot, ring, row, round, line, arc };

/// Something drawn. Its size is never measured: it is what a note pointing at it says, or empty.
struct FeatureOffer {
  OfferedFeature kind = OfferedFeature::hole;
  PlanePoint at;    ///< inches of the face: the middle; of a round its centre
  PlanePoint from;  ///< of a slot, line, edge, row or arc: its ends; of a round on the level side
  PlanePoint to;
  double drawnRadius = 0;  ///< as drawn, to ring it on the picture; never a size
  std::string size;        ///< as lettered in a note
  std::int64_t sizeTicks = 0;
  Witnesses sizeWitnesses;
  std::string note;  ///< the note's words: `DRILL`, `REAM`
  PictureBox noted;  ///< the note itself
  int count = 0;     ///< holes of a ring or row; of a note, how many it speaks of
  std::string pcd;   ///< of a ring: its pitch circle's diameter as lettered in that note
  Witnesses pcdWitnesses;
  /// Of a ring with a hole straight over its middle, under it, or level with it: where that lies
  /// from there, degrees. What is turned otherwise has an angle lettered.
  std::optional<int> firstAngle;
  bool alongX = false;  ///< of an edge: it stands at an x; of a row: it runs along X
  int view = 0;
  double sure = 0;  ///< 0 … 1
  /// It is drawn so plainly that one Enter may take it: an edge whose line is whole, ends in
  /// corners of its outline and has a dimension on it, a hole whose centre lines run out over its
  /// rim, a row of whose holes the outer ones alone are dimensioned, a round whose arc is whole.
  /// What is not is shown and asked about: a line of dashes, a letter or a blot may look like it.
  bool ready = false;

  /// Takes over the size that a note says of another one.
  void takeSize(const FeatureOffer& other) {
    size = other.size;
    sizeTicks = other.sizeTicks;
    sizeWitnesses = other.sizeWitnesses;
    note = other.note;
    noted = other.noted;
  }
  bool operator==(const FeatureOffer&) const = default;
};

/// Everything a picture offers. Lives beside the document, never in it.
struct Offers {
  std::vector<FeatureOffer> features;
  std::vector<ReadingOffer> readings;
  /// Height of the lettering's capitals, in pixels of the picture; 0 where there is none.
  double lettering = 0;
  /// The lettering is too small to be read well: photograph each quarter by itself.
  bool tooCoarse = false;

  bool operator==(const Offers&) const = default;
};

}  // namespace inchwright::seen
