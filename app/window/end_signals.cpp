#include "app/window/end_signals.h"

#include <QApplication>
#include <QSocketNotifier>
#include <array>
#include <atomic>
#include <csignal>

#ifndef _WIN32
#include <sys/socket.h>
#include <unistd.h>
#endif

#include "app/window/desk_files.h"
#include "app/window/desk_window.h"

namespace inchwright::app {

#ifndef _WIN32

namespace {

constexpr std::array kEnding{SIGTERM, SIGHUP, SIGINT};

std::atomic<int> wakingEnd{-1};

/// All that may be done inside a signal: the rest waits for the loop.
void noteSignal(int signal) {
  const auto which = static_cast<unsigned char>(signal);
  [[maybe_unused]] const auto written = ::write(wakingEnd.load(), &which, 1);
}

}  // namespace

EndSignals::EndSignals(QObject* parent) : QObject(parent) {
  if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends_) != 0) return;
  wakingEnd = ends_[0];
  auto* wake = new QSocketNotifier(ends_[1], QSocketNotifier::Read, this);
  connect(wake, &QSocketNotifier::activated, this, &EndSignals::take);
  for (const int signal : kEnding) std::signal(signal, noteSignal);
}

EndSignals::~EndSignals() {
  if (ends_[0] < 0) return;
  for (const int signal : kEnding) std::signal(signal, SIG_DFL);
  ::close(ends_[0]);
  ::close(ends_[1]);
}

void EndSignals::take() {
  unsigned char which = 0;
  if (::read(ends_[1], &which, 1) != 1) return;
  came_ = which;
  for (QWidget* widget : QApplication::topLevelWidgets()) {
    if (auto* window = qobject_cast<DeskWindow*>(widget)) window->files().journal().flush();
  }
  // Ends the loops of open questions too.
  QCoreApplication::exit(128 + came_);
}

#else

EndSignals::EndSignals(QObject* parent) : QObject(parent) {}
EndSignals::~EndSignals() = default;
void EndSignals::take() {}

#endif

}  // namespace inchwright::app

#include "moc_end_signals.cpp"
