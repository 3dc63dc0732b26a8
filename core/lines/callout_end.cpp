#include <algorithm>
#include <utility>

#include "core/lines/callout_reader.h"
#include "core/shop/clearance.h"
#include "core/shop/threads.h"

namespace inchwright {

void CalloutReader::checkWhole() {
  for (std::size_t i = 0; i < items_.size(); ++i) {
    const CalloutItem& item = items_[i];
    const bool last = i + 1 == items_.size();
    const std::string_view word = text_.substr(item.at, item.after - item.at);
    const bool by = item.kind == CalloutItemKind::times || word == "by" || word == "BY";
    if (by && last && i > 0) {
      return fail("the figure behind this is missing, as in `3/16 x 5/8`", item.at);
    }
    const bool stroke = item.kind == CalloutItemKind::separator && text_[item.at] == '/' && i > 0 &&
                        items_[i - 1].kind == CalloutItemKind::number && !item.gapBefore;
    const auto goesOn = [&](const CalloutItem& next) {
      return next.kind == CalloutItemKind::number || next.kind == CalloutItemKind::symbol ||
             next.kind == CalloutItemKind::dash;
    };
    if (stroke && (last || !goesOn(items_[i + 1]))) {
      return fail("the fraction is cut short: say what is below the stroke", item.at);
    }
  }
}

void CalloutReader::finish() {
  checkWhole();
  if (wanted_) return fail(missing(*wanted_), text_.size());
  if (kind_ == FeatureKind::slot) return finishSlot();
  if (!loose_.empty()) return fail("what is this figure of?", loose_.front().from);
  if (kind_ == FeatureKind::chamfer && !callout_.chamfer) {
    return fail("the length of the chamfer is missing, as in `1/16 x 45°`", text_.size());
  }
  if (isRounded() && !callout_.radius) return fail("the radius is missing", text_.size());
  if (!drills()) return;
  for (const CalloutItem& item : items_) {
    const std::string_view word = text_.substr(item.at, item.after - item.at);
    if (item.kind == CalloutItemKind::word && namesSlot(word)) {
      return fail("this speaks of a slot: trace it as one", item.at);
    }
  }
  // What is known only from the whole of it is said at its end.
  if (callout_.radius)
    return fail("a hole is lettered by its diameter, not its radius", text_.size());
  if (callout_.chamfer)
    return fail("a chamfered hole is countersunk: say its diameter", text_.size());
  finishDrilled();
  if (fault_) return;
  if (kind_ == FeatureKind::hole && callout_.pitchDiameter) {
    return fail("these lie on a circle: trace a ring", text_.size());
  }
  if (kind_ != FeatureKind::row && callout_.pitch) {
    return fail("these lie in a row: trace a row, or read the distance", text_.size());
  }
  if (kind_ != FeatureKind::ring && callout_.angle) {
    return fail("what is this angle of?", text_.size());
  }
  if (callout_ == Callout()) fail("give the size as the print letters it", 0);
}

std::string CalloutReader::missing(CalloutWord word) {
  switch (word) {
    case CalloutWord::deep:
      return "how deep is missing";
    case CalloutWord::radius:
      return "the radius is missing";
    case CalloutWord::centres:
      return "the distance from one to the next is missing";
    case CalloutWord::chamfer:
      return "the length of the chamfer is missing";
    default:
      return "the diameter of the pitch circle is missing";
  }
}

void CalloutReader::finishSlot() {
  for (Loose& one : loose_) {
    std::optional<Lettered>& member = !callout_.width ? callout_.width : callout_.length;
    put(member, std::move(one.figure), "length", one.from);
  }
  if (callout_.pitch && callout_.width && !callout_.length) {
    auto over = readLength(callout_.pitch->text + " + " + callout_.width->text, {unit_});
    if (!over) return fail(over.error().text, 0);
    callout_.length = std::move(over).value();
    callout_.pitch.reset();
  }
  if (callout_.width && callout_.length && callout_.length->value < callout_.width->value) {
    std::swap(callout_.width, callout_.length);
  }
  if (!callout_.width) return fail("how wide the slot is is missing", text_.size());
  callout_.drilled.depth = slotDepth_.value_or(Depth{});
}

void CalloutReader::finishDrilled() {
  Drilled& out = callout_.drilled;
  std::erase_if(stages_, [](const Stage& one) {
    return !one.make && !one.size && one.thread.empty() && !one.depth;
  });
  mergeAlike();
  if (clears_) finishClearance();
  if (fault_) return;
  inOrderOfWork();
  checkTapDrill();
  checkDepths();
  if (fault_) return;
  if (!stages_.empty()) {
    const Stage& last = stages_.back();
    if (last.make == Make::tap && last.thread.empty()) {
      return fail("the thread is missing, such as `1/4-20 UNC` or `2 BA`", text_.size());
    }
    if (!last.size && last.thread.empty()) {
      return fail("the size is missing: how large is it " +
                      std::string(last.make == Make::ream ? "reamed" : "drilled") + "?",
                  text_.size());
    }
    out.make = last.make.value_or(Make::drill);
    out.thread = last.thread;
    if (last.thread.empty()) out.diameter = last.size;
    for (const Stage& one : stages_) {
      if (one.depth) out.depth = *one.depth;
    }
    if (!last.thread.empty() && !last.depth && !out.depth.through) {
      return fail("how deep the thread is is missing: its drill is deeper", text_.size());
    }
  }
  // What a hole has for a seat is how it is made; a reamed or tapped one keeps its own making.
  if (seatMake_) {
    if (out.make == Make::drill) out.make = *seatMake_;
    if (*seatMake_ == Make::countersink && callout_.angle) {
      out.seatAngle = std::exchange(callout_.angle, std::nullopt);
      // They are ground from 60° to 120°; common practice, no source.
      const double degrees = out.seatAngle->value.toDegrees();
      if (degrees < 45 || degrees > 150) {
        callout_.question = "no countersink has " + out.seatAngle->text + ": is it read right?";
      }
    }
    if (out.seatDiameter && out.diameter && out.seatDiameter->value <= out.diameter->value) {
      return ask("the seat is no larger than its hole: which is which?", 0);
    }
    if (!out.seatDiameter) {
      return fail("how large the seat is is missing: `C'BORE 3/8 x 3/16 DEEP`", text_.size());
    }
  }
  if (stages_.size() > 1 || (seatMake_ && out.make != *seatMake_)) {
    callout_.more = std::string(text_);
  }
}

void CalloutReader::inOrderOfWork() {
  const auto rank = [](const Stage& one) {
    if (!one.thread.empty() || one.make == Make::tap) return 2;
    return one.make == Make::ream || one.make == Make::bore ? 1 : 0;
  };
  std::stable_sort(stages_.begin(), stages_.end(),
                   [&](const Stage& a, const Stage& b) { return rank(a) < rank(b); });
  if (stages_.size() < 2) return;
  const Stage& last = stages_.back();
  const auto thread = threadNamed(last.thread);
  if (last.thread.empty() ? !last.size : !thread) return;
  const Length finished = last.thread.empty() ? last.size->value : thread->major;
  const std::string& named = last.thread.empty() ? last.size->text : last.thread;
  for (std::size_t i = 0; i + 1 < stages_.size(); ++i) {
    const Stage& one = stages_[i];
    if (!one.size) continue;
    const bool isStep = rank(last) == 0 && one.depth != last.depth;
    if (one.size->value <= finished && !isStep) continue;
    return ask("both " + one.size->text + " and " + named +
                   ": which is the hole's size? A step is a seat, as in `3/16 DRILL, C'BORE 1/4 x "
                   "1/2 DEEP`",
               0);
  }
}

void CalloutReader::checkTapDrill() {
  const auto thread =
      stages_.empty() ? Result<Thread>(Error{}) : threadNamed(stages_.back().thread);
  if (!thread) return;
  for (const Stage& one : stages_) {
    if (!one.size || !one.thread.empty()) continue;
    // Of a thread that is cut in full a drill takes the pitch less than its diameter, about; half
    // as much is the least that shops use. Common practice, no source.
    const auto cut = Rational(thread->major.ticks() - one.size->value.ticks()).over(thread->pitch);
    if (!cut || (*cut >= *Rational::of(2, 5) && *cut <= *Rational::of(3, 2))) continue;
    return ask("the drill for " + stages_.back().thread + " is " + thread->tapDrill +
                   ", and this is " + one.size->text + ": is the thread or its drill misread?",
               0);
  }
}

void CalloutReader::checkDepths() {
  if (stages_.size() < 2 || !stages_.back().depth) return;
  const Stage& last = stages_.back();
  const auto words = [](const Depth& depth) {
    return depth.through || !depth.length ? std::string("through") : depth.length->text + " deep";
  };
  const auto deeper = [](const Depth& a, const Depth& b) {
    if (a.through || b.through) return a.through && !b.through;
    return a.length && b.length && a.length->value > b.length->value;
  };
  const bool tapped = !last.thread.empty();
  for (std::size_t i = 0; i + 1 < stages_.size(); ++i) {
    const std::optional<Depth>& depth = stages_[i].depth;
    if (!depth) continue;
    const std::string both = "the drill goes " + words(*depth) + ", the " +
                             (tapped ? "thread " : "finished hole ") + words(*last.depth) + ": ";
    if (deeper(*last.depth, *depth)) return ask(both + "which of the two is misread?", 0);
    // A tapped hole is drilled deeper anyway.
    if (deeper(*depth, *last.depth) && (!tapped || depth->through)) {
      callout_.question = both + "only its note will say that the drill goes on";
    }
  }
}

void CalloutReader::finishClearance() {
  const auto threaded = std::find_if(stages_.begin(), stages_.end(),
                                     [](const Stage& one) { return !one.thread.empty(); });
  if (threaded == stages_.end()) return;
  const std::string screw = threaded->thread;
  std::erase_if(stages_, [](const Stage& one) { return !one.thread.empty(); });
  if (hasSize() || callout_.drilled.seatDiameter) {
    callout_.more = std::string(text_);
    return;
  }
  std::string known;
  for (const char* fit : {"close", "normal", "loose", "clear"}) {
    const auto hole = clearanceHole(fit, screw);
    if (hole) known += (known.empty() ? ": " : ", ") + hole->drill + " is " + fit;
  }
  ask("how free is it to be about " + screw + "? Say the drill" + known, text_.size());
}

void CalloutReader::mergeAlike() {
  for (std::size_t i = 0; i + 1 < stages_.size(); ++i) {
    Stage& one = stages_[i];
    Stage& next = stages_[i + 1];
    const bool twice = one.size && next.size && one.size->value == next.size->value;
    if (twice && (!one.make || !next.make)) {
      if (!next.depth) next.depth = one.depth;
      if (!next.make) next.make = one.make;
      stages_.erase(stages_.begin() + static_cast<std::ptrdiff_t>(i--));
      continue;
    }
    // The drill of a thread need not be called one.
    const bool vague = one.size && !one.make && next.thread.empty();
    const Stage* unexplained = vague ? &one : next.size && !next.make ? &next : nullptr;
    if (unexplained == nullptr) continue;
    const std::string& figure = unexplained->size->text;
    return fail(
        "what is " + figure + "? Say so, as in `" + figure + " DRILL` or `" + figure + " DEEP`",
        text_.size());
  }
}

}  // namespace inchwright
