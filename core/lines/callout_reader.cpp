#include "core/lines/callout_reader.h"

#include <algorithm>
#include <utility>

#include "core/base/ascii.h"
#include "core/measure/writing.h"
#include "core/shop/drills.h"
#include "core/shop/thread_name.h"
#include "core/shop/threads.h"

namespace inchwright {

void CalloutReader::readOne() {
  const CalloutItem& item = items_[next_];
  if (drills() && takeThread()) return;
  switch (item.kind) {
    case CalloutItemKind::times:
      times_ = true;
      ++next_;
      return;
    case CalloutItemKind::dash:
      return takeDash(item);
    case CalloutItemKind::separator:
      ++next_;
      return;
    case CalloutItemKind::angleMark:
      return fail("an angle has its figure before the degree mark", item.at);
    case CalloutItemKind::word:
      return readWord(item);
    case CalloutItemKind::number:
    case CalloutItemKind::symbol:
      break;
  }
  if (takeAlike() || takeAngle()) return;
  takeFigure();
}

void CalloutReader::takeDash(const CalloutItem& item) {
  const bool first = next_ == 0 || item.gapBefore;
  ++next_;
  const CalloutItem* behind = peek();
  const bool minus = first && behind != nullptr && !behind->gapBefore &&
                     behind->kind == CalloutItemKind::number &&
                     !isWord(next_ + 1, CalloutWord::count);
  if (minus) fail("a size has no minus sign: leave it out", item.at);
}

bool CalloutReader::takeThread() {
  const CalloutItem& first = items_[next_];
  const bool begins = first.kind == CalloutItemKind::number ||
                      (first.kind == CalloutItemKind::word && !endsThread(first));
  if (!begins) return false;
  const auto said = std::find_if(stages_.begin(), stages_.end(),
                                 [](const Stage& one) { return !one.thread.empty(); });
  const std::size_t most = std::min(items_.size(), next_ + kWidestSpan);
  for (std::size_t end = most; end > next_ + 1; --end) {
    if (!holdsTogether(end)) continue;
    const std::string_view text = span(next_, end);
    if (!isThread(text, end)) continue;
    if (said == stages_.end()) {
      clears_ = clears_ || for_;
      Stage& one = openStage();
      one.make = Make::tap;
      one.thread = std::string(text);
    } else if (said->thread != text) {
      ask("both " + said->thread + " and " + std::string(text) + ": which is the hole's thread?",
          first.at);
    }
    next_ = end;
    wanted_.reset();
    times_ = false;
    passOverClass();
    return true;
  }
  return false;
}

bool CalloutReader::isThread(std::string_view text, std::size_t end) const {
  bool named = false, times = false;
  for (std::size_t i = next_; i < end; ++i) {
    named = named || items_[i].kind == CalloutItemKind::word;
    times = times || items_[i].kind == CalloutItemKind::times;
  }
  // `4 x 40` of a hole is four, unless the print says that it is tapped.
  if (!named && times && items_[next_].whole && !isWord(end, CalloutWord::tap)) return false;
  if (threadNamed(text)) return true;
  // Not in the tables, and yet a thread by its series: how to cut it is asked elsewhere.
  const Result<ThreadName> name = readThreadName(text);
  return name.ok() && named && name->series && name->perInch;
}

void CalloutReader::passOverClass() {
  // `5/16-18 NC - 2`: the old classes stand alone; they say nothing about the tap.
  const bool dashed = next_ + 1 < items_.size() && items_[next_].kind == CalloutItemKind::dash &&
                      items_[next_ + 1].whole &&
                      items_[next_ + 1].after - items_[next_ + 1].at == 1;
  if (dashed && !isWord(next_ + 2, CalloutWord::count)) next_ += 2;
}

bool CalloutReader::endsThread(const CalloutItem& item) {
  return item.word != CalloutWord::unknown && item.word != CalloutWord::number &&
         item.word != CalloutWord::unit;
}

bool CalloutReader::holdsTogether(std::size_t end) const {
  for (std::size_t i = next_; i < end; ++i) {
    if (items_[i].kind == CalloutItemKind::word && endsThread(items_[i])) return false;
  }
  // `8-32 x 1/2 DEEP` ends before its depth.
  return !(end < items_.size() && isWord(end, CalloutWord::deep) &&
           items_[end - 1].kind == CalloutItemKind::number);
}

void CalloutReader::readWord(const CalloutItem& item) {
  ++next_;
  switch (item.word) {
    case CalloutWord::drill:
      if (kind_ == FeatureKind::slot)
        return fail("this speaks of a hole: trace it as one", item.at);
      return takeMake(Make::drill);
    case CalloutWord::ream:
      return takeMake(Make::ream);
    case CalloutWord::bore:
      return takeMake(Make::bore);
    case CalloutWord::tap:
      return takeTap(item.at);
    case CalloutWord::counterbore:
      return takeSeat(Make::counterbore, item.at);
    case CalloutWord::countersink:
      return takeSeat(Make::countersink, item.at);
    case CalloutWord::spotface:
      return takeSeat(Make::spotface, item.at);
    case CalloutWord::through:
      return takeThrough(item.at);
    case CalloutWord::number:
    case CalloutWord::letter:
      return takeDrillName(item);
    case CalloutWord::pitchCircle:
      return takeNamed(callout_.pitchDiameter, item.word, "pitch circle");
    case CalloutWord::centres:
      return takeNamed(callout_.pitch, item.word, "distance from one to the next");
    case CalloutWord::radius:
      return takeNamed(callout_.radius, item.word, "radius");
    case CalloutWord::chamfer:
      return takeNamed(callout_.chamfer, item.word, "length of the chamfer");
    case CalloutWord::deep:
    case CalloutWord::on:
      wanted_ = item.word;
      return;
    case CalloutWord::wide:
    case CalloutWord::longAll:
      return fail("the figure stands before this word, as in `3/16 WIDE x 5/8 LONG`", item.at);
    case CalloutWord::diameter:
      diameterBefore_ = true;
      return;
    case CalloutWord::clearance:
      clears_ = true;
      return;
    case CalloutWord::forWhat:
      for_ = drills();
      return;
    case CalloutWord::assembly:
      if (wanted_ == CalloutWord::on) wanted_.reset();
      callout_.drilled.locate = Locate::assembly;
      callout_.more = std::string(text_);
      return;
    case CalloutWord::count:
      // `REAM IN POSN`: with its mate, and no number of them.
      if (next_ > 1 && isWord(next_ - 2, CalloutWord::unit)) {
        callout_.drilled.locate = Locate::assembly;
        callout_.more = std::string(text_);
      }
      return;
    case CalloutWord::unit:
    case CalloutWord::spaces:
    case CalloutWord::degrees:
    case CalloutWord::filler:
      return;
    case CalloutWord::unknown:
      return takeUnknown(item);
  }
}

void CalloutReader::takeThrough(std::size_t from) {
  std::optional<Depth>& depth = kind_ == FeatureKind::slot ? slotDepth_ : stage().depth;
  if (depth && !depth->through) return fail("the depth is given already", from);
  depth = Depth{};
}

void CalloutReader::takeNamed(std::optional<Lettered>& member, CalloutWord word,
                              std::string_view what) {
  if (loose_.empty()) {
    if (!member) wanted_ = word;
    return;
  }
  auto [figure, from] = std::move(loose_.back());
  loose_.pop_back();
  put(member, std::move(figure), what, from);
}

void CalloutReader::takeMake(Make make) {
  if (seat_) {
    seat_ = false;
    stages_.emplace_back();
  }
  Stage& last = stage();
  // `1/4 REAM` or `REAM 1/4`; `DRILL & REAM 1/4` is reamed; a thread is made already.
  if ((last.size || !last.thread.empty()) && last.make) stages_.emplace_back();
  stage().make = make;
}

void CalloutReader::takeTap(std::size_t from) {
  Stage& last = stage();
  // `1/4-20 TAP`, and `1/4-20 DRILL & TAP` too.
  const bool isNamed = std::any_of(stages_.begin(), stages_.end(),
                                   [](const Stage& one) { return !one.thread.empty(); });
  if (!last.thread.empty() || (isNamed && !last.size)) return;
  seat_ = false;
  const bool bare = last.size && !last.make;
  if (bare) {
    return ask("say how many threads to the inch, or the series: `1/4-20 TAP`, `2 BA TAP`", from);
  }
  if (last.make || last.size) stages_.emplace_back();
  stage().make = Make::tap;
}

void CalloutReader::takeSeat(Make make, std::size_t from) {
  if (!drills()) return fail("only holes have such a seat", from);
  if (callout_.drilled.seatDiameter || seatMake_) {
    return fail("a seat is given already", from);
  }
  seat_ = true;
  seatMake_ = make;
  if (loose_.empty()) return;
  callout_.drilled.seatDiameter = std::move(loose_.back().figure);
  loose_.pop_back();
}

void CalloutReader::takeDrillName(const CalloutItem& item) {
  const CalloutItem* name = peek();
  const bool number = item.word == CalloutWord::number;
  if (for_) return fail("the number of a screw is no size: say the diameter", item.at);
  const std::string what = number ? "number" : "letter";
  if (!name || (number ? !name->whole : name->kind != CalloutItemKind::word)) {
    return fail("give the " + what + " of the drill behind this", at());
  }
  const std::string_view text = span(next_, next_ + 1);
  putDrill((number ? "#" : "") + std::string(text), name->at);
  ++next_;
}

void CalloutReader::putDrill(const std::string& name, std::size_t from) {
  const Drill* drill = drillNamed(name);
  if (!drill || !drills()) {
    return fail("there is no drill `" + name + "`: numbers go from 1 to 80, letters from A to Z",
                from);
  }
  auto figure = readLength(
      writeDecimal(drill->diameter, Unit::inch) + (unit_ == Unit::inch ? "" : " in"), {unit_});
  if (figure) openStage().size = std::move(figure).value();
}

void CalloutReader::takeUnknown(const CalloutItem& item) {
  const std::string_view text = text_.substr(item.at, item.after - item.at);
  const CalloutItem* behind = peek();
  const bool letters = std::all_of(text.begin(), text.end(), [](char c) {
    return upperAscii(c) >= 'A' && upperAscii(c) <= 'Z';
  });
  if (drills() && letters && text.size() <= 2 && behind && behind->whole && !behind->gapBefore &&
      hasSize() && behind->after - behind->at <= 2) {
    callout_.drilled.limits = std::string(span(next_ - 1, next_ + 1));
    ++next_;
    return;
  }
  const bool drill = isWord(next_, CalloutWord::drill) ||
                     (next_ > 1 && isWord(next_ - 2, CalloutWord::drill) && !hasSize());
  if (drills() && text.size() == 1 && drill) {
    putDrill(std::string(text), item.at);
    return;
  }
  if (kind_ == FeatureKind::slot && tellsOfSlotEnds(text)) return;
  // What goes into the hole is noted; but a taper is another shape.
  if (for_ && text != "TAPER") {
    callout_.more = std::string(text_);
    return;
  }
  const std::string_view meant = calloutWordMeantBy(text);
  const std::string ask = meant.empty() ? "" : "is " + std::string(meant) + " meant? Else ";
  fail("`" + std::string(text) + "` is not understood here: " + ask +
           "leave out what tells neither size, depth nor number",
       item.at);
}

}  // namespace inchwright
