#include "app/session/work.h"

#include <QElapsedTimer>
#include <utility>

#include "app/session/activity.h"
#include "app/session/doubt_edits.h"
#include "app/session/offer_walk.h"
#include "app/session/picture_edits.h"

namespace inchwright::app {

struct Work::State {
  explicit State(Desk& desk) : hands{desk}, activity(looking(hands)) {}

  Hands hands;
  std::unique_ptr<Activity> activity;
  FeatureKind kind = FeatureKind::hole;
  Face face = Face::top;
  int part = 0;
  std::size_t parts = 0;
  std::string partName;  ///< a part that only moved among the others is still the same
  QString typed;
  QElapsedTimer ended;  ///< since one thing was done and another began by itself

  void begin(std::unique_ptr<Activity> next) {
    activity = std::move(next);
    ended.invalidate();
  }
};

Work::Work(Desk& desk, QObject* parent) : QObject(parent), state_(std::make_unique<State>(desk)) {
  // What was pointed at and not yet said was of the other document.
  connect(&desk, &Desk::taken, this, [this] {
    state_->hands.declined.clear();
    look();
  });
  connect(&desk, &Desk::edited, this, &Work::followPart);
  connect(&desk, &Desk::edited, this, &Work::followOffers);
  connect(&desk, &Desk::edited, this, &Work::changed);
  connect(&desk, &Desk::viewChanged, this, &Work::followPart);
  connect(&desk, &Desk::viewChanged, this, &Work::followFace);
  connect(&desk, &Desk::viewChanged, this, &Work::changed);
  connect(&desk, &Desk::selectionChanged, this, &Work::changed);
  followPart();
}

Work::~Work() = default;

Desk& Work::desk() const {
  return state_->hands.desk;
}
Doing Work::doing() const {
  return state_->activity->doing();
}
FeatureKind Work::traceKind() const {
  return state_->kind;
}
Axis Work::axis() const {
  return state_->hands.axis;
}
bool Work::fromFirst() const {
  return state_->hands.fromFirst;
}
QString Work::prompt() const {
  return state_->activity->prompt();
}
QString Work::offer() const {
  return state_->activity->offer();
}
/// Where a line says what goes together in the job, whatever is being done; not where words of
/// one's own are asked for.
std::optional<Result<KitEdit>> Work::kitEdit(const QString& text) const {
  switch (doing()) {
    case Doing::looking:
    case Doing::tracing:
    case Doing::reading:
    case Doing::relating:
    case Doing::zeroing:
    case Doing::stacking:
      return kitEditOf(desk(), text);
    default:
      return std::nullopt;
  }
}

Echo Work::echo(const QString& text) const {
  if (const auto edit = kitEdit(text.trimmed())) return echoOf(*edit);
  return state_->activity->echo(text.trimmed());
}
std::vector<Id> Work::chosen() const {
  return state_->activity->chosen();
}
std::optional<QPointF> Work::pending() const {
  return state_->activity->pending();
}

std::optional<Result<Stacked>> Work::stacked() const {
  return state_->activity->stacked();
}

void Work::noteAskew(std::optional<Askew> askew) {
  if (std::exchange(state_->hands.askew, askew) == askew) return;
  if (doing() == Doing::squaring) tell();
}

void Work::noteSquaringError(double inches) {
  state_->hands.squaringError = inches;
}

double Work::squaringError() const {
  return state_->hands.squaringError;
}

std::vector<QPointF> Work::marks() const {
  return state_->activity->marks();
}

void Work::look() {
  state_->begin(looking(state_->hands));
  tell();
}

void Work::trace(FeatureKind kind) {
  state_->kind = kind;
  state_->begin(tracing(state_->hands, kind));
  tell();
}

void Work::traceCentreLine() {
  state_->kind = FeatureKind::point;
  state_->begin(tracingCentreLine(state_->hands));
  tell();
}

void Work::read() {
  state_->begin(readingChain(state_->hands));
  tell();
}

void Work::relate(UnderstandingKind kind) {
  state_->begin(relating(state_->hands, kind));
  tell();
}

void Work::relateAll() {
  state_->begin(relatingAll(state_->hands));
  tell();
}

void Work::zero() {
  state_->begin(settingZero(state_->hands));
  tell();
}

void Work::stack() {
  state_->begin(stacking(state_->hands));
  tell();
}

void Work::reread() {
  state_->begin(rereading(state_->hands));
  tell();
}

void Work::goThroughOffers() {
  if (!state_->hands.offersHere()) {
    emit offersWanted();
    return;
  }
  state_->begin(goingThroughOffers(state_->hands));
  if (state_->activity->over()) state_->begin(looking(state_->hands));
  tell();
}

void Work::noteOffers(std::optional<PictureOffers> offers) {
  Hands& hands = state_->hands;
  if (!offers && !hands.offering) return;
  hands.offering.reset();
  if (offers) {
    seen::Offers here = offersOfFace(offers->offers);
    const std::vector<bool> certain = certainOf(here, offers->toInches);
    hands.offering = Offering{seen::Offered(std::move(here), hands.clock()), offers->toInches,
                              desk().partIndex(), desk().face(), certain};
    hands.offering->passedBy = passedBy(offers->offers);
  }
  if (doing() == Doing::offering) state_->begin(looking(hands));
  tell();
}

const Offering* Work::offering() const {
  return state_->hands.offersHere() ? &*state_->hands.offering : nullptr;
}

bool Work::choose(int number) {
  if (!state_->activity->choose(number)) return false;
  if (state_->activity->over()) state_->begin(looking(state_->hands));
  tell();
  return true;
}

std::vector<std::size_t> Work::offeredAlongside() const {
  return state_->activity->alongside();
}

std::size_t Work::offersWaiting() const {
  return state_->hands.offersHere() ? OfferWalk(state_->hands).waiting().size() : 0;
}

void Work::setClock(std::function<seen::Offered::Time()> clock) {
  state_->hands.clock = std::move(clock);
}

bool Work::pass() {
  if (!state_->activity->pass()) return false;
  tell();
  return true;
}

/// What was confirmed and is undone is open again.
void Work::followOffers() {
  Hands& hands = state_->hands;
  if (!hands.offering || hands.offering->part != desk().partIndex()) return;
  std::erase_if(hands.offering->taken, [&](const Offering::Taken& one) {
    const Part& part = hands.part();
    if (part.feature(one.id) != nullptr || part.reading(one.id) != nullptr) return false;
    hands.offering->offered.reopen(one.one, hands.clock());
    return true;
  });
}

void Work::accept(const std::vector<AcceptedDoubt>& doubts, const QString& words) {
  state_->begin(accepting(state_->hands, doubts, words));
  tell();
}

void Work::squareUp() {
  Desk& on = desk();
  if (!on.hasPart() || pictureUnder(on.job(), on.part(), on.face()) == nullptr) {
    emit on.refused(tr("There is no picture under this face"));
    return;
  }
  state_->begin(squaringUp(state_->hands));
  tell();
}

bool Work::canPlaceView() const {
  const Desk& on = desk();
  return on.hasPart() && viewOf(on.part(), on.face()) == nullptr &&
         !squaredViews(on.job(), on.part()).empty();
}

void Work::placeView() {
  if (!canPlaceView()) {
    emit desk().refused(tr("There is no squared-up picture that this face could be found on"));
    return;
  }
  state_->begin(placingView(state_->hands));
  tell();
}

void Work::turnPicture() {
  Desk& on = desk();
  const Picture* under = on.hasPart() ? pictureUnder(on.job(), on.part(), on.face()) : nullptr;
  if (doing() != Doing::placingView && under == nullptr) {
    emit on.refused(tr("There is no picture under this face"));
    return;
  }
  if (doing() != Doing::placingView) {
    if (doing() == Doing::squaring || under->points.empty()) {
      on.endMerge();
      if (auto next = turnAsTaken(on.job(), under->name); next.ok()) {
        on.apply(*std::move(next), tr("Turn the picture by a quarter"));
      }
      return;
    }
    state_->begin(placingView(state_->hands));
  }
  state_->activity->turn();
  tell();
}

void Work::nextPictureInFront() {
  Desk& on = desk();
  if (!on.hasPart() || viewsOf(on.part(), on.face()).size() < 2) {
    emit on.refused(tr("No other picture lies under this face; Ctrl+L lays one"));
    return;
  }
  if (doing() == Doing::squaring) look();
  on.endMerge();
  on.apply(nextInFront(on.job(), on.partIndex(), on.face()), tr("The next picture in front"));
}

bool Work::takeAnswer(std::size_t answers, std::size_t index) {
  Desk& on = desk();
  auto settled = app::takeAnswer(on.part(), on.solution().beyond.answers[answers], index);
  if (!settled.ok()) {
    emit on.refused(QString::fromStdString(settled.error().text));
    return false;
  }
  on.endMerge();
  return on.applyPart(std::move(settled->part), settled->title);
}

std::optional<PictureView> Work::viewShown() const {
  return state_->activity->viewShown();
}

/// A second picture that is not squared up would put places elsewhere than the first does.
bool Work::tracesAside() const {
  const Desk& on = desk();
  if (doing() != Doing::tracing || state_->hands.drawnToScale() || !on.hasPart()) return false;
  const auto views = viewsOf(on.part(), on.face());
  return std::any_of(views.begin(), views.end(), [&](const PictureView* view) {
    const Picture* picture = on.job().picture(view->picture);
    return picture != nullptr && picture->points.size() >= 2;
  });
}

void Work::followPart() {
  State& now = *state_;
  const Job& job = desk().job();
  const std::string name = now.hands.part().name;
  const bool sameRow = std::exchange(now.part, desk().partIndex()) == desk().partIndex();
  const bool asMany = std::exchange(now.parts, job.parts.size()) == job.parts.size();
  if (sameRow && asMany) {
    // One that is called otherwise is still the same. Where others moved past it, it is chosen
    // anew at once; where that was undone, it is not.
    if (job.part(now.partName) == nullptr) now.partName = name;
    QMetaObject::invokeMethod(this, &Work::leavePart, Qt::QueuedConnection);
    return;
  }
  leavePart();
}

/// What was pointed at lies on another part now; what one is doing goes on there. A reason that is
/// asked for stays with its own doubt, and offers with their own face.
void Work::leavePart() {
  State& now = *state_;
  const std::string name = now.hands.part().name;
  if (std::exchange(now.partName, name) == name) return;
  dropPointed();
  switch (doing()) {
    case Doing::rereading:
      return now.begin(rereading(now.hands));
    case Doing::relating:
      // All at once they were found in the tracing of the other.
      if (!chosen().empty()) now.begin(relatingAll(now.hands));
      return;
    case Doing::squaring:
    case Doing::placingView:
      return now.begin(looking(now.hands));
    default:
      return;
  }
}

/// Takes back what was pointed at and not yet said, and nothing else.
void Work::dropPointed() {
  const bool pointed = doing() == Doing::tracing || doing() == Doing::reading ||
                       doing() == Doing::relating || doing() == Doing::zeroing ||
                       doing() == Doing::stacking;
  while (pointed && (pending() || !chosen().empty()) && state_->activity->back()) {
  }
}

/// Whoever turns to a face that has no picture most likely has it on the same sheet.
void Work::followFace() {
  if (std::exchange(state_->face, desk().face()) == desk().face()) return;
  if (doing() == Doing::tracing) dropPointed();
  if (doing() == Doing::rereading || !canPlaceView()) {
    // What was pointed at lies on another face now.
    if (doing() == Doing::placingView || doing() == Doing::squaring) look();
    return;
  }
  placeView();
}

void Work::setAxis(Axis axis) {
  state_->hands.axis = axis;
  tell();
}

void Work::setFromFirst(bool on) {
  state_->hands.fromFirst = on;
  tell();
}

void Work::noteTyped(const QString& text) {
  state_->typed = text.trimmed();
}

void Work::point(const Pointed& pointed) {
  state_->ended.invalidate();
  if (tracesAside()) {
    emit desk().refused(tr(
        "The picture in front is not squared up, so this would not lie where the others show it: "
        "Ctrl+U squares it up, Ctrl+Shift+F brings the next one in front"));
  } else if (takeTyped(pointed)) {
    state_->activity->point(pointed);
    endIfOver();
  }
  tell();
}

/// Whether the click may do what it is for: what is typed was taken, or is none of its business.
bool Work::takeTyped(const Pointed& pointed) {
  Activity& activity = *state_->activity;
  const QString text = state_->typed;
  if (!activity.clickTakes(text, pointed)) return true;
  if (!text.isEmpty()) {
    const Echo said = echo(text);
    if (said.refused || said.doubtful || kitEdit(text)) {
      emit desk().refused(said.refused
                              ? said.text
                              : tr("%1. Enter takes it even so, a click does not").arg(said.text));
      return false;
    }
  }
  if (!activity.goOn(text)) return false;
  state_->typed.clear();
  emit typedTaken();
  return true;
}

/// What is done may have a next step that goes without saying; else one is looking again.
void Work::endIfOver() {
  if (!state_->activity->over()) return;
  const auto kind = state_->activity->next();
  if (kind) state_->kind = *kind;
  state_->begin(kind ? tracing(state_->hands, *kind) : looking(state_->hands));
  state_->ended.start();
}

bool Work::enter(const QString& text) {
  constexpr qint64 kSecondPress = 350;  // milliseconds: no answer to a question that came since
  const State& now = *state_;
  if (text.isEmpty() && now.ended.isValid() && now.ended.elapsed() < kSecondPress) return false;
  const auto edit = kitEdit(text.trimmed());
  const bool done = edit ? applyKit(desk(), *edit) : state_->activity->enter(text.trimmed());
  endIfOver();
  tell();
  return done;
}

void Work::back() {
  const bool stepped = state_->activity->back();
  if (stepped && state_->activity->over()) state_->begin(looking(state_->hands));
  const bool left = !stepped && doing() != Doing::looking;
  if (left) state_->begin(looking(state_->hands));
  tell();
  if (!stepped && !left) emit allLeft();
}

void Work::tell() {
  Hands& hands = state_->hands;
  const auto places = std::exchange(hands.showPlaces, {});
  const auto readings = std::exchange(hands.showReadings, {});
  emit changed();
  if (!places.empty() || !readings.empty()) emit show(places, readings);
}

}  // namespace inchwright::app

#include "moc_work.cpp"
