#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include "core/place/blocks.h"
#include "core/place/equations.h"
#include "core/place/settle.h"

namespace inchwright {

/// What a variable stands for.
enum class VariableKind : std::uint8_t {
  along,      ///< where a loose group lies along an axis; inches
  direction,  ///< of a line; radians. The variable behind it is the line's offset
  offset,     ///< of a line; inches
  radius,     ///< inches, not below 0
  figure,     ///< how much longer a lettered figure would be; held at 0 but where it is asked for
};

/// One way in which a block can come out: its variables, in the block's order, and its rows as
/// they are meant there, in their order.
struct Answer {
  std::vector<double> values;
  std::vector<Row> meant;

  bool operator==(const Answer&) const = default;
};

/// A residual as near to 0 as this holds: a quarter of a tick up to 100 in.
inline constexpr double kHoldsInches = 1e-10;
/// Answers closer than 100 ticks are one.
inline constexpr double kOneAnswerInches = 100.0 / 2'540'000'000.0;

/// The ways in which a row can be meant, beside itself: the other side of a line, touching from
/// inside, another ray. By row; most have none.
using RowChoices = std::vector<std::vector<Row>>;

struct AnswerSearch {
  std::vector<Answer> answers;  ///< no two alike; nearest to the start first
  /// False where the answers were looked for from many starts instead of worked out, so that one
  /// more could have been missed.
  bool isComplete = true;
  /// Those that lie further off than the tracing could mistake were left out: `traceDecides`.
  bool isNearOnly = false;
  /// Of the one answer that there is it was seen on the way that it is firm (`isFirm`).
  bool isFirm = false;
  /// How far the rows stay apart at best where there is no answer; inches.
  double misses = 0;
};

/// Whether a block has so many variables (over 12) that answers of it which can't be worked out may
/// be missed.
bool isLarge(const Block& block);

/// Finds every answer of a block while all other variables stay as they are.
///
/// A block whose rows are circles, lines and rays of the plane, or tangents to circles of given
/// radius, is worked out: as many linear equations as it takes and one quadratic, then polished.
/// Others are searched from the start, from its mirror images and from other points about it. Of a
/// large one whose answer from the start lies where `traceDecides` says, with
/// the variables there, that no far answer would be taken instead, only those close by are looked
/// for: along the ways in which its rows hold it least.
/// `variables` holds all of them; the block's own say where it was traced. They and the equations
/// are put to use on the way and left as they were.
AnswerSearch answersOf(Equations& equations, const RowChoices& choices,
                       std::span<const VariableKind> kinds, const Block& block,
                       std::span<double> variables, const std::function<bool()>& traceDecides = {});

/// Whether two answers of a block are one: all variables within so many inches, a line and the same
/// line run the other way included.
bool areOne(std::span<const VariableKind> kinds, const Block& block, std::span<const double> a,
            std::span<const double> b, double within = kOneAnswerInches);

}  // namespace inchwright
