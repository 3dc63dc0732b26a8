#include "app/window/desk_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QListWidget>
#include <QMenuBar>
#include <QMimeData>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/base/look.h"
#include "app/base/sheet_date.h"
#include "app/canvas/face_box.h"
#include "app/canvas/print_view.h"
#include "app/canvas/tone_slip.h"
#include "app/doubts/doubts_slip.h"
#include "app/machine/machine_view.h"
#include "app/session/preferences.h"
#include "app/sheet/setup_slip.h"
#include "app/sheet/sheet_view.h"
#include "app/sheet/stack_slip.h"
#include "app/strip/strip.h"
#include "app/window/asking.h"
#include "app/window/desk_files.h"
#include "app/window/desk_menus.h"
#include "app/window/desk_split.h"
#include "app/window/desk_style.h"
#include "app/window/details_slip.h"
#include "app/window/hands_row.h"
#include "app/window/help_page.h"
#include "app/window/ledger_line.h"
#include "app/window/paper_frame.h"
#include "app/window/start_slip.h"
#include "app/window/tour_slip.h"
#include "core/part/edit.h"

namespace inchwright::app {

DeskWindow::DeskWindow(QWidget* parent) : DeskWindow(askingByDialogs(this), parent) {}

DeskWindow::DeskWindow(Asking asking, QWidget* parent) : QMainWindow(parent), work_(desk_) {
  files_ = new DeskFiles(desk_, std::move(asking), this);
  SheetOptions options = Preferences::sheet();
  options.date = sheetDate();
  options.english = spokenEnglish();
  desk_.setSheetOptions(options);
  build();
  menus_ = new DeskMenus(*this);
  wire();
  connect(&desk_, &Desk::savedChanged, this, &DeskWindow::retitle);
  connect(&desk_, &Desk::edited, this, &DeskWindow::retitle);
  setAttribute(Qt::WA_OpaquePaintEvent);
  resize(1280, 720);
  restoreGeometry(Preferences::windowGeometry());
  retitle();
  strip_->line()->setFocus();
}

DeskWindow::~DeskWindow() {
  // What shows the work, and what keeps it, goes before the work itself.
  delete takeCentralWidget();
  delete menus_;
  delete files_;
}

void DeskWindow::build() {
  auto* ground = new QWidget(this);
  ground->setObjectName(QStringLiteral("ground"));
  auto* column = new QVBoxLayout(ground);
  column->setContentsMargins(6, 0, 6, 6);
  column->setSpacing(2);
  ledger_ = new LedgerLine(desk_, ground);
  column->addWidget(ledger_);
  split_ = new DeskSplit(ground);
  print_ = new PrintView(work_);
  faces_ = new FaceBox(desk_, print_);
  tone_ = new ToneSlip(desk_, print_);
  printPaper_ = new PaperFrame(print_);
  sheet_ = new SheetView(desk_);
  stack_ = new StackSlip(work_, sheet_);
  split_->addWidget(printPaper_);
  split_->addWidget(sheet_);
  split_->setStretchFactor(0, 3);
  split_->setStretchFactor(1, 2);
  split_->setSizes({760, 500});
  column->addWidget(split_, 1);
  column->addWidget(bottomRow(ground));
  setCentralWidget(ground);
  setAcceptDrops(true);
}

QWidget* DeskWindow::bottomRow(QWidget* ground) {
  auto* bottom = new QWidget(ground);
  auto* row = new QHBoxLayout(bottom);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(2);
  auto* slip = new QWidget(bottom);
  strip_ = new Strip(work_, slip);
  doubts_ = new DoubtsSlip(work_, bottom);
  auto* hands = new HandsRow(work_, slip);
  connect(hands, &HandsRow::chosen, this, [this] { strip_->line()->setFocus(); });
  auto* column = new QVBoxLayout(slip);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(strip_, 1);
  column->addWidget(hands);
  auto* doubtsPaper = new PaperFrame(doubts_, bottom);
  row->addWidget(new PaperFrame(slip, bottom), 3);
  row->addWidget(doubtsPaper, 2);
  const int lines = QFontMetrics(deskFont()).lineSpacing();
  doubtsPaper->setMinimumWidth(lines * 16);
  bottom->setFixedHeight(lines * 10);
  return bottom;
}

void DeskWindow::wire() {
  connect(print_, &PrintView::typed, this, &DeskWindow::toStrip);
  connect(sheet_, &SheetView::typed, this, &DeskWindow::toStrip);
  connect(sheet_, &SheetView::pointedAt, this, &DeskWindow::pointedOnSheet);
  connect(ledger_, &LedgerLine::detailsWanted, this, &DeskWindow::showDetails);
  connect(ledger_, &LedgerLine::setupWanted, this, &DeskWindow::showSetup);
  connect(ledger_, &LedgerLine::doubtsWanted, this, [this] { doubts_->list()->setFocus(); });
}

void DeskWindow::toStrip(QKeyEvent* event) {
  // Typing always lands in the strip, wherever one looks.
  strip_->line()->setFocus(Qt::OtherFocusReason);
  QApplication::sendEvent(strip_->line(), event);
}

void DeskWindow::pointedOnSheet(const Id& place, bool extend) {
  switch (work_.doing()) {
    case Doing::looking:
    case Doing::reading:
    case Doing::relating:
    case Doing::zeroing:
    case Doing::stacking:
      break;
    default:
      return;  // these point at the paper of the print, which the sheet is not
  }
  Pointed pointed;
  pointed.place = place;
  pointed.extend = extend;
  work_.point(pointed);
  // Zero is where it was pointed at, and on the sheet at once; with Shift, one of two for the
  // middle.
  if (work_.doing() == Doing::zeroing && !extend) work_.enter({});
}

void DeskWindow::retitle() {
  setWindowTitle(QStringLiteral("%1[*] — Inchwright").arg(files_->shownName()));
  setWindowModified(desk_.unsaved());
}

void DeskWindow::fill(Filling which) {
  printPaper_->setVisible(which != Filling::mine);
  sheet_->setVisible(which != Filling::theirs);
}

void DeskWindow::begin() {
  if (recover()) return;
  if (!Preferences::tourSeen()) {
    files_->openSample();
    startTour();
    return;
  }
  showStart();
}

bool DeskWindow::recover() {
  return files_->recover([] { return &another()->files(); });
}

DeskWindow* DeskWindow::another() {
  auto* window = new DeskWindow;
  window->setAttribute(Qt::WA_DeleteOnClose);
  window->show();
  return window;
}

bool DeskWindow::busy() const {
  return print_->picture().progress().has_value();
}

void DeskWindow::startTour() {
  Preferences::setTourSeen(true);
  if (tour_ == nullptr) tour_ = new TourSlip(centralWidget());
  tour_->begin({{QStringLiteral("print"), print_},
                {QStringLiteral("strip"), strip_},
                {QStringLiteral("sheet"), sheet_},
                {QStringLiteral("doubts"), doubts_},
                {QStringLiteral("ledger"), ledger_}});
}

void DeskWindow::showStart() {
  StartSlip start(this);
  if (start.exec() != QDialog::Accepted) {
    if (!desk_.hasPart()) files_->newJob();
    return;
  }
  if (start.choice() == StartSlip::Choice::sample) {
    files_->openSample();
  } else if (start.choice() == StartSlip::Choice::open) {
    files_->openChosen();
  } else if (start.choice() == StartSlip::Choice::readings) {
    const auto part = start.pastedPart();
    if (part.ok() && files_->newJob()) desk_.applyPart(part, tr("Paste readings"));
  } else if (files_->newJob() && start.choice() == StartSlip::Choice::picture) {
    layPicture();
  }
  print_->fit();
  strip_->line()->setFocus();
}

void DeskWindow::layPicture() {
  const QString file = files_->pictureToLay();
  if (!file.isEmpty() && print_->picture().takeFile(file)) strip_->line()->setFocus();
}

void DeskWindow::deleteChosen() {
  const Selection chosen = desk_.selection();
  if (!desk_.hasPart() || chosen.empty()) {
    emit desk_.refused(tr("nothing is chosen"));
    return;
  }
  Result<Part> next = desk_.part();
  for (const Id& id : chosen.readings) {
    if (next.ok()) next = removeReading(*next, id);
  }
  for (const Id& id : chosen.places) {
    if (!next.ok()) break;
    auto removed = removeFeature(*next, id);
    next = removed.ok() ? Result<Part>(std::move(removed->part)) : removed.error();
  }
  desk_.endMerge();
  if (desk_.applyPart(next, tr("Delete what is chosen"))) desk_.select({});
}

void DeskWindow::showDetails() {
  if (!desk_.hasPart()) files_->newJob();
  DetailsSlip(desk_, this).exec();
}

void DeskWindow::showSetup() {
  if (!desk_.hasPart()) return;
  SetupSlip slip(desk_, this);
  connect(&slip, &SetupSlip::machineKept, this, &Preferences::setMachine);
  connect(&slip, &SetupSlip::sheetChosen, this, &Preferences::setSheet);
  slip.exec();
}

void DeskWindow::showMachine() {
  if (desk_.table() == nullptr || desk_.table()->rows.empty()) {
    emit desk_.refused(tr("there is no place to drive to yet"));
    return;
  }
  auto* atMachine = new MachineView(desk_, this);
  atMachine->setAttribute(Qt::WA_DeleteOnClose);
  atMachine->showFullScreen();
}

void DeskWindow::showHelp() {
  HelpPage(menuBar(), this).exec();
}

void DeskWindow::chooseLook(int choice) {
  const auto look = static_cast<Look::Choice>(choice);
  Preferences::setLook(look);
  Look::choose(look);
  if (auto* application = qobject_cast<QApplication*>(QCoreApplication::instance())) {
    dressApplication(*application);
  }
  emit desk_.viewChanged();
  update();
}

void DeskWindow::chooseEnglish(int choice) {
  const auto english = static_cast<EnglishChoice>(choice);
  Preferences::setEnglish(english);
  speakEnglish(english);
  SheetOptions options = desk_.sheetOptions();
  options.english = spokenEnglish();
  desk_.setSheetOptions(options);
  // The menu in which this was chosen must be done with it first.
  QMetaObject::invokeMethod(this, &DeskWindow::makeAnew, Qt::QueuedConnection);
}

void DeskWindow::makeAnew() {
  delete menus_;
  delete menuBar();
  tour_ = nullptr;
  delete takeCentralWidget();
  build();
  menus_ = new DeskMenus(*this);
  wire();
  menuBar()->show();
  retitle();
  print_->fit();
  strip_->line()->setFocus();
}

void DeskWindow::closeEvent(QCloseEvent* event) {
  if (!files_->mayLeave()) {
    event->ignore();
    return;
  }
  files_->journal().drop();
  Preferences::setWindowGeometry(saveGeometry());
  event->accept();
}

void DeskWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls()) event->acceptProposedAction();
}

void DeskWindow::dropEvent(QDropEvent* event) {
  for (const QUrl& url : event->mimeData()->urls()) {
    const QString file = url.toLocalFile();
    if (!file.endsWith(QStringLiteral(".inchwright"), Qt::CaseInsensitive)) continue;
    event->acceptProposedAction();
    files_->open(file);
    return;
  }
}

void DeskWindow::paintEvent(QPaintEvent* event) {
  QPainter painter(this);
  painter.fillRect(event->rect(), Look::now().desk);
}

void DeskWindow::showEvent(QShowEvent* event) {
  QMainWindow::showEvent(event);
  print_->fit();
}

}  // namespace inchwright::app

#include "moc_desk_window.cpp"
