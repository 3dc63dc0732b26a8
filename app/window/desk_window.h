#pragma once

#include <QMainWindow>

#include "app/session/desk.h"
#include "app/session/work.h"

class QSplitter;

namespace inchwright::app {

struct Asking;
class DeskFiles;
class DeskMenus;
class DoubtsSlip;
class LedgerLine;
class NoteSlip;
class PaperFrame;
class PrintView;
class SheetView;
class Strip;
class ToneSlip;
class TourSlip;
class ViewSlip;
class ZoomSlip;

/// The desk: two sheets of paper, the strip and the doubts. It only wires them to the session.
class DeskWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit DeskWindow(QWidget* parent = nullptr);
  /// With answers instead of dialogs, for tests and for pictures.
  explicit DeskWindow(Asking asking, QWidget* parent = nullptr);
  ~DeskWindow() override;

  Desk& desk() { return desk_; }
  Work& work() { return work_; }
  DeskFiles& files() { return *files_; }

  /// The size and the split it had, or fitted to the screen it is on.
  void openFitted();

  enum class Filling { both, theirs, mine };
  void fill(Filling which);

  /// What a start without a file shows: what was left behind by a crash, else the sample with the
  /// tour at the first start, else an empty job.
  void begin();

  /// Offers what a crash left behind, each piece in a window of its own; true when any was taken.
  bool recover();
  /// One more window, which goes when it is closed.
  static DeskWindow* another();

  /// Whether something is still being worked out in the background, such as a picture.
  bool busy() const;

  PrintView& print() { return *print_; }
  ViewSlip& views() { return *views_; }
  ToneSlip& tone() { return *tone_; }
  SheetView& sheet() { return *sheet_; }
  Strip& strip() { return *strip_; }
  DoubtsSlip& doubts() { return *doubts_; }
  LedgerLine& ledger() { return *ledger_; }

  void startTour();
  void showSetup();
  void showShop();
  void showMachine();
  void showMade();  ///< what came out at the place that is chosen
  void showHelp();
  void showStart();
  void showDetails();
  void showCover();
  void showTogether();
  void showPaper();
  void showUnderstood();
  void deleteChosen();
  /// What is chosen goes into the strip as it is now, to be typed over.
  void amendChosen();
  void copyTable();   ///< onto the clipboard
  void layPicture();  ///< asks for a picture of the print and lays it underneath
  void chooseLook(int choice);
  void chooseTextSize(int pixels);
  void chooseEnglish(int choice);

 protected:
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  void build();
  void wire();
  void toStrip(QKeyEvent* event);
  void pointedOnSheet(const Id& place, bool extend);
  /// Makes everything on the desk anew, in the words spoken now; the work is not touched.
  void makeAnew();
  /// Shows the file as it was looked at when it was left.
  void lookAsLeft();
  void noteLooked();
  void retitle();
  void bottomRow(QWidget* ground);

  Desk desk_;
  Work work_;
  QString lookedFile_;  ///< the file that was on the desk last
  DeskFiles* files_;
  DeskMenus* menus_ = nullptr;
  LedgerLine* ledger_;
  NoteSlip* note_;
  PrintView* print_;
  PaperFrame* printPaper_;
  ViewSlip* views_;
  ZoomSlip* printZoom_;
  ZoomSlip* sheetZoom_;
  ToneSlip* tone_;
  SheetView* sheet_;
  Strip* strip_;
  DoubtsSlip* doubts_;
  QSplitter* split_;  ///< between the sheets
  QSplitter* low_;    ///< between them and what lies below
  TourSlip* tour_ = nullptr;
};

}  // namespace inchwright::app
