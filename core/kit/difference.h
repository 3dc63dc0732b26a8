#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/base/result.h"
#include "core/part/job.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// Two places that stand for each other in two similar parts: `a` of the one, `b` of the other.
struct Pair {
  Id a;
  Id b;

  bool operator==(const Pair&) const = default;
};

struct OnlyIn {
  std::string part;
  Id id;

  bool operator==(const OnlyIn&) const = default;
};

/// How far B's lies from where A's does, along the part's own X and Y of the face (its two axes);
/// an edge has one of the two.
struct Moved {
  Pair ids;
  std::optional<Length> dx;
  std::optional<Length> dy;

  bool operator==(const Moved&) const = default;
};

/// One member of the document that is not the same in both: `diameter`, `9/32`, `5/16`. An empty
/// text is one that is not said.
struct Changed {
  Pair ids;
  std::string member;
  std::string a;
  std::string b;

  bool operator==(const Changed&) const = default;
};

/// What is said of the two parts themselves and is not the same: `hand`, `left`, `right`.
struct ChangedOfPart {
  std::string member;
  std::string a;
  std::string b;

  bool operator==(const ChangedOfPart&) const = default;
};

/// In what two similar parts differ, from the zero of each part's first setup. Places cut are all
/// listed; edges only where they differ. One that moved may have changed as well.
struct Difference {
  std::string a;
  std::string b;
  std::vector<Pair> alike;
  std::vector<OnlyIn> only;
  std::vector<Moved> moved;
  std::vector<Changed> changed;
  std::vector<ChangedOfPart> ofParts;

  /// In all that is cut.
  bool same() const { return only.empty() && moved.empty() && changed.empty(); }
  bool operator==(const Difference&) const = default;
};

/// A part as it is compared with others: what is cut in it, and where from the zero of its first
/// setup. Made once for many comparisons; refers to nothing.
class ComparedPart {
 public:
  /// A member as lettered, and what makes it the same as another: `.250` and `0.250` are alike, and
  /// `1/4` is not, since a fraction asks for less.
  struct MemberText {
    std::string text;
    std::string means;
  };
  using Member = std::pair<std::string, MemberText>;

  /// Errors: as `workAt`.
  static Result<ComparedPart> of(const Job& job, const Part& part, const Solution& solution);

 private:
  friend class Comparing;

  struct Spot {
    Id id;
    FeatureKind kind = FeatureKind::point;
    std::optional<Length> size;
    std::vector<Member> members;  ///< by name
    std::optional<Rational> x;    ///< ticks along the two axes of the face
    std::optional<Rational> y;

    bool edge() const { return kind == FeatureKind::edge; }
  };

  std::string name_;
  std::string hand_;
  std::string material_;
  std::vector<Spot> spots_;
};

/// Places are matched by their ids where both have one of that id and kind; what is left, by kind,
/// size and nearness: within 1/4 in. Loose places are matched by id alone and never moved.
/// H of 9/32 in the one and of 5/16 in the other → changed H diameter 9/32 5/16.
Difference differenceOf(const ComparedPart& a, const ComparedPart& b);
/// Errors: as `workAt`.
Result<Difference> differenceOf(const Job& job, const Part& a, const Solution& solutionA,
                                const Part& b, const Solution& solutionB);

/// Whether two parts are so nearly alike that they may be mistaken for each other: most places of
/// each are alike or but a little different. Requires that they are two.
bool easilyMistaken(const Difference& difference);

}  // namespace inchwright
