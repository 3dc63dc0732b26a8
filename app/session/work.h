#pragma once

#include <QObject>
#include <QPointF>
#include <QString>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "app/picture/askew.h"
#include "app/picture/offer_reader.h"
#include "app/session/desk.h"
#include "app/session/echo.h"
#include "app/session/kit_edit.h"
#include "app/session/offering.h"
#include "app/session/stacked.h"
#include "core/part/axis.h"
#include "core/part/feature.h"
#include "core/part/picture.h"
#include "core/part/reading.h"

namespace inchwright::app {

/// What the hands are doing.
enum class Doing {
  looking,      ///< choose, move a trace, rename, delete
  tracing,      ///< put a feature on the print, then name and size it
  reading,      ///< walk a chain: point at the next feature, type the figure
  relating,     ///< in line, midway, equal …: point at the features
  zeroing,      ///< point at what zero is
  stacking,     ///< choose the two ends of a stack
  rereading,    ///< the second, blind reading of each figure
  squaring,     ///< point at known places of the picture and say where they are
  placingView,  ///< point at where this face is drawn on the picture of another
  accepting,    ///< say why a doubt may stand
  offering,     ///< confirm, one at a time, what the picture offers
};

/// Where on the print a click fell, in inches as drawn in the plane of the current face (x to the
/// right and y up as the view is drawn), and what lies there.
struct Pointed {
  QPointF at;
  Id place;             ///< the place under the pointer; empty on bare paper
  Id reading;           ///< the dimension under the pointer
  bool extend = false;  ///< Shift was held
  double reach = 0;     ///< inches about `at` that a hand takes for the same spot
};

/// The interaction itself, without any widget: canvas, strip and keys report to it, and show what
/// it says. Everything it does ends in an edit of the Desk, so all of it can be undone, and all of
/// it can be driven by text alone with ids.
class Work : public QObject {
  Q_OBJECT

 public:
  explicit Work(Desk& desk, QObject* parent = nullptr);
  ~Work() override;

  Desk& desk() const;
  Doing doing() const;

  void look();
  void trace(FeatureKind kind);
  FeatureKind traceKind() const;
  /// Where the axis of a turned part lies on the print: half way between two clicks.
  void traceCentreLine();
  void read();
  void relate(UnderstandingKind kind);
  /// All that the tracing says is understood without a figure, to be taken together.
  void relateAll();
  void zero();
  void stack();
  void reread();
  /// Asks why doubts may stand, and lets them stand for that reason; `words` say what they are.
  void accept(const std::vector<AcceptedDoubt>& doubts, const QString& words);
  /// Goes through what the picture offers; without offers they are asked for (`offersWanted`).
  void goThroughOffers();
  /// What the picture under this face offers, or nothing any more. What was confirmed stays.
  void noteOffers(std::optional<PictureOffers> offers);
  /// Null while nothing is offered on this face.
  const Offering* offering() const;
  /// One of the figures to choose from, counted from 0; false when nothing is to be chosen.
  bool choose(int number);
  /// Which of the features offered come with the lit reading.
  std::vector<std::size_t> offeredAlongside() const;
  /// By which Enter is deaf at first; `offeringNow` unless a test has its own.
  void setClock(std::function<seen::Offered::Time()> clock);
  /// What is still offered here.
  std::size_t offersWaiting() const;
  /// On to the next of what is offered; false when nothing is.
  bool pass();
  /// Squares up the picture under the current face; refused when there is none. Meanwhile places
  /// are pointed at on the picture as it was taken (see kAsTakenPixelsPerInch).
  void squareUp();
  /// Places this face on the squared-up picture under another; begins by itself when a face without
  /// a picture is turned to. Refused when there is no such picture, or one lies here already.
  /// Meanwhile places are pointed at on that other view, as it is drawn.
  void placeView();
  /// Turns the picture in front by a quarter, anticlockwise. As long as it is not squared up, as it
  /// was taken; else the view is turned, and placed again by pointing at its corner.
  void turnPicture();
  /// Of several pictures under this face the next one comes in front.
  void nextPictureInFront();
  /// Says which of several answers it is: both counted from 0 (`BeyondChains::answers`). False when
  /// that can't be said; the desk has told why.
  bool takeAnswer(std::size_t answers, std::size_t index);
  /// How a picture is shown on which this face is looked for; empty else.
  std::optional<PictureView> viewShown() const;

  Axis axis() const;  ///< the axis chains run along
  void setAxis(Axis axis);
  bool fromFirst() const;  ///< readings start from the first feature, not from the last
  void setFromFirst(bool on);

  /// What stands in the strip by now: a click that goes on to the next place takes it first, where
  /// nothing speaks against it, as Enter would; `typedTaken` then tells. Where something does, the
  /// click is refused with the reason, and only Enter takes it.
  void noteTyped(const QString& text);
  /// A click on the print.
  void point(const Pointed& pointed);
  /// Enter in the strip. Empty text takes the offer. Returns false, with `refused` of the desk
  /// telling why, when nothing was done; the text then stays in the strip.
  bool enter(const QString& text);
  /// Escape: one step back (drop the point, then leave what one is doing); `allLeft` when there is
  /// none.
  void back();

  QString prompt() const;  ///< what is being asked, one line: `From L to A along X:`
  QString offer() const;   ///< what Enter alone would take: `3/8`; empty when there is none
  Echo echo(const QString& text) const;
  /// The features pointed at so far for what is being done, in order.
  std::vector<Id> chosen() const;
  /// A trace that waits for its name and size.
  std::optional<QPointF> pending() const;
  /// While stacking: what was chosen as it adds up, or why it does not; empty before that.
  std::optional<Result<Stacked>> stacked() const;
  /// What is known of the picture under this face: how askew it was taken, while it is being
  /// squared up, and how far places may lie from where it shows them, in inches, once it is. Both
  /// come from whoever reads it, and are empty or 0 until then.
  void noteAskew(std::optional<Askew> askew);
  void noteSquaringError(double inches);
  double squaringError() const;
  /// While squaring up: the places that are known already.
  std::vector<QPointF> marks() const;

 signals:
  void changed();       ///< prompt, offer, chosen or doing changed
  void offersWanted();  ///< nothing is known yet of what the picture offers
  void typedTaken();    ///< a click took what was typed
  void allLeft();       ///< a step back was wanted where there is none
  /// Something on the print should be brought into sight.
  void show(const std::vector<Id>& places, const std::vector<Id>& readings);

 private:
  void tell();
  std::optional<Result<KitEdit>> kitEdit(const QString& text) const;
  void followOffers();
  bool takeTyped(const Pointed& pointed);
  void endIfOver();
  bool canPlaceView() const;
  bool tracesAside() const;
  void followPart();
  void leavePart();
  void dropPointed();
  void followFace();

  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace inchwright::app
