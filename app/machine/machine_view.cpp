#include "app/machine/machine_view.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>
#include <tuple>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/machine/fitting.h"
#include "app/machine/made_slip.h"
#include "app/machine/measured.h"
#include "app/machine/tick_box.h"
#include "app/machine/ticked.h"
#include "app/session/typed_figure.h"
#include "core/kit/as_made.h"
#include "core/part/edit.h"
#include "core/say/done_words.h"
#include "core/say/kit_words.h"
#include "core/say/making_words.h"

namespace inchwright::app {
namespace {

QString ownWords(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

MachineView::MachineView(Desk& desk, QWidget* parent)
    : StepwiseView(desk, tr("At the machine"), parent),
      tools_(new QWidget(this)),
      toolGrid_(new QGridLayout(tools_)),
      measuredX_(new QLineEdit(low_)),
      measuredY_(new QLineEdit(low_)) {
  setObjectName(QStringLiteral("atMachine"));
  layOut(tools_, [this](QHBoxLayout& low) { addMeasured(low); });
  connect(&desk, &Desk::edited, this, &MachineView::follow);
  connect(&desk, &Desk::viewChanged, this, &MachineView::follow);
  readSteps();
  row_ = whereLeftOff();
  follow();
  setFocus();
}

MachineView::~MachineView() {
  // What was typed is kept as it is: nobody is there to be asked. A field that loses the focus
  // needs the view to be there still.
  mayAsk_ = false;
  takeMeasured();
  hide();
}

void MachineView::addMeasured(QHBoxLayout& low) {
  measuredX_->setAccessibleName(tr("Measured X"));
  measuredY_->setAccessibleName(tr("Measured Y"));
  for (const auto& [field, text] :
       {std::pair{measuredX_, tr("measured &X")}, std::pair{measuredY_, tr("measured &Y")}}) {
    field->setFont(forScreen(screen(), figures(1.6)));
    field->setMinimumWidth(field->fontMetrics().averageCharWidth() * 7);
    field->setMaximumWidth(field->fontMetrics().averageCharWidth() * 12);
    auto* label = new QLabel(text, this);
    label->setFont(forScreen(screen(), deskFont(1.2)));
    label->setBuddy(field);
    low.addWidget(label);
    low.addWidget(field);
    low.addSpacing(12);
    // Enter and leaving the field are told apart, so that one Enter can't answer its own question.
    connect(field, &QLineEdit::returnPressed, this, [this] {
      if (takeMeasured()) setFocus();
    });
    connect(field, &QLineEdit::editingFinished, this, [this, field = field] {
      if (!field->hasFocus()) takeMeasured();
    });
  }
}

QString MachineView::sizeOf(const TableRow& row) const {
  const Feature* feature = desk_.part().feature(row.feature);
  return feature == nullptr ? QString()
                            : ownWords(sizeWords(*feature, *row.plan, desk_.table()->step.unit));
}

int MachineView::rowCount() const {
  const SetupTable* table = desk_.table();
  return table == nullptr ? 0 : static_cast<int>(table->rows.size());
}

const TableRow* MachineView::current() const {
  return row_ < 0 || row_ >= rowCount() ? nullptr
                                        : &desk_.table()->rows[static_cast<std::size_t>(row_)];
}

const FirstStep* MachineView::currentFirst() const {
  if (row_ >= rowCount() && !milled_.empty()) {
    return &milled_[static_cast<std::size_t>(row_ - rowCount())];
  }
  return row_ >= 0 || (rowCount() == 0 && milled_.empty())
             ? nullptr
             : &first_[static_cast<std::size_t>(std::max(0, row_ + firstCount()))];
}

void MachineView::readSteps() {
  if (desk_.table() == nullptr) return;
  first_ = firstSteps(desk_);
  milled_ = milledSteps(desk_);
}

/// The first place that is not done, once anything is; before that what comes first.
int MachineView::whereLeftOff() const {
  bool begun = false;
  int open = rowCount() - 1;
  for (int i = rowCount() - 1; i >= 0; --i) {
    const TableRow& row = desk_.table()->rows[static_cast<std::size_t>(i)];
    const MadePlace made = madeAt(desk_.part(), row.id, desk_.setup().name);
    begun = begun || !made.ticks.empty();
    if (!isAllDone(made, row)) open = i;
  }
  return begun ? open : -firstCount();
}

void MachineView::go(int row) {
  // What was typed at this place belongs to it, whichever way one leaves.
  if (!takeMeasured()) return;
  row_ = std::clamp(row, -firstCount(), lastOf());
  follow();
  setFocus();
}

void MachineView::follow() {
  filling_ = true;
  for (QCheckBox* tick : ticks_) delete tick;
  ticks_.clear();
  questioned_.clear();
  said_->clear();
  readSteps();
  row_ = std::clamp(row_, -firstCount(), lastOf());
  const TableRow* row = current();
  const FirstStep* first = currentFirst();
  back_->setEnabled((row != nullptr || first != nullptr) && row_ > -firstCount());
  next_->setEnabled((row != nullptr || first != nullptr) && row_ < lastOf());
  for (QLineEdit* field : {measuredX_, measuredY_}) field->setEnabled(row != nullptr);
  made_->setEnabled(row != nullptr);
  if (first != nullptr) {
    followFirst(*first);
  } else if (row != nullptr) {
    followPlace(*row);
  } else {
    head_->setText(tr("There is nothing to drive to."));
  }
  filling_ = false;
  // The figures are painted in what the boxes leave: those lie right before that, not after it.
  toolGrid_->activate();
  layout()->activate();
  update();
}

void MachineView::followFirst(const FirstStep& step) {
  const QString head = row_ < 0 ? tr("%1 · setup %2 · before the first place")
                                : tr("%1 · setup %2 · slots and pockets");
  head_->setText(head.arg(ownWords(desk_.part().name), ownWords(desk_.setup().name)));
  measuredX_->clear();
  measuredY_->clear();
  setAccessibleDescription(step.heading + QStringLiteral(". ") + step.lines.join(QLatin1Char(' ')));
}

void MachineView::followPlace(const TableRow& row) {
  const MadePlace made = madeAt(desk_.part(), row.id, desk_.setup().name);
  head_->setText(tr("%1 · setup %2 · place %3 of %4")
                     .arg(ownWords(desk_.part().name), ownWords(desk_.setup().name))
                     .arg(row_ + 1)
                     .arg(rowCount()));
  addTicks(row, made);
  measuredX_->setText(made.x ? ownWords(made.x->text) : QString());
  measuredY_->setText(made.y ? ownWords(made.y->text) : QString());
  sayDifference(row, made);
  setAccessibleDescription(tr("%1: X %2, Y %3, %4")
                               .arg(ownWords(row.id), ownWords(signedText(row.x)),
                                    ownWords(signedText(row.y)), sizeOf(row)));
}

void MachineView::addTicks(const TableRow& row, const MadePlace& made) {
  const bool valid = tickedAsItIs(made, row);
  const Step& shown = desk_.table()->step;
  const std::vector<const HoleStep*> steps = fittingsOf(*row.plan);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const HoleStep& step = *steps[i];
    const QString depth = ownWords(depthText(step, shown));
    auto* tick = new TickBox(ownWords(stepWords(step, shown.unit)) +
                                 (depth.isEmpty() ? QString() : QStringLiteral(", ") + depth),
                             tools_);
    tick->setFont(forScreen(screen(), deskFont(2.0)));
    tick->setChecked(valid && isDone(made, step));
    tick->setAccessibleName(tick->text());
    tick->setFocusPolicy(Qt::TabFocus);
    const int index = static_cast<int>(i);
    connect(tick, &QCheckBox::toggled, this, [this, index](bool on) { setTick(index, on); });
    tick->show();
    ticks_.push_back(tick);
  }
  placeTicks();
}

/// In as many rows as it takes.
void MachineView::placeTicks() {
  int widest = 1;
  for (QCheckBox* tick : ticks_) {
    toolGrid_->removeWidget(tick);
    widest = std::max(widest, tick->sizeHint().width() + toolGrid_->horizontalSpacing());
  }
  const QMargins aside = layout()->contentsMargins() + toolGrid_->contentsMargins();
  const int columns = std::max(1, (width() - aside.left() - aside.right()) / widest);
  for (int i = 0; i < static_cast<int>(ticks_.size()); ++i) {
    toolGrid_->addWidget(ticks_[static_cast<std::size_t>(i)], i / columns, i % columns);
  }
}

void MachineView::sayDifference(const TableRow& row, const MadePlace& made) {
  QStringList said;
  if (!made.ticks.empty() && !tickedAsItIs(made, row)) {
    said << tr("The figures are others than when this was ticked: the ticks are taken off");
  }
  const Step& step = desk_.table()->step;
  for (const std::string& words :
       {runNotes(*row.plan, step.unit), keptTo(*row.plan, step), notesOf(*row.plan)}) {
    if (!words.empty()) said << coreWords(words);
  }
  for (const auto& [letter, found, wanted] :
       {std::tuple{"X", &made.x, &row.x}, std::tuple{"Y", &made.y, &row.y}}) {
    const QString off = *found ? differenceText((*found)->value, *wanted, step) : QString();
    if (!off.isEmpty()) said << tr("%1 is %2 off").arg(QLatin1String(letter), off);
  }
  const auto drawn = drawnSize(desk_.part(), row.id);
  const auto found = foundSize(made, pinHabit(shopFor(desk_.job().shop, desk_.ownShop())));
  if (drawn.ok() && found.ok() && found->known()) {
    const Verdict verdict = verdictOf(*found, {drawn->limits.least, drawn->limits.greatest});
    said << tr("size: %1").arg(coreWords(verdictWords(verdict)));
  }
  said_->setText(withWholeFigures(said.join(QStringLiteral(" · "))));
}

void MachineView::showMade() {
  if (current() == nullptr || !takeMeasured()) return;
  MadeSlip(desk_, current()->id, this).exec();
  setFocus();
}

void MachineView::setTick(int step, bool on) {
  const TableRow* row = current();
  if (filling_ || row == nullptr) return;
  MadePlace made = madeAt(desk_.part(), row->id, desk_.setup().name);
  if (!tickedAsItIs(made, *row)) made.ticks.clear();
  const HoleStep& ticked = *fittingsOf(*row->plan)[static_cast<std::size_t>(step)];
  made = withDone(std::move(made), ticked, on);
  noteTicked(made, *row);
  const QString title = tr("Tick %1 at %2").arg(ownWords(doneName(ticked)), ownWords(row->id));
  desk_.endMerge();
  // The box that was clicked is made anew by the edit, so the edit waits for its click to end.
  QMetaObject::invokeMethod(
      this, [this, made, title] { desk_.applyPart(withMade(desk_.part(), made), title); },
      Qt::QueuedConnection);
}

void MachineView::tickNext() {
  for (QCheckBox* tick : ticks_) {
    if (!tick->isChecked()) {
      tick->setChecked(true);
      return;
    }
  }
  go(row_ + 1);
}

bool MachineView::takeMeasured() {
  const TableRow* row = current();
  if (filling_ || asking_ || row == nullptr) return true;
  MadePlace made = madeAt(desk_.part(), row->id, desk_.setup().name);
  const MadePlace before = made;
  QString trouble;
  for (const auto& [field, figure, wanted] :
       {std::tuple{measuredX_, &made.x, &row->x}, std::tuple{measuredY_, &made.y, &row->y}}) {
    const QString text = field->text().trimmed();
    if (text.isEmpty()) {
      figure->reset();
      continue;
    }
    if (*figure && ownWords((*figure)->text) == text) continue;
    const auto read = readTyped(text.toStdString(), desk_.job().machine.unit, desk_.job().unit);
    if (!read.ok()) {
      trouble = tr("%1: %2").arg(field->accessibleName(), coreWords(read.error().text));
    } else if (mayAsk_ && isSignSlip(read->value, wanted->value) && questioned_ != text) {
      questioned_ = text;
      said_->setText(tr("%1 is %2 where %3 is wanted: is the sign right? Once more keeps it so")
                         .arg(field->accessibleName(), text, ownWords(signedText(*wanted))));
      // Tab was on its way to the next field, which now ends as well: that is no answer.
      asking_ = true;
      field->setFocus();
      asking_ = false;
      return false;
    } else {
      *figure = *read;
    }
  }
  questioned_.clear();
  if (made != before) {
    desk_.endMerge();
    desk_.applyPart(withMade(desk_.part(), made), tr("Measure %1").arg(ownWords(row->id)));
  }
  if (!trouble.isEmpty()) said_->setText(trouble);
  return true;
}

void MachineView::resizeEvent(QResizeEvent*) {
  placeTicks();
  update();
}

}  // namespace inchwright::app

#include "moc_machine_view.cpp"
