#include <algorithm>
#include <utility>

#include "core/lines/callout_reader.h"

namespace inchwright {

bool CalloutReader::takeAlike() {
  const CalloutItem& item = items_[next_];
  if (!item.whole) return false;
  std::size_t behind = next_ + 1;
  const auto counts = [&](std::size_t i) {
    return isWord(i, CalloutWord::count) || isWord(i, CalloutWord::spaces);
  };
  while (behind < items_.size() &&
         (items_[behind].kind == CalloutItemKind::separator ||
          isWord(behind, CalloutWord::filler) ||
          (items_[behind].kind == CalloutItemKind::dash && counts(behind + 1)))) {
    ++behind;
  }
  const bool spaces = isWord(behind, CalloutWord::spaces);
  bool counted = spaces || isWord(behind, CalloutWord::count);
  const bool times = next_ + 1 < items_.size() && items_[next_ + 1].kind == CalloutItemKind::times;
  if (!counted && times && callout_.alike == 0 && !hasSize()) {
    counted = kind_ == FeatureKind::slot ? figuresAhead() > 2
                                         : !depthFollowsTimes() && !angleFollowsTimes();
  }
  if (!counted) return false;
  const std::string digits(span(next_, next_ + 1));
  const int count = digits.size() > 4 ? kMostAlike + 1 : std::stoi(digits);
  if (count < 1 || count > kMostAlike) {
    fail("how many there are is from 1 to 1000", item.at);
    return true;
  }
  if (callout_.alike != 0) {
    fail("how many there are is said already", item.at);
    return true;
  }
  callout_.alike = count + (spaces ? 1 : 0);
  callout_.spaces = spaces;
  if (spaces && kind_ == FeatureKind::row && !callout_.pitch) wanted_ = CalloutWord::centres;
  next_ = times && !spaces && !isWord(behind, CalloutWord::count) ? next_ + 2 : behind + 1;
  return true;
}

std::size_t CalloutReader::figuresAhead() const {
  std::size_t count = 0;
  for (std::size_t i = next_; i < items_.size(); ++i) {
    if (startsFigure(i) && (i == next_ || !startsFigure(i - 1))) ++count;
  }
  return count;
}

bool CalloutReader::depthFollowsTimes() const {
  std::size_t i = next_ + 2;
  while (startsFigure(i) || isWord(i, CalloutWord::unit)) ++i;
  return isWord(i, CalloutWord::deep);
}

bool CalloutReader::angleFollowsTimes() const {
  std::size_t i = next_ + 2;
  while (startsFigure(i)) ++i;
  return i < items_.size() && items_[i].word == CalloutWord::degrees;
}

bool CalloutReader::takeAngle() {
  std::size_t end = next_ + 1;
  while (end < items_.size() && items_[end].kind == CalloutItemKind::number) ++end;
  const bool marked = end < items_.size() && items_[end].word == CalloutWord::degrees;
  if (!marked) return false;
  auto angle = readAngle(span(next_, end + 1));
  if (!angle) {
    fail(angle.error().text, items_[next_].at);
    return true;
  }
  if (callout_.angle) fail("an angle is given already", items_[next_].at);
  callout_.angle = std::move(angle).value();
  next_ = end + 1;
  times_ = false;
  return true;
}

void CalloutReader::takeFigure() {
  const std::size_t begin = next_;
  std::size_t end = begin + 1;
  while (end < items_.size() && end < begin + kWidestSpan && belongsToFigure(end)) ++end;
  if (isWord(end, CalloutWord::count) || isWord(end, CalloutWord::spaces)) {
    // `1/4 2 HOLES`: the last number says how many.
    if (end > begin + 1 && items_[end - 1].whole) --end;
  }
  for (; end > begin; --end) {
    auto figure = readLength(span(begin, end), {unit_});
    if (!figure) {
      if (end == begin + 1) return fail(figure.error().text, items_[begin].at);
      continue;
    }
    if (isCountOrSize(begin, end) || isRange(end)) return;
    next_ = end;
    return place(std::move(figure).value(), items_[begin].at);
  }
}

bool CalloutReader::belongsToFigure(std::size_t i) const {
  const CalloutItem& item = items_[i];
  if (item.kind == CalloutItemKind::number || item.kind == CalloutItemKind::symbol) return true;
  if (item.kind == CalloutItemKind::word) return item.word == CalloutWord::unit;
  // `+.0005/-.0000`.
  if (item.kind == CalloutItemKind::separator) return text_[item.at] == '/';
  return item.kind == CalloutItemKind::dash && !(i + 1 < items_.size() && items_[i + 1].gapBefore);
}

bool CalloutReader::isCountOrSize(std::size_t begin, std::size_t end) {
  const bool dashed = end == begin + 3 && items_[begin].whole && span(begin, begin + 1) != "1" &&
                      items_[begin + 1].kind == CalloutItemKind::dash && !items_[begin + 2].whole;
  if (!dashed || !drills()) return false;
  const std::string count(span(begin, begin + 1)), size(span(begin + 2, end));
  ask("is this " + count + " holes of " + size + ", or one of " + count + " " + size + "? Write `" +
          count + " x " + size + "` or `" + count + " " + size + "`",
      items_[begin].at);
  return true;
}

bool CalloutReader::isRange(std::size_t end) {
  const bool range = end + 1 < items_.size() && items_[end].kind == CalloutItemKind::dash &&
                     !items_[end].gapBefore && !items_[end + 1].gapBefore &&
                     items_[end + 1].kind == CalloutItemKind::number;
  if (range) fail("are these limits? Write them `.2505/.2500`", items_[end].at);
  return range;
}

Stage& CalloutReader::stage() {
  if (stages_.empty()) stages_.emplace_back();
  return stages_.back();
}

Stage& CalloutReader::openStage() {
  const Stage& last = stage();
  if (last.size || !last.thread.empty()) stages_.emplace_back();
  return stages_.back();
}

void CalloutReader::place(Lettered figure, std::size_t from) {
  const bool times = std::exchange(times_, false);
  const std::optional<CalloutWord> wanted = std::exchange(wanted_, std::nullopt);
  const bool deepBehind = isWord(next_, CalloutWord::deep) &&
                          (isSized() || !startsFigure(next_ + 1) || isNamed(next_ + 1));
  if (deepBehind || wanted == CalloutWord::deep) {
    if (deepBehind) ++next_;
    return placeDepth(std::move(figure), from);
  }
  if (isRounded() && (figure.symbol == SizeSymbol::diameter ||
                      isWord(next_, CalloutWord::diameter) || diameterBefore_)) {
    return fail("a radius is wanted here, and this is lettered as a diameter", from);
  }
  if (figure.symbol == SizeSymbol::radius || wanted == CalloutWord::radius) {
    return put(callout_.radius, std::move(figure), "radius", from);
  }
  if (wanted == CalloutWord::on || wanted == CalloutWord::pitchCircle) {
    return put(callout_.pitchDiameter, std::move(figure), "pitch circle", from);
  }
  if (wanted == CalloutWord::centres) {
    return put(callout_.pitch, std::move(figure), "distance from one to the next", from);
  }
  if (wanted == CalloutWord::chamfer || kind_ == FeatureKind::chamfer) {
    return put(callout_.chamfer, std::move(figure), "length of the chamfer", from);
  }
  if (isRounded()) {
    return put(callout_.radius, std::move(figure), "radius", from);
  }
  if (kind_ == FeatureKind::slot) return placeInSlot(std::move(figure), from);
  if (nameFollows()) {
    loose_.push_back({std::move(figure), from});
    return;
  }
  // `C'BORE 3/8 x 3/16 DEEP, 1/4 DRILL`: the hole stands behind its seat.
  if (seat_ && isSized() && isMade()) seat_ = false;
  if (seat_ && !callout_.drilled.seatDiameter) {
    return put(callout_.drilled.seatDiameter, std::move(figure), "seat's diameter", from);
  }
  if (!seat_ && times && hasSize() && isNoDepth(figure, from)) return;
  if (seat_ || (times && hasSize())) return placeDepth(std::move(figure), from);
  Stage& one = openStage();
  one.size = std::move(figure);
}

bool CalloutReader::isNoDepth(const Lettered& figure, std::size_t from) {
  const std::string& text = figure.text;
  const Stage& last = stages_.back();
  const bool metric = last.thread.size() > 1 && (last.thread[0] == 'M' || last.thread[0] == 'm') &&
                      last.thread[1] >= '0' && last.thread[1] <= '9';
  // No pitch in use is wider than 6 mm, and hardly a thread is no deeper.
  const Int128 bare =
      figure.value.ticks() /
      (figure.unit == Unit::inch ? Length::kTicksPerInch : Length::kTicksPerMillimetre);
  if (metric && bare < 4 && text.find('/') == std::string::npos) {
    ask("is " + text + " the pitch of " + last.thread +
            ", which is none in use, or how deep it is? Write `x " + text + " DEEP`",
        from);
    return true;
  }
  const bool whole = text.find_first_not_of("0123456789") == std::string::npos;
  if (!whole || bare < 2 || unit_ != Unit::inch || !last.size) return false;
  const std::string& size = last.size->text;
  ask("is " + text + " how many there are, or how deep? Write `" + text + " x " + size + "` or `" +
          size + " x " + text + " DEEP`",
      from);
  return true;
}

bool CalloutReader::isNamed(std::size_t i) const {
  while (startsFigure(i) || isWord(i, CalloutWord::unit)) ++i;
  return isWord(i, CalloutWord::deep) || makeWord(i) || seatWord(i);
}

bool CalloutReader::makeWord(std::size_t i) const {
  return isWord(i, CalloutWord::drill) || isWord(i, CalloutWord::ream) ||
         isWord(i, CalloutWord::bore) || isWord(i, CalloutWord::tap);
}

bool CalloutReader::isMade() const {
  std::size_t i = next_;
  while (isWord(i, CalloutWord::filler) || isWord(i, CalloutWord::diameter)) ++i;
  return makeWord(i);
}

bool CalloutReader::isSizeAt(std::size_t i) const {
  if (!startsFigure(i)) return false;
  while (startsFigure(i) || isWord(i, CalloutWord::unit)) ++i;
  return !isWord(i, CalloutWord::deep) &&
         !(i < items_.size() && items_[i].word == CalloutWord::degrees);
}

bool CalloutReader::isSized() const {
  return seat_ ? callout_.drilled.seatDiameter.has_value() : hasSize();
}

bool CalloutReader::hasSize() const {
  return std::any_of(stages_.begin(), stages_.end(),
                     [](const Stage& one) { return one.size.has_value() || !one.thread.empty(); });
}

bool CalloutReader::nameFollows() const {
  std::size_t i = next_;
  while (isWord(i, CalloutWord::filler) || isWord(i, CalloutWord::diameter)) ++i;
  if (seatWord(i)) return hasSize() && !isSizeAt(i + 1);
  const bool named = isWord(i, CalloutWord::pitchCircle) || isWord(i, CalloutWord::centres) ||
                     isWord(i, CalloutWord::radius) || isWord(i, CalloutWord::chamfer);
  // `3/32 PITCH 1/2` is a hole and then the pitch.
  return named && (hasSize() || !startsFigure(i + 1) || isNamed(i + 1));
}

bool CalloutReader::seatWord(std::size_t i) const {
  return isWord(i, CalloutWord::counterbore) || isWord(i, CalloutWord::countersink) ||
         isWord(i, CalloutWord::spotface);
}

void CalloutReader::placeDepth(Lettered figure, std::size_t from) {
  if (kind_ == FeatureKind::slot) return setDepth(slotDepth_, std::move(figure), from);
  if (!drills()) return fail("only holes and slots have a depth", from);
  if (seat_) return put(callout_.drilled.seatDepth, std::move(figure), "seat's depth", from);
  setDepth(stage().depth, std::move(figure), from);
}

void CalloutReader::setDepth(std::optional<Depth>& depth, Lettered figure, std::size_t from) {
  if (depth) return fail("the depth is given already", from);
  depth = Depth{false, std::move(figure)};
}

void CalloutReader::placeInSlot(Lettered figure, std::size_t from) {
  std::size_t i = next_;
  while (isWord(i, CalloutWord::filler) || isWord(i, CalloutWord::diameter)) ++i;
  if (isWord(i, CalloutWord::wide)) {
    put(callout_.width, std::move(figure), "width", from);
  } else if (isWord(i, CalloutWord::longAll)) {
    put(callout_.length, std::move(figure), "length", from);
  } else if (isWord(i, CalloutWord::centres)) {
    put(callout_.pitch, std::move(figure), "distance between centres", from);
  } else {
    loose_.push_back({std::move(figure), from});
    return;
  }
  next_ = i + 1;
}

}  // namespace inchwright
