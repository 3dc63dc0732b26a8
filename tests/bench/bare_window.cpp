// A window of Qt Widgets with nothing in it, from start to first paint: what any program pays.

#include <unistd.h>

#include <QApplication>
#include <QMainWindow>

namespace {

class BareWindow : public QMainWindow {
 protected:
  void paintEvent(QPaintEvent*) override { _exit(0); }
};

}  // namespace

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  BareWindow window;
  window.resize(1280, 720);
  window.show();
  return QApplication::exec();
}
