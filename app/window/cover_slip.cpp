#include "app/window/cover_slip.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/machine/ticked.h"
#include "app/window/small_picture.h"
#include "core/kit/as_made.h"
#include "core/kit/kit_edits.h"
#include "core/kit/kit_of_part.h"
#include "core/kit/solved_kit.h"
#include "core/part/edit.h"
#include "core/part/parts_of_job.h"
#include "core/say/edition_words.h"
#include "core/turned/cut_done.h"

namespace inchwright::app {
namespace {

constexpr QSize kDrawing(132, 84);  // device-independent pixels

QString words(const std::string& text) {
  return QString::fromStdString(text);
}

QString wordFor(PartState state) {
  switch (state) {
    case PartState::notBegun:
      return CoverSlip::tr("not begun");
    case PartState::inDoubt:
      return CoverSlip::tr("in doubt: its sheet says DRAFT");
    case PartState::ready:
      return CoverSlip::tr("sheet ready to print");
    case PartState::printed:
      return CoverSlip::tr("sheet printed");
    case PartState::outdated:
      return CoverSlip::tr("changed since its sheet was printed: print it again");
    case PartState::begun:
      return CoverSlip::tr("begun at the machine");
    case PartState::made:
      return CoverSlip::tr("made");
    case PartState::wrong:
      break;
  }
  return CoverSlip::tr("came out wrong: see its ways out");
}

bool isBegun(const Part& part) {
  return std::any_of(part.made.begin(), part.made.end(),
                     [](const MadePlace& one) { return !one.ticks.empty() || one.measured(); });
}

/// Whether all that the part's setups make is ticked, as far as there is still something to do; a
/// part without one is not done.
bool isMade(const Job& job, const Part& part, const Solution& solution) {
  if (!isBegun(part)) return false;
  bool any = false;
  for (const Setup& setup : part.setups) {
    if (setup.chucked) {
      const auto work = latheWorkToSuit(job, part, solution, setup);
      if (!work.ok()) return false;
      for (const Cut& cut : work->cuts) {
        any = true;
        if (!isCutDone(part, setup.name, cut)) return false;
      }
      continue;
    }
    const auto table = makeTable(job, part, solution, setup);
    if (!table.ok()) return false;
    for (const TableRow& row : table->rows) {
      any = true;
      if (!isAllDone(madeAt(part, row.id, setup.name), row)) return false;
    }
  }
  return any;
}

}  // namespace

std::vector<PartState> partStates(const Job& job, std::span<const Solution> solutions) {
  const auto made = asMade(job, solutions);
  std::vector<PartState> states;
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    const Part& part = job.parts[i];
    const bool begun = isBegun(part);
    const std::vector<PrintedNow> sheets = printedNow(job, part, solutions[i]);
    const bool outdated = std::any_of(sheets.begin(), sheets.end(),
                                      [](const PrintedNow& one) { return one.edition.isNew(); });
    const bool all = sheets.size() >= std::max<std::size_t>(1, part.setups.size());
    states.push_back(part.features.empty()                    ? PartState::notBegun
                     : made.ok() && hasOpen(*made, part.name) ? PartState::wrong
                     : isMade(job, part, solutions[i])        ? PartState::made
                     : solutions[i].isDraft()                 ? PartState::inDoubt
                     : outdated                               ? PartState::outdated
                     : begun                                  ? PartState::begun
                     : all                                    ? PartState::printed
                                                              : PartState::ready);
  }
  return states;
}

CoverSlip::CoverSlip(Desk& desk, QWidget* parent)
    : QDialog(parent),
      desk_(desk),
      list_(new QListWidget(this)),
      name_(new QLineEdit(this)),
      across_(new QComboBox(this)),
      said_(new QLabel(this)) {
  setObjectName(QStringLiteral("cover"));
  setWindowTitle(tr("The parts of the job"));
  setAccessibleName(windowTitle());
  list_->setAccessibleName(windowTitle());
  list_->setIconSize(kDrawing);
  list_->setDragDropMode(QAbstractItemView::InternalMove);
  name_->setAccessibleName(tr("Name of the part"));
  said_->setObjectName(QStringLiteral("said"));
  said_->setWordWrap(true);
  auto* named = new QHBoxLayout;
  named->addWidget(name_, 1);
  auto* row = new QHBoxLayout;
  row->addStretch(1);
  const std::pair<QString, void (CoverSlip::*)()> acts[] = {
      {tr("&Rename"), &CoverSlip::rename},
      {tr("Begin a &similar one"), &CoverSlip::copy},
      {tr("&Take it away"), &CoverSlip::remove}};
  for (const auto& [text, act] : acts) {
    auto* button = new QPushButton(text, this);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, act);
    (act == &CoverSlip::rename ? named : row)->addWidget(button);
  }
  for (const auto& [text, by] : {std::pair(tr("&Earlier"), -1), std::pair(tr("&Later"), 1)}) {
    auto* button = new QPushButton(text, this);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, [this, by = by] { shift(by); });
    row->addWidget(button);
  }
  auto* open = new QPushButton(tr("&Put it on the desk"), this);
  open->setProperty("firm", true);
  open->setAutoDefault(false);
  connect(open, &QPushButton::clicked, this, &CoverSlip::putOnDesk);
  row->addWidget(open);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(22, 16, 22, 16);
  column->addWidget(list_, 1);
  column->addWidget(said_);
  column->addLayout(named);
  column->addLayout(handRow());
  column->addLayout(row);
  connect(list_, &QListWidget::itemActivated, this, &CoverSlip::putOnDesk);
  connect(list_, &QListWidget::currentRowChanged, this, [this] {
    if (const Part* part = chosen()) name_->setText(words(part->name));
  });
  // The list is in the midst of its own move.
  connect(list_->model(), &QAbstractItemModel::rowsMoved, this, &CoverSlip::moved,
          Qt::QueuedConnection);
  connect(&desk, &Desk::edited, this, &CoverSlip::showNow);
  resize(fontMetrics().averageCharWidth() * 110, kDrawing.height() * 6);
  showNow();
  list_->setCurrentRow(desk.partIndex());
  list_->setFocus();
}

QLayout* CoverSlip::handRow() {
  across_->addItems({tr("left and right change places"), tr("front and back change places")});
  across_->setAccessibleName(tr("How it is turned round"));
  auto* row = new QHBoxLayout;
  row->addStretch(1);
  row->addWidget(across_);
  const std::pair<QString, void (CoverSlip::*)()> acts[] = {
      {tr("Begin its other &hand"), &CoverSlip::mirror},
      {tr("Let it stand al&one"), &CoverSlip::standAlone}};
  for (const auto& [text, act] : acts) {
    auto* button = new QPushButton(text, this);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, act);
    row->addWidget(button);
  }
  return row;
}

void CoverSlip::showNow() {
  filling_ = true;
  const int row = list_->currentRow();
  list_->clear();
  said_->clear();
  // What is ticked goes by the tools that the sheets were made with.
  Job job = desk_.job();
  job.shop = shopFor(job.shop, desk_.ownShop());
  const std::vector<PartState> states = partStates(job, desk_.solutions());
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    const Part& part = job.parts[i];
    QString text = words(part.name);
    if (part.quantity > 1) text += tr(" · %1 of them").arg(part.quantity);
    if (part.opposite) text += tr(" · the other hand of %1").arg(words(part.opposite->part));
    text += QLatin1Char('\n') + wordFor(states[i]) + QLatin1Char('\n') +
            tr("%n setup(s)", nullptr, static_cast<int>(part.setups.size()));
    auto* item = new QListWidgetItem(QIcon(drawingOf(job, i)), text, list_);
    item->setData(Qt::UserRole, words(part.name));
  }
  filling_ = false;
  list_->setCurrentRow(std::clamp(row, 0, std::max(0, list_->count() - 1)));
}

const QPixmap& CoverSlip::drawingOf(const Job& job, std::size_t index) {
  const Part& part = job.parts[index];
  Drawn& drawn = drawn_[part.name];
  if (drawn.drawing.isNull() || !(drawn.part == part)) {
    drawn = {part, inchwright::app::drawingOf(job, part, desk_.solutions()[index], kDrawing,
                                              devicePixelRatioF())};
  }
  return drawn.drawing;
}

const Part* CoverSlip::chosen() const {
  const QListWidgetItem* item = list_->currentItem();
  return item == nullptr ? nullptr
                         : desk_.job().part(item->data(Qt::UserRole).toString().toStdString());
}

bool CoverSlip::apply(const Result<Job>& next, const QString& title, const std::string& onDesk) {
  if (!next.ok()) {
    said_->setText(tr("Not done: %1").arg(coreWords(next.error().text)));
    return false;
  }
  desk_.endMerge();
  desk_.apply(*next, title);
  const auto& parts = desk_.job().parts;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (parts[i].name == onDesk) desk_.choosePart(static_cast<int>(i));
  }
  return true;
}

void CoverSlip::moved() {
  if (filling_) return;
  const auto& parts = desk_.job().parts;
  for (int row = 0; row < list_->count() && row < static_cast<int>(parts.size()); ++row) {
    const std::string name = list_->item(row)->data(Qt::UserRole).toString().toStdString();
    if (parts[static_cast<std::size_t>(row)].name == name) continue;
    // The first that differs is the one that was put here, or the one before which something went.
    const bool went = row + 1 < static_cast<int>(parts.size()) &&
                      parts[static_cast<std::size_t>(row) + 1].name == name;
    const std::string which = went ? parts[static_cast<std::size_t>(row)].name : name;
    int to = 0;
    while (list_->item(to)->data(Qt::UserRole).toString().toStdString() != which) ++to;
    apply(movePart(desk_.job(), which, static_cast<std::size_t>(to)),
          tr("Put %1 elsewhere").arg(words(which)), desk_.part().name);
    list_->setCurrentRow(to);
    return;
  }
}

void CoverSlip::shift(int by) {
  const Part* part = chosen();
  const int to = list_->currentRow() + by;
  if (part == nullptr || to < 0 || to >= list_->count()) return;
  const QString title = tr("Put %1 elsewhere").arg(words(part->name));
  if (apply(movePart(desk_.job(), part->name, static_cast<std::size_t>(to)), title,
            desk_.part().name)) {
    list_->setCurrentRow(to);
  }
}

std::string CoverSlip::freeName() const {
  const std::string typed = name_->text().trimmed().toStdString();
  std::string name = typed;
  for (int number = 2; desk_.job().part(name) != nullptr; ++number) {
    name = typed + " " + std::to_string(number);
  }
  return name;
}

void CoverSlip::mirror() {
  const Part* part = chosen();
  if (part == nullptr) return;
  const std::string name = freeName();
  const Axis across = across_->currentIndex() == 0 ? Axis::x : Axis::y;
  const QString title = tr("Begin %1, the other hand of %2").arg(words(name), words(part->name));
  const int row = list_->currentRow();
  if (!apply(withOtherHand(desk_.job(), part->name, across, name), title, desk_.part().name)) {
    return;
  }
  list_->setCurrentRow(row + 1);
  if (sameTurnedOver(desk_.job(), *desk_.job().part(name))) {
    said_->setText(tr("It is the same part turned over: make two of that one"));
  }
}

void CoverSlip::standAlone() {
  const Part* part = chosen();
  if (part == nullptr) return;
  apply(standingAlone(desk_.job(), part->name), tr("Let %1 stand alone").arg(words(part->name)),
        desk_.part().name);
}

void CoverSlip::copy() {
  const Part* part = chosen();
  if (part == nullptr) return;
  const std::string name = freeName();
  const QString title = tr("Begin %1 like %2").arg(words(name), words(part->name));
  const int row = list_->currentRow();
  if (apply(copyPart(desk_.job(), part->name, name), title, desk_.part().name)) {
    list_->setCurrentRow(row + 1);
  }
}

void CoverSlip::rename() {
  const Part* part = chosen();
  if (part == nullptr) return;
  const std::string before = part->name;
  const std::string name = name_->text().trimmed().toStdString();
  const std::string onDesk = desk_.part().name == before ? name : desk_.part().name;
  apply(renamePart(desk_.job(), before, name), tr("Rename %1").arg(words(before)), onDesk);
}

void CoverSlip::remove() {
  const Part* part = chosen();
  if (part == nullptr) return;
  const std::vector<std::string> mentions = mentionsOfPart(desk_.job(), part->name);
  if (!mentions.empty()) {
    QStringList names;
    for (const std::string& one : mentions) names << coreWords(one);
    said_->setText(tr("Not done: %1 goes with it; take that away first")
                       .arg(names.join(QStringLiteral(", "))));
    return;
  }
  apply(removePart(desk_.job(), part->name), tr("Take %1 away").arg(words(part->name)),
        desk_.part().name);
}

void CoverSlip::putOnDesk() {
  const int row = list_->currentRow();
  if (row >= 0) desk_.choosePart(row);
  accept();
}

}  // namespace inchwright::app

#include "moc_cover_slip.cpp"
