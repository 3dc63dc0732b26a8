#pragma once

#include <QObject>

class QSocketNotifier;

namespace inchwright::app {

/// Ends the program in good order when it is told to end (SIGTERM), when its terminal or session
/// goes (SIGHUP), and at Ctrl+C (SIGINT): what is not saved is on the disk before it goes, and the
/// next start offers it. Nobody is asked anything, since perhaps nobody is there any more.
class EndSignals : public QObject {
  Q_OBJECT

 public:
  explicit EndSignals(QObject* parent = nullptr);
  ~EndSignals() override;

  /// The signal that came, 0 before.
  int came() const { return came_; }

 private:
  void take();

  int ends_[2] = {-1, -1};
  int came_ = 0;
};

}  // namespace inchwright::app
