// The desk itself, over the real window without a display.
//
// `keystroke`: from the key that ends a reading to both sheets painted again. `letter`: from a key
// that only writes in the strip. `start`: whole processes from their start to the first paint, with
// the sample open, beside a window of Qt Widgets with nothing in it. `picture`: a process that
// opens a photo of 24 megapixels and squares it up; its peak of memory stands in the counter. `pan`
// and `zoom`: a step over that photo, from the hand to the print painted again; the longest of all
// steps stands in the counter.

#include <benchmark/benchmark.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QAbstractScrollArea>
#include <QApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <QWheelEvent>
#include <chrono>
#include <cstdlib>
#include <string>
#include <vector>

#include "app/canvas/print_view.h"
#include "app/window/desk_files.h"
#include "app/window/desk_style.h"
#include "app/window/desk_window.h"
#include "core/lines/lines.h"
#include "core/measure/writing.h"
#include "tests/support/big_plate.h"
#include "tests/support/desk_application.h"
#include "tests/support/photo_on_desk.h"

namespace inchwright::app {
namespace {

using Clock = std::chrono::steady_clock;

/// Counts what is painted.
class PaintCount : public QObject {
 public:
  explicit PaintCount(QWidget* watched) { watched->installEventFilter(this); }
  int count = 0;

 protected:
  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() == QEvent::Paint) ++count;
    return false;
  }
};

struct DeskUnderKeys {
  explicit DeskUnderKeys(int features) {
    dressApplication(deskApplication());
    window = std::make_unique<DeskWindow>();
    Job job;
    job.parts.push_back(bigPlate(features));
    window->desk().take(std::move(job), {});
    window->resize(1280, 720);
    window->show();
    line = window->findChild<QLineEdit*>(QStringLiteral("line"));
    print = std::make_unique<PaintCount>(window->findChild<QWidget*>(QStringLiteral("print")));
    auto* scroll = window->findChild<QAbstractScrollArea*>(QStringLiteral("sheet"));
    sheet = std::make_unique<PaintCount>(scroll->viewport());
    settle();
  }
  ~DeskUnderKeys() { window->desk().markSaved({}); }

  static void press(QWidget* on, int key, Qt::KeyboardModifiers with = {},
                    const QString& text = {}) {
    QKeyEvent down(QEvent::KeyPress, key, with, text), up(QEvent::KeyRelease, key, with, text);
    QApplication::sendEvent(on, &down);
    QApplication::sendEvent(on, &up);
  }

  void type(const QString& text) {
    for (const QChar one : text) press(line, 0, {}, one);
  }

  void settle() {
    for (int i = 0; i < 3; ++i) QCoreApplication::processEvents();
    QElapsedTimer idle;
    idle.start();
    while (idle.elapsed() < 250) QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
  }

  /// Presses the key and runs until both sheets were painted; seconds.
  double untilPainted(int key, const QString& text) {
    print->count = sheet->count = 0;
    const auto start = Clock::now();
    press(line, key, {}, text);
    while (print->count == 0 || sheet->count == 0) QCoreApplication::processEvents();
    return std::chrono::duration<double>(Clock::now() - start).count();
  }

  std::unique_ptr<DeskWindow> window;
  QLineEdit* line = nullptr;
  std::unique_ptr<PaintCount> print;
  std::unique_ptr<PaintCount> sheet;
};

void keystroke(benchmark::State& state, int features) {
  DeskUnderKeys desk(features);
  for (auto _ : state) {
    desk.type(QString::fromStdString(bigPlateLine()));
    state.SetIterationTime(desk.untilPainted(Qt::Key_Return, QStringLiteral("\r")));
    if (!desk.line->text().isEmpty()) state.SkipWithError("the line was not taken");
    desk.window->desk().undo();
    desk.settle();
  }
}

/// A key that only writes: the strip's echo follows; both sheets are asked to be painted as well,
/// since the echo alone would not touch them.
void letter(benchmark::State& state, int features) {
  DeskUnderKeys desk(features);
  desk.type(QString::fromStdString(bigPlateLine()));
  for (auto _ : state) {
    desk.line->backspace();
    desk.settle();
    desk.window->findChild<QWidget*>(QStringLiteral("print"))->update();
    desk.window->findChild<QAbstractScrollArea*>(QStringLiteral("sheet"))->viewport()->update();
    state.SetIterationTime(desk.untilPainted(0, QStringLiteral("4")));
  }
}

struct Ended {
  double seconds = 0;
  double peakMegabytes = 0;
  bool well = false;
};

/// Runs a program beside this one to its end.
Ended run(const std::vector<std::string>& words) {
  std::vector<char*> args;
  for (const std::string& word : words) args.push_back(const_cast<char*>(word.c_str()));
  args.push_back(nullptr);
  const auto start = Clock::now();
  const pid_t child = fork();
  if (child == 0) {
    execv(args[0], args.data());
    _exit(127);
  }
  int status = 0;
  rusage usage{};
  wait4(child, &status, 0, &usage);
  const double seconds = std::chrono::duration<double>(Clock::now() - start).count();
  return {seconds, static_cast<double>(usage.ru_maxrss) / 1024,
          WIFEXITED(status) && WEXITSTATUS(status) == 0};
}

void process(benchmark::State& state, const std::vector<std::string>& words) {
  deskApplication();  // names the platform and a home for the child as well
  double peak = 0;
  for (auto _ : state) {
    const Ended ended = run(words);
    if (!ended.well) state.SkipWithError("did not end well");
    state.SetIterationTime(ended.seconds);
    peak = std::max(peak, ended.peakMegabytes);
  }
  state.counters["peak_MB"] = peak;
}

/// The photo is painted by a process of its own, once.
void picture(benchmark::State& state, const std::string& program, const std::string& photo) {
  deskApplication();
  if (!QFile::exists(QString::fromStdString(photo)) && !run({program, "--paint", photo}).well) {
    state.SkipWithError("no photo");
    return;
  }
  process(state, {program, "--photo", photo});
}

/// The photo under the print of a window, and a hand that moves it.
struct PhotoUnderHand {
  PhotoUnderHand(const std::string& program, const std::string& photo, QSize size) {
    dressApplication(deskApplication());
    const QString file = QString::fromStdString(photo);
    if (!QFile::exists(file) && !run({program, "--paint", photo}).well) return;
    window = std::make_unique<DeskWindow>();
    window->resize(size);
    window->show();
    print = squareUpPhoto(*window, file);
    if (print == nullptr) return;
    painted = std::make_unique<PaintCount>(print);
    print->zoomBy(2);
    while (painted->count == 0) QCoreApplication::processEvents();
  }
  ~PhotoUnderHand() {
    if (window) window->desk().markSaved({});
  }

  /// Seconds from the event to the print painted again; a step that paints nothing shows as long.
  double send(QEvent& event) {
    constexpr double kGivenUp = 2;
    painted->count = 0;
    const auto start = Clock::now();
    const auto since = [&] { return std::chrono::duration<double>(Clock::now() - start).count(); };
    QApplication::sendEvent(print, &event);
    while (painted->count == 0 && since() < kGivenUp) QCoreApplication::processEvents();
    return since();
  }

  std::unique_ptr<DeskWindow> window;
  PrintView* print = nullptr;
  std::unique_ptr<PaintCount> painted;
};

/// Eleven pixels to and fro over 600, as a hand drags; the first step takes hold as well.
double panned(PhotoUnderHand& hand, int step) {
  const auto drag = [&](QEvent::Type type, int n) {
    const QPointF at(20 + 11 * std::abs(n % 100 - 50), 100 + 3 * std::abs(n % 100 - 50));
    return QMouseEvent(type, at, hand.print->mapToGlobal(at), Qt::MiddleButton, Qt::MiddleButton,
                       {});
  };
  if (step == 0) {
    QMouseEvent press = drag(QEvent::MouseButtonPress, 0);
    QApplication::sendEvent(hand.print, &press);
  }
  QMouseEvent move = drag(QEvent::MouseMove, step + 1);
  return hand.send(move);
}

/// A quarter of a notch of the wheel, in and out again over five notches.
double zoomed(PhotoUnderHand& hand, int step) {
  const QPointF at = QRectF(hand.print->rect()).center();
  const int way = step % 40 < 20 ? 30 : -30;
  QWheelEvent event(at, hand.print->mapToGlobal(at), {}, QPoint(0, way), Qt::NoButton, {},
                    Qt::NoScrollPhase, false);
  return hand.send(event);
}

void frames(benchmark::State& state, const std::string& program, const std::string& photo,
            QSize size, double (*move)(PhotoUnderHand&, int)) {
  PhotoUnderHand hand(program, photo, size);
  if (hand.print == nullptr) {
    state.SkipWithError("no photo");
    return;
  }
  double longest = 0;
  int step = 0;
  for (auto _ : state) {
    const double seconds = move(hand, step++);
    longest = std::max(longest, seconds);
    state.SetIterationTime(seconds);
  }
  state.counters["longest_ms"] = 1000 * longest;
}

void all() {
  const auto add = [](const char* name, auto... with) {
    return benchmark::RegisterBenchmark(name, with...)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
  };
  for (const int features : {200, 2000}) {
    const std::string size = std::to_string(features);
    add(("ours/keystroke_" + size).c_str(), keystroke, features)->Iterations(5)->Repetitions(5);
    add(("ours/letter_" + size).c_str(), letter, features)->Iterations(5)->Repetitions(5);
  }
  const std::string started = DESK_START, bare = BARE_WINDOW;
  static const QTemporaryDir folder;
  const std::string photo = folder.filePath(QStringLiteral("photo.jpg")).toStdString();
  add("ours/start", process, std::vector{started})->Iterations(1)->Repetitions(15);
  add("bareWindow/start", process, std::vector{bare})->Iterations(1)->Repetitions(15);
  add("ours/picture", picture, started, photo)->Iterations(1)->Repetitions(3);
  for (const QSize size : {QSize(1280, 720), QSize(3840, 2160)}) {
    const std::string wide = "_" + std::to_string(size.width());
    add(("ours/pan" + wide).c_str(), frames, started, photo, size, panned)
        ->Iterations(200)
        ->Repetitions(3);
    add(("ours/zoom" + wide).c_str(), frames, started, photo, size, zoomed)
        ->Iterations(80)
        ->Repetitions(3);
  }
}

}  // namespace
}  // namespace inchwright::app

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  inchwright::app::all();
  benchmark::RunSpecifiedBenchmarks();
  benchmark::Shutdown();
  return 0;
}
