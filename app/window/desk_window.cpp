#include "app/window/desk_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QMimeData>
#include <QPainter>
#include <QPushButton>
#include <QScreen>
#include <QStyle>
#include <QVBoxLayout>
#include <algorithm>

#include "app/base/look.h"
#include "app/base/sheet_date.h"
#include "app/base/spoken_english.h"
#include "app/canvas/print_view.h"
#include "app/canvas/tone_slip.h"
#include "app/canvas/view_slip.h"
#include "app/canvas/zoom_slip.h"
#include "app/doubts/doubts_slip.h"
#include "app/session/preferences.h"
#include "app/sheet/lathe_slip.h"
#include "app/sheet/setup_slip.h"
#include "app/sheet/sheet_view.h"
#include "app/sheet/shop_slip.h"
#include "app/sheet/slips_on_sheet.h"
#include "app/strip/strip.h"
#include "app/window/asking.h"
#include "app/window/at_machine.h"
#include "app/window/cover_slip.h"
#include "app/window/desk_files.h"
#include "app/window/desk_menus.h"
#include "app/window/desk_split.h"
#include "app/window/desk_style.h"
#include "app/window/details_slip.h"
#include "app/window/hands_row.h"
#include "app/window/help_page.h"
#include "app/window/ledger_line.h"
#include "app/window/note_slip.h"
#include "app/window/paper_frame.h"
#include "app/window/paper_slip.h"
#include "app/window/print_menu.h"
#include "app/window/start_slip.h"
#include "app/window/together_slip.h"
#include "app/window/tour_slip.h"
#include "app/window/understood_slip.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

constexpr QSize kLargestFitted(1680, 1050);  // device-independent pixels

}  // namespace

DeskWindow::DeskWindow(QWidget* parent) : DeskWindow(askingByDialogs(this), parent) {}

DeskWindow::DeskWindow(Asking asking, QWidget* parent) : QMainWindow(parent), work_(desk_) {
  files_ = new DeskFiles(desk_, std::move(asking), this);
  connect(files_, &DeskFiles::wrote, this,
          [this](const QStringList& files) { note_->sayWritten(files); });
  connect(files_, &DeskFiles::remarked, this, [this](const QString& text) { note_->say(text); });
  SheetOptions options = Preferences::sheet();
  options.date = sheetDate();
  options.english = spokenEnglish();
  desk_.setSheetOptions(options);
  build();
  const auto own = Preferences::shop();
  own ? desk_.setOwnShop(*own) : note_->sayTrouble(own.error());
  menus_ = new DeskMenus(*this);
  wire();
  connect(&desk_, &Desk::savedChanged, this, &DeskWindow::retitle);
  connect(&desk_, &Desk::savedChanged, this, &DeskWindow::lookAsLeft);
  connect(&desk_, &Desk::edited, this, &DeskWindow::retitle);
  setAttribute(Qt::WA_OpaquePaintEvent);
  resize(1280, 720);
  retitle();
  strip_->line()->setFocus();
}

DeskWindow::~DeskWindow() {
  // What shows the work, and what keeps it, goes before the work itself.
  delete takeCentralWidget();
  delete menus_;
  delete files_;
}

void DeskWindow::openFitted() {
  const QRect room = screen()->availableGeometry();
  if (!restoreGeometry(Preferences::windowGeometry())) {
    // All of a small screen; of a large one as much as is easily looked over.
    if (room.width() <= kLargestFitted.width() || room.height() <= kLargestFitted.height()) {
      setWindowState(Qt::WindowMaximized);
    } else {
      // Two thirds of one that is much larger.
      const QSize size =
          kLargestFitted.boundedTo(room.size() * 19 / 20).expandedTo(room.size() * 2 / 3);
      setGeometry(QStyle::alignedRect(layoutDirection(), Qt::AlignCenter, size, room));
    }
  }
  split_->restoreState(Preferences::deskSplit(QStringLiteral("sheets")));
  low_->restoreState(Preferences::deskSplit(QStringLiteral("low")));
  views_->setVisible(Preferences::viewSlipShown());
}

void DeskWindow::build() {
  auto* ground = new QWidget(this);
  ground->setObjectName(QStringLiteral("ground"));
  auto* column = new QVBoxLayout(ground);
  column->setContentsMargins(6, 0, 6, 4);
  column->setSpacing(0);
  ledger_ = new LedgerLine(desk_, ground);
  column->addWidget(ledger_);
  note_ = new NoteSlip(ground);
  // A split takes its children in the order in which they are made.
  low_ = new DeskSplit(Qt::Vertical, ground);
  split_ = new DeskSplit(Qt::Horizontal, low_);
  printPaper_ = new PaperFrame(split_);
  print_ = new PrintView(work_, printPaper_);
  printPaper_->hold(print_);
  views_ = new ViewSlip(desk_, print_);
  printZoom_ = new ZoomSlip(print_);
  tone_ = new ToneSlip(desk_, print_);
  sheet_ = new SheetView(desk_, split_);
  sheetZoom_ = new ZoomSlip(sheet_);
  split_->setStretchFactor(0, 3);
  split_->setStretchFactor(1, 2);
  split_->setSizes({760, 500});
  bottomRow(low_);
  low_->setStretchFactor(0, 1);
  low_->setStretchFactor(1, 0);
  // The sheets have all but what the strip needs, with a question of two lines.
  const int strip = low_->widget(1)->minimumSizeHint().height();
  low_->setSizes({kLargestFitted.height(), strip + QFontMetrics(deskFont()).lineSpacing()});
  column->addWidget(low_, 1);
  setCentralWidget(ground);
  setAcceptDrops(true);
}

/// One paper across the desk: what the hands can do, and below it the strip and the doubts, on the
/// same edges as the sheets above.
void DeskWindow::bottomRow(QWidget* ground) {
  auto* bottom = new PaperFrame(ground);
  auto* paper = new QWidget(bottom);
  strip_ = new Strip(work_, paper);
  doubts_ = new DoubtsSlip(work_, paper);
  auto* hands = new HandsRow(work_, paper);
  connect(hands, &HandsRow::chosen, this, [this] { strip_->line()->setFocus(); });
  auto* row = new QHBoxLayout;
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(strip_, 3);
  row->addWidget(doubts_, 2);
  auto* column = new QVBoxLayout(paper);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(hands);
  column->addLayout(row, 1);
  doubts_->setMinimumWidth(QFontMetrics(deskFont()).lineSpacing() * 14);
  bottom->hold(paper);
  bottom->setMinimumHeight(bottom->minimumSizeHint().height());
}

void DeskWindow::wire() {
  connect(print_, &PrintView::typed, this, &DeskWindow::toStrip);
  connect(doubts_, &DoubtsSlip::settled, strip_->line(), qOverload<>(&QWidget::setFocus));
  connect(sheet_, &SheetView::typed, this, &DeskWindow::toStrip);
  connect(sheet_, &SheetView::pointedAt, this, &DeskWindow::pointedOnSheet);
  connect(printZoom_, &ZoomSlip::zoomed, print_, &PrintView::zoomBy);
  connect(printZoom_, &ZoomSlip::allWanted, print_, [this] { print_->fit(); });
  connect(sheetZoom_, &ZoomSlip::zoomed, sheet_, &SheetView::zoomBy);
  connect(sheetZoom_, &ZoomSlip::allWanted, sheet_, [this] { sheet_->fit(SheetView::Fit::page); });
  const auto showZooms = [this] {
    printZoom_->show(percentOfPaper(print_->map().scale(), *print_));
    sheetZoom_->show(percentOfPaper(sheet_->pixelsPerInch(), *sheet_));
  };
  connect(print_, &PrintView::zoomChanged, this, showZooms);
  connect(sheet_, &SheetView::zoomChanged, this, showZooms);
  showZooms();
  print_->picture().setMayLay([this] { return files_->mayLayPicture(); });
  connect(print_, &PrintView::amendWanted, this, &DeskWindow::amendChosen);
  connect(print_, &PrintView::deleteWanted, this, &DeskWindow::deleteChosen);
  connect(print_, &PrintView::choicesWanted, this, [this](const Pointed& under, QPoint at) {
    QMenu menu(this);
    fillPrintMenu(menu, *this, under);
    menu.exec(at);
  });
  connect(print_, &PrintView::hovered, sheet_, &SheetView::light);
  laySlipsOn(*sheet_, work_);
  connect(sheet_, &SheetView::hovered, print_, &PrintView::light);
  connect(views_, &ViewSlip::toggled, this, &Preferences::setViewSlipShown);
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
    case Doing::offering:
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
  showStart();
}

bool DeskWindow::recover() {
  return files_->recover([] { return &another()->files(); });
}

DeskWindow* DeskWindow::another() {
  auto* window = new DeskWindow;
  window->setAttribute(Qt::WA_DeleteOnClose);
  window->openFitted();
  window->show();
  return window;
}

bool DeskWindow::busy() const {
  return print_->picture().progress().has_value();
}

void DeskWindow::startTour() {
  Preferences::setTourSeen(true);
  if (tour_ == nullptr) tour_ = new TourSlip(work_, centralWidget());
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
    if (files_->openSample() && !Preferences::tourSeen()) startTour();
  } else if (start.choice() == StartSlip::Choice::open) {
    files_->openChosen();
  } else if (start.choice() == StartSlip::Choice::readings) {
    const auto part = start.pastedPart();
    if (part.ok() && files_->newJob()) desk_.applyPart(part, tr("Paste readings"));
  } else if (files_->newJob() && start.choice() == StartSlip::Choice::picture) {
    const QString file = start.picture().isEmpty() ? files_->pictureToLay() : start.picture();
    if (!file.isEmpty()) print_->picture().takeFile(file);
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

void DeskWindow::amendChosen() {
  if (!desk_.hasPart()) return;
  const QString words = wordsOfChosen(desk_.part(), desk_.selection());
  if (words.isEmpty()) {
    emit desk_.refused(tr("choose one thing that is to be put right"));
    return;
  }
  if (work_.doing() != Doing::looking) work_.look();
  strip_->line()->setFocus(Qt::OtherFocusReason);
  strip_->line()->setText(words);
  strip_->line()->selectAll();
}

void DeskWindow::copyTable() {
  const auto done = app::copyTable(desk_);
  if (!done.ok()) {
    emit desk_.refused(coreWords(done.error().text));
    return;
  }
  note_->say(tr("The table is on the clipboard: %n place(s)", nullptr, *done));
}

void DeskWindow::showDetails() {
  if (!desk_.hasPart()) files_->newJob();
  DetailsSlip(desk_, this).exec();
}

void DeskWindow::showCover() {
  if (desk_.hasPart()) CoverSlip(desk_, this).exec();
}

void DeskWindow::showTogether() {
  if (desk_.hasPart()) TogetherSlip(desk_, this).exec();
}

void DeskWindow::showPaper() {
  if (!desk_.hasPart()) return;
  PaperSlip slip(this);
  if (slip.exec() == QDialog::Accepted) files_->writePaper(slip.chosen());
}

void DeskWindow::showUnderstood() {
  if (desk_.hasPart()) UnderstoodSlip(desk_, this).exec();
}

void DeskWindow::showSetup() {
  if (!desk_.hasPart()) return;
  if (desk_.part().turned) {
    LatheSlip(desk_, this).exec();
    if (desk_.setup().chucked) return;
  }
  SetupSlip slip(desk_, this);
  connect(&slip, &SetupSlip::machineKept, this, &Preferences::setMachine);
  connect(&slip, &SetupSlip::sheetChosen, this, &Preferences::setSheet);
  slip.exec();
}

void DeskWindow::showShop() {
  ShopSlip slip(desk_, this);
  connect(&slip, &ShopSlip::shopKept, this, &Preferences::setShop);
  slip.exec();
}

void DeskWindow::showMachine() {
  if (!app::showMachine(desk_, this)) emit desk_.refused(tr("there is no place to drive to yet"));
}

void DeskWindow::showMade() {
  if (!app::showMade(desk_, this)) emit desk_.refused(tr("choose one place that this setup makes"));
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

void DeskWindow::chooseTextSize(int pixels) {
  Preferences::setTextSize(pixels);
  app::chooseTextSize(pixels);
  if (auto* application = qobject_cast<QApplication*>(QCoreApplication::instance())) {
    dressApplication(*application);
  }
  QMetaObject::invokeMethod(this, &DeskWindow::makeAnew, Qt::QueuedConnection);
}

void DeskWindow::lookAsLeft() {
  if (desk_.file() == lookedFile_) return;
  lookedFile_ = desk_.file();
  // Work that goes on under another name stays as it is looked at.
  if (desk_.canUndo()) return;
  const auto looked = Preferences::looked(lookedFile_);
  if (lookedFile_.isEmpty() || !looked || !desk_.hasPart()) return;
  desk_.choosePart(std::min(looked->part, static_cast<int>(desk_.job().parts.size()) - 1));
  desk_.chooseFace(static_cast<Face>(looked->face));
  const int setups = static_cast<int>(desk_.part().setups.size());
  if (looked->setup < setups) desk_.chooseSetup(looked->setup);
  if (looked->scale > 0) print_->lookAt(looked->middle, looked->scale);
}

void DeskWindow::noteLooked() {
  if (desk_.file().isEmpty() || !desk_.hasPart()) return;
  const QPointF middle = print_->map().toInches(QRectF(print_->rect()).center());
  Preferences::noteLooked(desk_.file(),
                          {desk_.partIndex(), desk_.setupIndex(), static_cast<int>(desk_.face()),
                           print_->isFitted() ? 0 : print_->map().scale(), middle});
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
  noteLooked();
  Preferences::setWindowGeometry(saveGeometry());
  Preferences::setDeskSplit(QStringLiteral("sheets"), split_->saveState());
  Preferences::setDeskSplit(QStringLiteral("low"), low_->saveState());
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
  if (!event->spontaneous()) print_->fit();
}

}  // namespace inchwright::app

#include "moc_desk_window.cpp"
