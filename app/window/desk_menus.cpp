#include "app/window/desk_menus.h"

#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QFileInfo>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <array>
#include <tuple>

#include "app/base/look.h"
#include "app/canvas/print_view.h"
#include "app/canvas/tone_slip.h"
#include "app/canvas/view_slip.h"
#include "app/doubts/doubts_slip.h"
#include "app/session/activity.h"
#include "app/session/picture_edits.h"
#include "app/session/preferences.h"
#include "app/session/side_words.h"
#include "app/sheet/sheet_view.h"
#include "app/strip/strip.h"
#include "app/window/desk_files.h"
#include "app/window/desk_window.h"
#include "app/window/ledger_line.h"
#include "app/window/outputs.h"

namespace inchwright::app {
namespace {

/// Underlines in every word of a menu a letter that no other there has.
void giveLetters(QMenu* menu) {
  QString taken;
  for (const QAction* action : menu->actions()) {
    taken += QKeySequence::mnemonic(action->text()).toString().right(1).toUpper();
  }
  for (QAction* action : menu->actions()) {
    if (action->menu() != nullptr) giveLetters(action->menu());
    QString text = action->text();
    if (action->isSeparator() || !QKeySequence::mnemonic(text).isEmpty()) continue;
    for (qsizetype i = 0; i < text.size(); ++i) {
      const QChar letter = text[i].toUpper();
      if (!letter.isLetterOrNumber() || taken.contains(letter)) continue;
      taken += letter;
      action->setText(text.insert(i, QLatin1Char('&')));
      break;
    }
  }
}

}  // namespace

DeskMenus::DeskMenus(DeskWindow& window) : QObject(&window), window_(window) {
  addJob();
  addChange();
  addPrint();
  addReading();
  addSheet();
  addMachine();
  addHelp();
  window.menuBar()->setAccessibleName(tr("Menus"));
  for (const QAction* top : window.menuBar()->actions()) giveLetters(top->menu());
  // One key that always leads into the menus, whatever Alt means where one is.
  auto* enter = new QAction(tr("The menus"), this);
  enter->setShortcut(Qt::Key_F10);
  window.addAction(enter);
  connect(enter, &QAction::triggered, this, [this] {
    QMenuBar* bar = window_.menuBar();
    bar->setFocus();
    bar->setActiveAction(bar->actions().front());
  });
}

QAction* DeskMenus::add(QMenu* menu, const QString& text, const QKeySequence& key,
                        const std::function<void()>& action) {
  QAction* made = menu->addAction(text);
  made->setShortcut(key);
  connect(made, &QAction::triggered, this, [action] { action(); });
  return made;
}

void DeskMenus::addJob() {
  QMenu* menu = window_.menuBar()->addMenu(tr("&Job"));
  DeskFiles& files = window_.files();
  add(menu, tr("&New …"), QKeySequence::New, [this] { window_.showStart(); });
  add(menu, tr("&Open …"), QKeySequence::Open, [&files] { files.openChosen(); });
  QMenu* recent = menu->addMenu(tr("Open a&gain"));
  connect(recent, &QMenu::aboutToShow, this, [this, recent] { fillRecent(recent); });
  add(menu, tr("The &sample: a front plate"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N),
      [&files] { files.openSample(); });
  menu->addSeparator();
  add(menu, tr("Sa&ve"), QKeySequence::Save, [&files] { files.save(); });
  add(menu, tr("Save &as …"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S),
      [&files] { files.saveAs(); });
  add(menu, tr("&Details of job and part …"), QKeySequence(Qt::CTRL | Qt::Key_I),
      [this] { window_.showDetails(); });
  add(menu, tr("The pa&rts of the job …"), QKeySequence(Qt::CTRL | Qt::Key_K),
      [this] { window_.showCover(); });
  add(menu, tr("What goes toge&ther …"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_K),
      [this] { window_.showTogether(); });
  menu->addSeparator();
  add(menu, tr("&Print my sheet …"), QKeySequence::Print,
      [this] { previewPrint(window_.desk(), &window_); });
  QMenu* out = menu->addMenu(tr("&Write my sheet as"));
  const std::tuple<const char*, QString, QKeySequence> endings[] = {
      {"pdf", tr("&PDF …"), Qt::CTRL | Qt::Key_E},
      {"svg", tr("&SVG …"), Qt::CTRL | Qt::SHIFT | Qt::Key_E},
      {"png", tr("P&NG …"), Qt::CTRL | Qt::SHIFT | Qt::Key_G},
      {"html", tr("A page for a &tablet …"), Qt::CTRL | Qt::ALT | Qt::Key_E},
      {"csv", tr("&CSV: the table …"), Qt::CTRL | Qt::SHIFT | Qt::Key_T}};
  for (const auto& [ending, text, key] : endings) {
    add(out, text, key, [&files, to = QString::fromLatin1(ending)] { files.writeSheet(to); });
  }
  add(menu, tr("Paper &for the whole job …"), QKeySequence(Qt::CTRL | Qt::ALT | Qt::Key_P),
      [this] { window_.showPaper(); });
  add(menu, tr("&Copy the table"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C),
      [this] { window_.copyTable(); });
  menu->addSeparator();
  add(menu, tr("&Leave"), QKeySequence(Qt::CTRL | Qt::Key_Q), [this] { window_.close(); });
}

void DeskMenus::fillRecent(QMenu* menu) {
  menu->clear();
  int number = 0;
  for (const QString& file : Preferences::recentFiles()) {
    QString name = QFileInfo(file).fileName().replace(QLatin1Char('&'), QStringLiteral("&&"));
    QAction* action = menu->addAction(tr("&%1  %2").arg(++number % 10).arg(name),
                                      [this, file] { window_.files().open(file); });
    action->setToolTip(file);
  }
  if (number == 0) menu->addAction(tr("nothing yet"))->setEnabled(false);
}

void DeskMenus::addChange() {
  QMenu* menu = window_.menuBar()->addMenu(tr("Cha&nge"));
  Desk& desk = window_.desk();
  QAction* undo = add(menu, tr("&Undo"), QKeySequence::Undo, [&desk] { desk.undo(); });
  QAction* redo = add(menu, tr("&Redo"), QKeySequence::Redo, [&desk] { desk.redo(); });
  // Systems differ in the key for it, and hands keep the habit of another one.
  redo->setShortcuts(
      {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)});
  const auto follow = [&desk, undo, redo] {
    undo->setEnabled(desk.canUndo());
    redo->setEnabled(desk.canRedo());
    undo->setText(desk.canUndo() ? tr("&Undo: %1").arg(desk.undoTitle()) : tr("&Undo"));
    redo->setText(desk.canRedo() ? tr("&Redo: %1").arg(desk.redoTitle()) : tr("&Redo"));
  };
  connect(&desk, &Desk::edited, this, follow);
  follow();
  add(menu, tr("Put right what is c&hosen"), Qt::Key_F2, [this] { window_.amendChosen(); });
  add(menu, tr("&Delete what is chosen"), QKeySequence(Qt::CTRL | Qt::Key_D),
      [this] { window_.deleteChosen(); });
  menu->addSeparator();
  QMenu* look = menu->addMenu(tr("&Light"));
  auto* group = new QActionGroup(look);
  const QString lights[] = {tr("As the &system"), tr("&Day"), tr("&Lamplight")};
  for (int i = 0; i < 3; ++i) {
    QAction* one = add(look, lights[i], Qt::CTRL | Qt::SHIFT | static_cast<Qt::Key>(Qt::Key_F9 + i),
                       [this, i] { window_.chooseLook(i); });
    one->setCheckable(true);
    one->setChecked(static_cast<int>(Preferences::look()) == i);
    group->addAction(one);
  }
  QMenu* text = menu->addMenu(tr("Te&xt"));
  auto* sizes = new QActionGroup(text);
  const QString large[] = {tr("&Small"), tr("&Usual"), tr("&Large"), tr("&Very large")};
  for (int i = 0; i < 4; ++i) {
    const int pixels = kTextSizes[i];
    QAction* one = add(text, large[i], Qt::CTRL | Qt::ALT | static_cast<Qt::Key>(Qt::Key_F1 + i),
                       [this, pixels] { window_.chooseTextSize(pixels); });
    one->setCheckable(true);
    one->setChecked(textSize() == pixels);
    sizes->addAction(one);
  }
  QMenu* english = menu->addMenu(tr("&Words"));
  auto* kinds = new QActionGroup(english);
  const QString named[] = {tr("As the &system"), tr("&British"), tr("&American")};
  for (int i = 0; i < 3; ++i) {
    QAction* one =
        add(english, named[i], Qt::CTRL | Qt::SHIFT | static_cast<Qt::Key>(Qt::Key_F6 + i),
            [this, i] { window_.chooseEnglish(i); });
    one->setCheckable(true);
    one->setChecked(static_cast<int>(Preferences::english()) == i);
    kinds->addAction(one);
  }
}

void DeskMenus::addPrint() {
  QMenu* menu = window_.menuBar()->addMenu(tr("Their &print"));
  PrintView* print = &window_.print();
  add(menu, tr("Go to their &print"), QKeySequence(Qt::CTRL | Qt::Key_1),
      [print] { print->setFocus(Qt::ShortcutFocusReason); });
  menu->addSeparator();
  add(menu, tr("&Lay a picture underneath …"), QKeySequence(Qt::CTRL | Qt::Key_L),
      [this] { window_.layPicture(); });
  add(menu, tr("Paste a p&icture"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_V),
      [print] { print->picture().paste(); });
  add(menu, tr("&Square the picture up"), QKeySequence(Qt::CTRL | Qt::Key_U),
      [print] { print->picture().squareUp(); });
  add(menu, tr("T&one of the picture …"), QKeySequence(Qt::CTRL | Qt::Key_T),
      [this] { window_.tone().open(); });
  Desk& desk = window_.desk();
  add(menu, tr("T&urn the picture by a quarter"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_R),
      [this] { window_.work().turnPicture(); });
  add(menu, tr("Th&e next picture in front"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_F),
      [this] { window_.work().nextPictureInFront(); });
  add(menu, tr("&Take the picture away"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_L), [&desk] {
    if (!desk.hasPart()) return;
    desk.endMerge();
    desk.apply(liftPicture(desk.job(), desk.partIndex(), desk.face()), tr("Take the picture away"));
  });
  menu->addSeparator();
  QMenu* faces = menu->addMenu(tr("&Face"));
  for (int i = 0; i < 6; ++i) {
    const Face face = static_cast<Face>(i);
    add(faces, wordFor(face),
        QKeySequence(Qt::CTRL | Qt::ALT | static_cast<Qt::Key>(Qt::Key_1 + i)),
        [this, face] { window_.desk().chooseFace(face); });
  }
  add(menu, tr("W&hich view it is, in the corner"), QKeySequence(Qt::CTRL | Qt::Key_B),
      [this] { window_.views().toggle(); });
  menu->addSeparator();
  add(menu, tr("&All of it"), QKeySequence(Qt::CTRL | Qt::Key_0), [print] { print->fit(); });
  add(menu, tr("What is &chosen"), QKeySequence(Qt::CTRL | Qt::Key_Period),
      [print] { print->fitToSelection(); });
  add(menu, tr("&Nearer"), QKeySequence::ZoomIn, [print] { print->zoomBy(1.25); });
  add(menu, tr("Fa&rther"), QKeySequence::ZoomOut, [print] { print->zoomBy(0.8); });
  QAction* hide = add(menu, tr("Hide what is &mine"), QKeySequence(Qt::CTRL | Qt::Key_H),
                      [print] { print->hideMine(!print->hidesMine()); });
  hide->setCheckable(true);
  menu->addSeparator();
  add(menu, tr("Their print fills the &window"), QKeySequence(Qt::CTRL | Qt::Key_F4),
      [this] { window_.fill(DeskWindow::Filling::theirs); });
  add(menu, tr("&Both sheets"), Qt::Key_F4, [this] { window_.fill(DeskWindow::Filling::both); });
}

void DeskMenus::addReading() {
  QMenu* menu = window_.menuBar()->addMenu(tr("&What to do"));
  Work& work = window_.work();
  Strip* strip = &window_.strip();
  const auto toLine = [strip](const std::function<void()>& begin) {
    return [strip, begin] {
      begin();
      strip->line()->setFocus(Qt::ShortcutFocusReason);
    };
  };
  add(menu, tr("Go to the &strip"), QKeySequence(Qt::CTRL | Qt::Key_3), toLine([] {}));
  add(menu, tr("Go to the &doubts"), QKeySequence(Qt::CTRL | Qt::Key_4),
      [this] { window_.doubts().list()->setFocus(Qt::ShortcutFocusReason); });
  add(menu, tr("Go to the line above both sheets"), QKeySequence(Qt::CTRL | Qt::Key_5),
      [this] { window_.ledger().takeFocus(); });
  menu->addSeparator();
  QMenu* trace = menu->addMenu(tr("&Trace"));
  for (int i = 0; i < 9; ++i) {
    const auto kind = static_cast<FeatureKind>(i);
    add(trace, wordFor(kind), QKeySequence(Qt::ALT | static_cast<Qt::Key>(Qt::Key_1 + i)),
        toLine([&work, kind, i] {
          if (!work.choose(i)) work.trace(kind);
        }));
  }
  QMenu* turned = trace->addMenu(tr("In the la&the"));
  add(turned, tr("&Centre line"), Qt::ALT | Qt::SHIFT | Qt::Key_L,
      toLine([&work] { work.traceCentreLine(); }));
  // In the order of FeatureKind.
  constexpr std::array kTurnedKeys{Qt::Key_O, Qt::Key_B, Qt::Key_R, Qt::Key_G,
                                   Qt::Key_H, Qt::Key_K, Qt::Key_F, Qt::Key_D};
  for (std::size_t i = 0; i < kTurnedKeys.size(); ++i) {
    const auto kind = static_cast<FeatureKind>(static_cast<std::size_t>(FeatureKind::outside) + i);
    add(turned, wordFor(kind), Qt::ALT | Qt::SHIFT | kTurnedKeys[i],
        toLine([&work, kind] { work.trace(kind); }));
  }
  add(menu, tr("What the print offers"), QKeySequence(Qt::CTRL | Qt::Key_G),
      toLine([&work] { work.goThroughOffers(); }));
  add(menu, tr("&Read a chain"), Qt::Key_F6, toLine([&work] { work.read(); }));
  QMenu* relate = menu->addMenu(tr("What the print sho&ws without a figure"));
  // In the order of UnderstandingKind.
  constexpr std::array kRelationKeys{Qt::Key_I, Qt::Key_M, Qt::Key_S, Qt::Key_E,
                                     Qt::Key_C, Qt::Key_T, Qt::Key_P, Qt::Key_Q};
  for (std::size_t i = 0; i < kRelationKeys.size(); ++i) {
    const auto kind = static_cast<UnderstandingKind>(i);
    add(relate, wordFor(kind), Qt::ALT | Qt::SHIFT | kRelationKeys[i],
        toLine([&work, kind] { work.relate(kind); }));
  }
  add(relate, tr("&All that the tracing shows"), Qt::ALT | Qt::SHIFT | Qt::Key_A,
      toLine([&work] { work.relateAll(); }));
  add(menu, tr("What is &understood …"), QKeySequence(Qt::CTRL | Qt::Key_J),
      [this] { window_.showUnderstood(); });
  add(menu, tr("&Zero"), Qt::Key_F7, toLine([&work] { work.zero(); }));
  add(menu, tr("Stac&k"), Qt::Key_F8, toLine([&work] { work.stack(); }));
  add(menu, tr("Read a&gain, blind"), Qt::Key_F9, toLine([&work] { work.reread(); }));
  menu->addSeparator();
  add(menu, tr("Along &X"), QKeySequence(Qt::ALT | Qt::Key_X),
      toLine([&work] { work.setAxis(Axis::x); }));
  add(menu, tr("Along &Y"), QKeySequence(Qt::ALT | Qt::Key_Y),
      toLine([&work] { work.setAxis(Axis::y); }));
  add(menu, tr("Along Z, for depths"), QKeySequence(Qt::ALT | Qt::Key_V),
      toLine([&work] { work.setAxis(Axis::z); }));
}

void DeskMenus::addSheet() {
  QMenu* menu = window_.menuBar()->addMenu(tr("My s&heet"));
  SheetView* sheet = &window_.sheet();
  add(menu, tr("Go to my &sheet"), QKeySequence(Qt::CTRL | Qt::Key_2),
      [sheet] { sheet->setFocus(Qt::ShortcutFocusReason); });
  add(menu, tr("&Zero, stock and machine …"), Qt::Key_F5, [this] { window_.showSetup(); });
  Desk& desk = window_.desk();
  QAction* close = add(menu, tr("How &close to work"), QKeySequence(Qt::SHIFT | Qt::Key_F5),
                       [&desk] { desk.showCloseness(!desk.showsCloseness()); });
  close->setCheckable(true);
  close->setChecked(desk.showsCloseness());
  menu->addSeparator();
  add(menu, tr("A whole &page"), QKeySequence(Qt::SHIFT | Qt::Key_F3),
      [sheet] { sheet->fit(SheetView::Fit::page); });
  add(menu, tr("The page's &width"), QKeySequence(Qt::CTRL | Qt::Key_F3),
      [sheet] { sheet->fit(SheetView::Fit::width); });
  add(menu, tr("&Nearer"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Up),
      [sheet] { sheet->zoomBy(1.25); });
  add(menu, tr("&Farther"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Down),
      [sheet] { sheet->zoomBy(0.8); });
  add(menu, tr("N&ext page"), QKeySequence(Qt::CTRL | Qt::Key_PageDown),
      [sheet] { sheet->showPage(sheet->pageInSight() + 1); });
  add(menu, tr("P&revious page"), QKeySequence(Qt::CTRL | Qt::Key_PageUp),
      [sheet] { sheet->showPage(sheet->pageInSight() - 1); });
  menu->addSeparator();
  add(menu, tr("My sheet fills the win&dow"), Qt::Key_F3,
      [this] { window_.fill(DeskWindow::Filling::mine); });
}

void DeskMenus::addMachine() {
  QMenu* menu = window_.menuBar()->addMenu(tr("Ma&chine"));
  add(menu, tr("&At the machine: one place at a time"), Qt::Key_F11,
      [this] { window_.showMachine(); });
  add(menu, tr("As made: what &came out, and ways out …"), QKeySequence(Qt::SHIFT | Qt::Key_F11),
      [this] { window_.showMade(); });
  add(menu, tr("My &machine …"), Qt::Key_F12, [this] { window_.showSetup(); });
  add(menu, tr("The &shop I own …"), QKeySequence(Qt::SHIFT | Qt::Key_F12),
      [this] { window_.showShop(); });
}

void DeskMenus::addHelp() {
  QMenu* menu = window_.menuBar()->addMenu(tr("G&uide"));
  add(menu, tr("Every &key"), Qt::Key_F1, [this] { window_.showHelp(); });
  add(menu, tr("The &tour of a minute"), QKeySequence(Qt::SHIFT | Qt::Key_F1),
      [this] { window_.startTour(); });
}

}  // namespace inchwright::app

#include "moc_desk_menus.cpp"
