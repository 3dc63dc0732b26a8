#pragma once

#include <QString>
#include <array>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "app/session/offering.h"
#include "app/session/plausible.h"
#include "app/session/stacked.h"
#include "app/session/work.h"
#include "core/lines/lines.h"

namespace inchwright::app {

/// What the hands share whatever they are doing.
struct Hands {
  Desk& desk;
  Axis axis = Axis::x;
  bool fromFirst = false;
  bool stated = false;  ///< the last understanding was said to stand on the print
  /// What was offered as an understanding and left, by part and kind: it is not offered again.
  std::map<std::pair<std::string, UnderstandingKind>, std::vector<std::vector<Id>>> declined = {};
  /// Of the part on the desk.
  const std::vector<std::vector<Id>>& declinedHere(UnderstandingKind kind) const;
  void decline(UnderstandingKind kind, const std::vector<Id>& ids);
  /// How askew the picture under this face was taken, where its lines tell.
  std::optional<Askew> askew = {};
  /// How long and how deep the corners that were pointed out make the part, as it was lettered.
  std::array<std::optional<Lettered>, 2> overall = {};
  std::vector<SquaringPoint> squaredBy = {};  ///< those corners
  double squaringError = 0;  ///< inches a place may lie from where the picture shows it
  std::optional<Offering> offering = {};  ///< what the picture offers
  std::function<seen::Offered::Time()> clock = offeringNow;
  /// Asks for something to be brought into sight; Work passes it on.
  std::vector<Id> showPlaces = {};
  std::vector<Id> showReadings = {};

  LineContext context() const;
  /// The setup that zero and stock belong to while this face is looked at: the one in sight when it
  /// has this face, else the first that has, else one to be made.
  std::size_t setupHere() const;
  /// Whether the print under this face was squared up, so that what is traced on it is to scale.
  bool drawnToScale() const;
  /// Whether something is still offered on the face that is looked at.
  bool offersHere() const;
  /// Where the part stands now; an empty one before there is any.
  const Part& part() const;
  bool isPlace(const QString& id) const;
  /// What the tracing of the part says, as far as its picture can be trusted.
  TracingEvidence evidence() const;
  /// The ends of a reading in the order in which it runs, from the lesser along its axis: the
  /// tracing, else what is already placed, tells which comes first; a chain may be walked against
  /// it.
  std::pair<Id, Id> ordered(const Id& from, const Id& to, Axis along) const;
  /// What a whole typed line does, its reading running as one that was pointed out would.
  Result<LineOutcome> line(const QString& text) const;
  /// Applies what a line made as one step of undo; a refusal goes to the strip.
  bool apply(Result<LineOutcome> outcome);
  bool apply(Part next, const QString& title);
  /// As `apply`, of a part that is known to be sound.
  bool applyChecked(Part next, const QString& title);
};

/// One thing the hands can be doing. It knows what to ask for, what a click and a line of text mean
/// meanwhile, and ends every finished piece in an edit of the desk.
class Activity {
 public:
  explicit Activity(Hands& hands) : hands_(hands) {}
  virtual ~Activity() = default;
  Activity(const Activity&) = delete;
  Activity& operator=(const Activity&) = delete;

  virtual Doing doing() const = 0;
  virtual QString prompt() const = 0;
  virtual QString offer() const { return {}; }
  virtual Echo echo(const QString& text) const;
  virtual void point(const Pointed& pointed) = 0;
  virtual bool enter(const QString& text) = 0;
  /// As `enter`, on the way to the next piece: nothing is finished by it.
  virtual bool goOn(const QString& text) { return enter(text); }
  /// One step back; false when there is none left and the activity is over.
  virtual bool back() = 0;
  /// Takes one of the figures to choose from, counted from 0; false when there is none.
  virtual bool choose(int) { return false; }
  /// On to the next of what is offered; false when nothing is.
  virtual bool pass() { return false; }
  /// Turns what is shown by a quarter, anticlockwise; false when nothing is to be turned here.
  virtual bool turn() { return false; }
  /// How a picture is shown on which a face is looked for.
  virtual std::optional<PictureView> viewShown() const { return {}; }
  virtual std::vector<Id> chosen() const { return {}; }
  /// Features that are offered and come with the lit reading.
  virtual std::vector<std::size_t> alongside() const { return {}; }
  virtual std::optional<QPointF> pending() const { return {}; }
  /// Places of the picture that are known already, numbered as they were pointed at.
  virtual std::vector<QPointF> marks() const { return {}; }
  /// What is stacked up, or why it can't be; empty before it is chosen.
  virtual std::optional<Result<Stacked>> stacked() const { return {}; }
  /// Whether it has done what it was begun for; then one is looking again.
  virtual bool over() const { return false; }
  /// What is traced next, as a matter of course, once it is over.
  virtual std::optional<FeatureKind> next() const { return {}; }
  /// Whether a click there goes on to the next piece, so that what is typed (or, where nothing is,
  /// offered) is first taken as by Enter.
  virtual bool clickTakes(const QString& typed, const Pointed& pointed) const;

 protected:
  Hands& hands_;
};

std::unique_ptr<Activity> looking(Hands& hands);
std::unique_ptr<Activity> tracing(Hands& hands, FeatureKind kind);
std::unique_ptr<Activity> tracingTurned(Hands& hands, FeatureKind kind);
std::unique_ptr<Activity> tracingCentreLine(Hands& hands);
std::unique_ptr<Activity> readingChain(Hands& hands);
std::unique_ptr<Activity> relating(Hands& hands, UnderstandingKind kind);
std::unique_ptr<Activity> relatingAll(Hands& hands);
std::unique_ptr<Activity> settingZero(Hands& hands);
std::unique_ptr<Activity> stacking(Hands& hands);
std::unique_ptr<Activity> rereading(Hands& hands);
std::unique_ptr<Activity> goingThroughOffers(Hands& hands);
std::unique_ptr<Activity> squaringUp(Hands& hands);
std::unique_ptr<Activity> placingView(Hands& hands);
/// Asks why doubts may stand; `words` say what they are.
std::unique_ptr<Activity> accepting(Hands& hands, std::vector<AcceptedDoubt> doubts,
                                    const QString& words);

/// What is said at the strip, in the user's English.
QString tr(const char* text);
/// What a figure says, for the echo: `1 3/16 = 1.1875 in = 30.1625 mm`, with its tolerance and the
/// reader's questions.
Echo echoFigure(const QString& text, Unit unit);
/// Adds to the echo what the tracing says against a reading, and that the same distance is read
/// already.
void addObjection(const Hands& hands, const Reading& reading, Echo& echo);
void addObjection(const TracingEvidence& evidence, bool toScale, const Reading& reading,
                  Echo& echo);
/// A feature as a line names it, its sizes as they were read.
Echo echoFeature(const Hands& hands, const FeatureLine& line);
/// Adds what a turned feature says besides a diameter, and a thread that no table here has.
void addTurned(const Feature& feature, Echo& echo);
/// Adds what to look at again; nothing where there is no question.
void addQuestion(const std::string& question, Echo& echo);
/// What a whole line would do, without doing it; of a reading what its figure says, too.
Echo echoLine(const Hands& hands, const QString& text);
/// Words for people: `X`, `left side`, `in line` …, translated.
QString wordFor(Axis axis);
QString wordFor(FeatureKind kind);
QString wordFor(UnderstandingKind kind);

}  // namespace inchwright::app
