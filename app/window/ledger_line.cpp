#include "app/window/ledger_line.h"

#include <QHBoxLayout>
#include <QInputDialog>
#include <QLineEdit>
#include <QMenu>
#include <QToolButton>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/session/side_words.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

QString shortened(const QToolButton& button, const QString& text, int characters) {
  const QFontMetrics metrics = button.fontMetrics();
  return metrics.elidedText(text, Qt::ElideRight, metrics.averageCharWidth() * characters);
}

/// The name with the first number behind it that is not taken.
template <class Taken>
std::string freeName(const std::string& name, const Taken& taken) {
  for (int number = 2;; ++number) {
    std::string next = name + " " + std::to_string(number);
    if (!taken(next)) return next;
  }
}

/// A single & in a name is no mnemonic.
QString literal(QString text) {
  return text.replace(QLatin1Char('&'), QStringLiteral("&&"));
}

}  // namespace

LedgerLine::LedgerLine(Desk& desk, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      row_(new QHBoxLayout(this)),
      title_(word(tr("Job"), nullptr)),
      part_(word(tr("Part"), new QMenu(this))),
      setup_(word(tr("Setup"), new QMenu(this))),
      face_(word(tr("Face of their print"), new QMenu(this))),
      doubt_(nullptr) {
  setObjectName(QStringLiteral("ledger"));
  row_->setContentsMargins(2, 0, 8, 0);
  row_->setSpacing(2);
  row_->addStretch(1);
  doubt_ = word(tr("What stands in doubt"), nullptr);
  title_->setFont(deskFont(1.1));
  connect(title_, &QToolButton::clicked, this, &LedgerLine::detailsWanted);
  connect(doubt_, &QToolButton::clicked, this, &LedgerLine::doubtsWanted);
  connect(part_->menu(), &QMenu::aboutToShow, this, &LedgerLine::fillParts);
  connect(setup_->menu(), &QMenu::aboutToShow, this, &LedgerLine::fillSetups);
  connect(face_->menu(), &QMenu::aboutToShow, this, &LedgerLine::fillFaces);
  connect(&desk, &Desk::edited, this, &LedgerLine::follow);
  connect(&desk, &Desk::viewChanged, this, &LedgerLine::follow);
  follow();
}

QToolButton* LedgerLine::word(const QString& name, QMenu* menu) {
  auto* button = new QToolButton(this);
  button->setAccessibleName(name);
  button->setFocusPolicy(Qt::TabFocus);
  button->setToolButtonStyle(Qt::ToolButtonTextOnly);
  if (menu != nullptr) {
    button->setMenu(menu);
    button->setPopupMode(QToolButton::InstantPopup);
  }
  row_->addWidget(button);
  return button;
}

void LedgerLine::takeFocus() {
  title_->setFocus(Qt::ShortcutFocusReason);
}

void LedgerLine::follow() {
  const bool any = desk_.hasPart();
  const QString title = QString::fromStdString(desk_.job().title);
  title_->setText(
      literal(shortened(*title_, title.isEmpty() ? tr("Job without a name") : title, 36)));
  for (QToolButton* button : {part_, setup_, face_}) button->setVisible(any);
  if (any) {
    const QString name = QString::fromStdString(desk_.part().name);
    part_->setText(literal(tr("part: %1 ▾").arg(shortened(*part_, name, 28))));
    const QString setup = QString::fromStdString(desk_.setup().name);
    setup_->setText(literal(tr("setup: %1 ▾").arg(shortened(*setup_, setup, 24))));
    face_->setText(tr("face: %1 ▾").arg(wordFor(desk_.face())));
  }
  showDoubt();
}

void LedgerLine::showDoubt() {
  // Of a part without a feature there is nothing to say.
  const bool any = !desk_.isBare();
  const bool draft = any && (desk_.solution().isDraft() || !desk_.isWorkedOut());
  // Each part may be as its print wants it, and they still don't go together.
  const bool apart = any && !draft && !desk_.kitDoubts().empty();
  const bool wrong = apart && hasOpen(*desk_.asMade(), desk_.part().name);
  doubt_->setText(draft   ? tr("DRAFT")
                  : wrong ? tr("CAME OUT WRONG")
                  : apart ? tr("MAY NOT GO TOGETHER")
                          : tr("✓ nothing in doubt"));
  doubt_->setVisible(any);
  QFont font = deskFont(1.0);
  font.setBold(draft || apart);
  doubt_->setFont(font);
  const Look& look = Look::now();
  const QColor& ink = look.red;
  const QString stamp = draft || apart ? QStringLiteral(
                                             "QToolButton { color: %1; border: 2px solid %1; "
                                             "background: %2; border-radius: 3px; "
                                             "padding: 1px 10px; }")
                                             .arg(ink.name(), look.slip.name())
                                       : QString();
  if (doubt_->styleSheet() != stamp) doubt_->setStyleSheet(stamp);
  doubt_->setToolTip(draft || apart
                         ? tr("Something stands in doubt: the list is below on the right")
                         : tr("Every figure closes and every place is fixed"));
}

void LedgerLine::fillParts() {
  QMenu* menu = part_->menu();
  menu->clear();
  const auto& parts = desk_.job().parts;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const int index = static_cast<int>(i);
    QAction* action = menu->addAction(literal(QString::fromStdString(parts[i].name)),
                                      [this, index] { desk_.choosePart(index); });
    action->setCheckable(true);
    action->setChecked(index == desk_.partIndex());
  }
  menu->addSeparator();
  menu->addAction(tr("A further part"), [this] {
    Part part;
    int number = static_cast<int>(desk_.job().parts.size()) + 1;
    do part.name = tr("Part %1").arg(number++).toStdString();
    while (desk_.job().part(part.name) != nullptr);
    const auto next = addPart(desk_.job(), part);
    if (!next.ok()) return;
    desk_.apply(*next, tr("Add a part"));
    desk_.choosePart(static_cast<int>(next->parts.size()) - 1);
  });
  menu->addAction(tr("The same once more"), [this] {
    Part part = desk_.part();
    part.name = freeName(
        part.name, [this](const std::string& name) { return desk_.job().part(name) != nullptr; });
    const auto next = addPart(desk_.job(), part);
    if (!next.ok()) return;
    desk_.apply(*next, tr("Duplicate a part"));
    desk_.choosePart(static_cast<int>(next->parts.size()) - 1);
  });
  QAction* remove = menu->addAction(tr("Take this part away"), [this] {
    const auto next = removePart(desk_.job(), desk_.part().name);
    if (!next.ok()) {
      emit desk_.refused(coreWords(next.error().text));
      return;
    }
    desk_.endMerge();
    desk_.apply(*next, tr("Take a part away"));
  });
  remove->setEnabled(parts.size() > 1);
  menu->addAction(tr("Its name, quantity, material …"), this, &LedgerLine::detailsWanted);
}

void LedgerLine::fillSetups() {
  QMenu* menu = setup_->menu();
  menu->clear();
  const auto& setups = desk_.part().setups;
  for (std::size_t i = 0; i < setups.size(); ++i) {
    const int index = static_cast<int>(i);
    QAction* action = menu->addAction(literal(QString::fromStdString(setups[i].name)),
                                      [this, index] { desk_.chooseSetup(index); });
    action->setCheckable(true);
    action->setChecked(index == desk_.setupIndex());
  }
  menu->addSeparator();
  menu->addAction(tr("A further setup"), [this] {
    Setup setup = desk_.setup();
    int number = static_cast<int>(desk_.part().setups.size()) + 1;
    do setup.name = tr("Setup %1").arg(number++).toStdString();
    while (desk_.part().setup(setup.name) != nullptr);
    if (desk_.applyPart(addSetup(desk_.part(), setup), tr("Add a setup"))) {
      desk_.chooseSetup(static_cast<int>(desk_.part().setups.size()) - 1);
    }
  });
  menu->addAction(tr("The same once more"), [this] {
    Setup setup = desk_.setup();
    setup.name = freeName(setup.name, [this](const std::string& name) {
      return desk_.part().setup(name) != nullptr;
    });
    if (desk_.applyPart(addSetup(desk_.part(), setup), tr("Duplicate a setup"))) {
      desk_.chooseSetup(static_cast<int>(desk_.part().setups.size()) - 1);
    }
  });
  QAction* rename = menu->addAction(tr("Another name …"), [this] { renameSetup(); });
  QAction* remove = menu->addAction(tr("Take this setup away"), [this] {
    desk_.endMerge();
    desk_.applyPart(removeSetup(desk_.part(), desk_.setup().name), tr("Take a setup away"));
  });
  // A part that names none has one all the same, which nobody can take away.
  for (QAction* action : {rename, remove}) action->setEnabled(!setups.empty());
  menu->addAction(tr("Zero, stock and machine …"), this, &LedgerLine::setupWanted);
}

void LedgerLine::renameSetup() {
  bool given = false;
  const QString before = QString::fromStdString(desk_.setup().name);
  const QString name = QInputDialog::getText(this, tr("Another name"), tr("Name of the setup"),
                                             QLineEdit::Normal, before, &given)
                           .trimmed();
  if (!given || name.isEmpty() || name == before) return;
  Setup setup = desk_.setup();
  setup.name = name.toStdString();
  desk_.endMerge();
  desk_.applyPart(replaceSetup(desk_.part(), before.toStdString(), setup),
                  tr("Call the setup %1").arg(name));
}

void LedgerLine::fillFaces() {
  QMenu* menu = face_->menu();
  menu->clear();
  for (int i = 0; i < 6; ++i) {
    const Face face = static_cast<Face>(i);
    QAction* action = menu->addAction(wordFor(face), [this, face] { desk_.chooseFace(face); });
    action->setCheckable(true);
    action->setChecked(face == desk_.face());
  }
}

}  // namespace inchwright::app

#include "moc_ledger_line.cpp"
