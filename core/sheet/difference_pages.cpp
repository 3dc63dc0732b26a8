#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/say/difference_words.h"
#include "core/sheet/job_pages.h"
#include "core/sheet/plain_pages.h"
#include "core/sheet/style.h"

namespace inchwright {
namespace {

/// Two parts as they lie, over each other from their zeros.
class Overlay {
 public:
  Overlay(const DrawnPart& a, const DrawnPart& b) : a_(a), b_(b) {
    for (const DrawnPart* one : {&a, &b}) {
      for (const PlanePoint point : one->outline) take(point, 0);
      for (const DrawnHole& hole : one->circles) take(hole.centre, hole.diameter / 2);
    }
  }

  Piece piece(const std::string& nameA, const std::string& nameB, double width, double mostHeight) {
    scale_ =
        std::min(width / std::max(right_ - left_, 1.0), mostHeight / std::max(far_ - near_, 1.0));
    Piece piece;
    piece.height = (far_ - near_) * scale_ + 12;
    draw(piece.sketch, a_, {Ink::black, kMedium, {}});
    draw(piece.sketch, b_, {Ink::black, kThin, {2.2, 1.2}});
    const PlanePoint zero = at({0, 0});
    piece.sketch.line(zero - PlanePoint{3, 0}, zero + PlanePoint{3, 0}, {Ink::black, kThin, {}});
    piece.sketch.line(zero - PlanePoint{0, 3}, zero + PlanePoint{0, 3}, {Ink::black, kThin, {}});
    piece.sketch.text(0, piece.height - 3.5,
                      "Full lines: " + nameA + ". Dashed: " + nameB +
                          ". Each from its own zero, the cross. Not for measuring.",
                      {2.4});
    return piece;
  }

 private:
  void take(PlanePoint point, double around) {
    left_ = std::min(left_, point.x - around);
    right_ = std::max(right_, point.x + around);
    near_ = std::min(near_, point.y - around);
    far_ = std::max(far_, point.y + around);
  }

  PlanePoint at(PlanePoint point) const {
    return {(point.x - left_) * scale_, (far_ - point.y) * scale_ + 1};
  }

  void draw(Sketch& sketch, const DrawnPart& one, const Stroke& stroke) const {
    for (std::size_t i = 0; i < one.outline.size(); ++i) {
      sketch.line(at(one.outline[i]), at(one.outline[(i + 1) % one.outline.size()]), stroke);
    }
    for (const DrawnHole& hole : one.circles) {
      constexpr int kParts = 48;
      std::vector<PlanePoint> ring;
      for (int i = 0; i <= kParts; ++i) {
        const double angle = 2 * std::numbers::pi * i / kParts;
        ring.push_back(
            at(hole.centre + PlanePoint{std::cos(angle), std::sin(angle)} * (hole.diameter / 2)));
      }
      sketch.polyline(ring, stroke);
    }
    for (const DrawnSlot& slot : one.slots) sketch.line(at(slot.from), at(slot.to), stroke);
  }

  const DrawnPart& a_;
  const DrawnPart& b_;
  double left_ = 0, right_ = 0, near_ = 0, far_ = 0;
  double scale_ = 1;
};

}  // namespace

Result<std::vector<Page>> differencePages(const JobOnPaper& job) {
  const double width = plainWidth(job);
  const Step step = readoutStep(job);
  Pieces pieces;
  const auto addLine = [&](const std::string& words, bool bold) {
    Pieces lines = plainText(words, width, bold);
    std::move(lines.begin(), lines.end(), std::back_inserter(pieces));
  };
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    for (std::size_t k = i + 1; k < job.parts.size(); ++k) {
      const PartInJob &a = job.parts[i], &b = job.parts[k];
      if (a.part.turned != b.part.turned) continue;
      const Result<Difference> found =
          differenceOf(job.job, a.part, a.solution, b.part, b.solution);
      if (!found) return found.error();
      if (!easilyMistaken(*found)) continue;
      pieces.push_back(plainHeading(a.part.name + " \u00B7 " + b.part.name, width));
      if (!a.setups.empty() && !b.setups.empty()) {
        pieces.push_back(Overlay(a.setups[0].drawn, b.setups[0].drawn)
                             .piece(a.part.name, b.part.name, width, 80));
      }
      for (const std::string& line : differenceLines(*found, step)) {
        addLine(line, !line.starts_with("Alike"));
      }
      pieces.push_back(space(6));
    }
  }
  if (pieces.empty()) addLine("No two parts of the job are so alike as to be mistaken.", false);
  return plainPages(job, "Parts that look alike", pieces);
}

}  // namespace inchwright
