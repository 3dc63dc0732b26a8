#include "app/window/start_desk.h"

#include <QApplication>
#include <QBuffer>
#include <QElapsedTimer>
#include <QMenuBar>
#include <QStandardPaths>
#include <algorithm>
#include <cstdio>
#include <optional>
#include <utility>

#include "app/base/look.h"
#include "app/machine/lathe_view.h"
#include "app/machine/machine_view.h"
#include "app/session/file_guard.h"
#include "app/session/preferences.h"
#include "app/sheet/lathe_slip.h"
#include "app/sheet/setup_slip.h"
#include "app/window/desk_files.h"
#include "app/window/desk_style.h"
#include "app/window/desk_window.h"
#include "app/window/end_signals.h"
#include "app/window/help_page.h"
#include "app/window/start_slip.h"
#include "app/words/sheet_file.h"
#include "core/document/atomic_file.h"

namespace inchwright::app {
namespace {

constexpr qint64 kLongestWait = 20000;  // milliseconds for a picture underneath

struct Wanted {
  QString file;
  QString picture;
  QSize size{1280, 720};
  bool lamplight = false;
  bool force = false;
  bool machine = false;
  bool tour = false;
  bool setup = false;
  bool keys = false;
  bool start = false;
  DeskWindow::Filling filling = DeskWindow::Filling::both;
};

int refuse(const QString& why) {
  std::fprintf(stderr, "inchwright: %s\n", qUtf8Printable(why));
  return 2;
}

QString ownWords(const Error& error) {
  return QString::fromStdString(error.text);
}

std::optional<QSize> sizeOf(const QString& text) {
  const QStringList sides = text.split(QLatin1Char('x'));
  if (sides.size() != 2) return std::nullopt;
  const QSize size(sides[0].toInt(), sides[1].toInt());
  const bool sensible =
      std::min(size.width(), size.height()) >= 200 && std::max(size.width(), size.height()) <= 8000;
  return sensible ? std::optional(size) : std::nullopt;
}

/// What else can be shown; false when it is none of these.
bool showNamed(Wanted& wanted, const QString& name) {
  const std::pair<const char*, bool*> names[] = {{"tour", &wanted.tour},
                                                 {"setup", &wanted.setup},
                                                 {"keys", &wanted.keys},
                                                 {"start", &wanted.start},
                                                 {"machine", &wanted.machine}};
  for (const auto& [one, on] : names) {
    if (name == QLatin1String(one)) return *on = true;
  }
  return false;
}

/// Empty, with `why` set, when the arguments can't be used.
std::optional<Wanted> wantedOf(const std::vector<std::string>& args, QString& why) {
  Wanted wanted;
  for (std::size_t i = 0; i < args.size(); ++i) {
    const QString arg = QString::fromLocal8Bit(args[i].c_str());
    const QString next =
        i + 1 < args.size() ? QString::fromLocal8Bit(args[i + 1].c_str()) : QString();
    if (arg == QLatin1String("--picture") && !next.isEmpty()) {
      wanted.picture = next;
      ++i;
    } else if (arg == QLatin1String("--size") && sizeOf(next)) {
      wanted.size = *sizeOf(next);
      ++i;
    } else if (arg == QLatin1String("--fill") &&
               (next == QLatin1String("theirs") || next == QLatin1String("mine"))) {
      wanted.filling =
          next == QLatin1String("mine") ? DeskWindow::Filling::mine : DeskWindow::Filling::theirs;
      ++i;
    } else if (arg == QLatin1String("--lamplight")) {
      wanted.lamplight = true;
    } else if (arg == QLatin1String("--force")) {
      wanted.force = true;
    } else if (arg == QLatin1String("--show") && showNamed(wanted, next)) {
      ++i;
    } else if (arg == QLatin1String("--") && !next.isEmpty()) {
      wanted.file = next;
      ++i;
    } else if (!arg.startsWith(QLatin1Char('-')) && wanted.file.isEmpty()) {
      wanted.file = arg;
    } else {
      why = QStringLiteral("“%1” can't be used here; inchwright --help lists what can").arg(arg);
      return std::nullopt;
    }
  }
  return wanted;
}

/// Answers for a run with nobody in front of it.
Asking unattended() {
  Asking asking;
  asking.fileToOpen = [] { return QString(); };
  asking.pictureToOpen = [] { return QString(); };
  asking.fileToSave = [](const QString&) { return QString(); };
  asking.unsavedWork = [](const QString&) { return Asking::Answer::leave; };
  asking.fileForSheet = [](const QString&) { return QString(); };
  asking.choose = [](const Asking::Question& question) { return question.escape; };
  asking.tell = [](const QString& what) { refuse(what); };
  return asking;
}

/// Of a picture the same holds as of a sheet: what this program did not make is left alone.
int keepPicture(QWidget& widget, const Wanted& wanted) {
  QCoreApplication::processEvents();
  const std::string file = wanted.picture.toStdString();
  const auto free = mayReplace(file, wanted.force);
  if (!free.ok()) return refuse(wanted.picture + QStringLiteral(": ") + ownWords(free.error()));
  QImage image = widget.grab().toImage();
  image.setText(QStringLiteral("Software"), QStringLiteral("Inchwright " INCHWRIGHT_VERSION));
  QBuffer bytes;
  bytes.open(QIODevice::WriteOnly);
  if (!image.save(&bytes, "PNG")) return refuse(QStringLiteral("there is nothing to draw"));
  const auto done =
      replaceFile(file, {bytes.data().constData(), static_cast<std::size_t>(bytes.size())});
  return done.ok() ? 0 : refuse(wanted.picture + QStringLiteral(": ") + ownWords(done.error()));
}

int drawSlip(QDialog&& slip, const Wanted& wanted) {
  slip.show();
  return keepPicture(slip, wanted);
}

int drawPicture(const Wanted& wanted) {
  Look::choose(wanted.lamplight ? Look::Choice::lamplight : Look::Choice::day);
  dressApplication(*qobject_cast<QApplication*>(QCoreApplication::instance()));
  DeskWindow window(unattended());
  const bool opened =
      wanted.file.isEmpty() ? window.files().openSample() : window.files().open(wanted.file);
  if (!opened) return 2;
  window.resize(wanted.size);
  window.fill(wanted.filling);
  window.show();
  QElapsedTimer patience;
  patience.start();
  do QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
  while (window.busy() && patience.elapsed() < kLongestWait);
  if (wanted.tour) window.startTour();
  const bool turned = window.desk().hasPart() && window.desk().part().turned;
  if (wanted.setup && turned) return drawSlip(LatheSlip(window.desk()), wanted);
  if (wanted.setup) return drawSlip(SetupSlip(window.desk()), wanted);
  if (wanted.keys) return drawSlip(HelpPage(window.menuBar()), wanted);
  if (wanted.start) return drawSlip(StartSlip(), wanted);
  if (!wanted.machine) return keepPicture(window, wanted);
  if (window.desk().lathe() != nullptr) {
    LatheView atLathe(window.desk());
    atLathe.resize(wanted.size);
    atLathe.show();
    return keepPicture(atLathe, wanted);
  }
  MachineView atMachine(window.desk());
  atMachine.resize(wanted.size);
  atMachine.show();
  return keepPicture(atMachine, wanted);
}

/// What a crash left and the file that was asked for: both are opened.
void openNamed(DeskWindow& window, const QString& file) {
  if (!window.recover()) {
    window.files().open(file);
    return;
  }
  for (QWidget* widget : QApplication::topLevelWidgets()) {
    auto* other = qobject_cast<DeskWindow*>(widget);
    if (other != nullptr && ownName(other->desk().file()) == ownName(file)) return;
  }
  DeskWindow::another()->files().open(file);
}

}  // namespace

bool asksForPicture(const std::vector<std::string>& args) {
  return std::find(args.begin(), args.end(), "--picture") != args.end();
}

int startDesk(int& argc, char** argv, const std::vector<std::string>& args) {
  QString why;
  const auto wanted = wantedOf(args, why);
  if (!wanted) return refuse(why);
  if (!wanted->picture.isEmpty()) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    // A picture neither reads nor leaves anything of the user's.
    QStandardPaths::setTestModeEnabled(true);
  }
  QApplication application(argc, argv);
  QCoreApplication::setApplicationName(QStringLiteral("Inchwright"));
  QCoreApplication::setApplicationVersion(QStringLiteral(INCHWRIGHT_VERSION));
  if (!wanted->picture.isEmpty()) return drawPicture(*wanted);
  speakEnglish(Preferences::english());
  Look::choose(Preferences::look());
  chooseTextSize(Preferences::textSize());
  dressApplication(application);
  EndSignals ending;
  DeskWindow window;
  window.openFitted();
  window.show();
  if (wanted->file.isEmpty()) {
    window.begin();
  } else {
    openNamed(window, wanted->file);
  }
  // A signal may have ended the first question already.
  return ending.came() != 0 ? 128 + ending.came() : QApplication::exec();
}

}  // namespace inchwright::app
