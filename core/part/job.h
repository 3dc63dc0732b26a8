#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/part/accepted.h"
#include "core/part/doubt_key.h"
#include "core/part/extra.h"
#include "core/part/feature.h"
#include "core/part/gap.h"
#include "core/part/made.h"
#include "core/part/mate.h"
#include "core/part/opposite.h"
#include "core/part/outlined.h"
#include "core/part/picture.h"
#include "core/part/printed.h"
#include "core/part/projection.h"
#include "core/part/reading.h"
#include "core/part/setup.h"
#include "core/part/shop_owned.h"

namespace inchwright {

/// The title block's general tolerances, each plus and minus; empty ones take the customary
/// values named in `tolerance of`.
struct General {
  std::optional<Lettered> fractions;
  std::optional<Lettered> twoPlaces;
  std::optional<Lettered> threePlaces;
  std::optional<LetteredAngle> angles;
  Extra extra;

  bool operator==(const General&) const = default;
};

/// One part of the job: what the print shows of it and how it is to be held.
struct Part {
  // What copies it is compiled once, not anew in every room.
  Part();
  Part(const Part& other);
  Part(Part&& other) noexcept;
  Part& operator=(const Part& other);
  Part& operator=(Part&& other) noexcept;
  ~Part();

  std::string name;
  int quantity = 1;
  std::string material;
  std::optional<OppositeOf> opposite;  ///< the other hand of another part, and follows it
  bool turned = false;                 ///< lies along X, its axis Y0 Z0; else flat work
  std::string hand;                    ///< `left`, `right` or empty, as the print says
  General general;
  std::vector<Feature> features;
  std::vector<Reading> readings;
  std::vector<Understanding> understood;
  std::vector<Setup> setups;
  std::vector<GivenOutline> outlines;  ///< beside what follows from sides and rounds by itself
  std::vector<PictureView> views;      ///< pictures of the print under the faces
  /// Doubts the user has looked at and let stand.
  std::vector<AcceptedDoubt> accepted;
  std::vector<MadePlace> made;        ///< what was done and measured at the machine
  std::vector<Mended> mended;         ///< ways out that were chosen for what came out wrong
  std::vector<PrintedSheet> printed;  ///< of each setup the sheet last printed
  Extra extra;

  const Feature* feature(std::string_view id) const;
  const Reading* reading(std::string_view id) const;
  const Setup* setup(std::string_view setupName) const;

  bool operator==(const Part& other) const;
};

/// What a job says beside its parts.
struct JobWithoutParts {
  std::string title;
  std::string print;  ///< sheet and edition of the print
  Unit unit = Unit::inch;
  std::optional<Projection> projection;  ///< how the print lays out its views, where that is known
  std::string notes;
  Extra jobExtra;
  Machine machine;
  Shop shop;  ///< what the document says is owned; the user's own stands behind it
  std::optional<Lathe> lathe;
  std::vector<Gap> gaps;    ///< between parts, that have to come out within limits
  std::vector<Mate> mates;  ///< holes and shafts that have to go together
  std::vector<Picture> pictures;
  Extra extra;

  const Gap* gap(std::string_view name) const;
  const Picture* picture(std::string_view name) const;

  bool operator==(const JobWithoutParts& other) const;
};

/// A whole document: the job, the machine it is for, and its parts.
struct Job : JobWithoutParts {
  // What copies it is compiled once, not anew in every room.
  Job();
  explicit Job(const JobWithoutParts& beside);  ///< with no part
  Job(const Job& other);
  Job(Job&& other) noexcept;
  Job& operator=(const Job& other);
  Job& operator=(Job&& other) noexcept;
  ~Job();

  std::vector<Part> parts;

  const Part* part(std::string_view name) const;

  bool operator==(const Job& other) const;
};

/// The tolerance that applies to a reading along an axis: its own, none for a basic or reference
/// figure (empty), else the title block's by its lettering. Defaults where the title block is
/// silent, as is customary and no standard's: fractions ±1/64 in, one or two places ±0.010 in,
/// three and more ±0.005 in; millimetres by ISO 2768-1 class m.
std::optional<Tolerance> toleranceOf(const Lettered& figure, const General& general);

/// Checks what `Part` requires across its members: unique ids, no dangling ones, each kind's
/// members present, understandings complete. `place` of the error is a JSON pointer relative to
/// the part, such as `/readings/3/from`.
Result<Done> checkPart(const Part& part);

}  // namespace inchwright
