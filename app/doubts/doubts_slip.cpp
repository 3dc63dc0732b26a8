#include "app/doubts/doubts_slip.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "core/chain/label.h"
#include "core/measure/writing.h"
#include "core/part/edit.h"
#include "core/say/doubt_words.h"
#include "core/say/setup_words.h"

namespace inchwright::app {
namespace {

/// A shape and a word for each kind, so that nothing hangs on the colour.
QString markOf(const Doubt& doubt) {
  if (doubt.accepted) return QStringLiteral("✓ ");
  switch (doubt.key.topic) {
    case DoubtTopic::clash:
      return QStringLiteral("≠ ");
    case DoubtTopic::alone:
    case DoubtTopic::misfit:
      return QStringLiteral("· ");
    default:
      return QStringLiteral("? ");
  }
}

QString ownWords(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

DoubtsSlip::DoubtsSlip(Work& work, QWidget* parent)
    : QWidget(parent),
      work_(work),
      heading_(new QLabel(this)),
      list_(new QListWidget(this)),
      take_(new QPushButton(tr("Read it &so"), this)),
      accept_(new QPushButton(tr("&Accept"), this)) {
  setObjectName(QStringLiteral("doubts"));
  heading_->setFont(deskFont(1.05));
  list_->setAccessibleName(tr("What stands in doubt"));
  list_->setWordWrap(true);
  list_->setFrameShape(QFrame::NoFrame);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  list_->installEventFilter(this);
  heading_->setBuddy(list_);
  take_->setAccessibleName(tr("Read the suspected figure so"));
  accept_->setAccessibleName(tr("Accept the doubt, or take that back"));
  take_->setToolTip(tr("Enter on a suspected figure reads it so"));
  accept_->setToolTip(tr("Looked at and left as it is: it no longer makes the sheet a draft"));

  auto* head = new QHBoxLayout;
  head->addWidget(heading_, 1);
  head->addWidget(take_);
  head->addWidget(accept_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 2, 6, 4);
  column->setSpacing(1);
  column->addLayout(head);
  column->addWidget(list_, 1);

  connect(list_, &QListWidget::currentRowChanged, this, &DoubtsSlip::showChosen);
  connect(take_, &QPushButton::clicked, this, &DoubtsSlip::takeSuspect);
  connect(accept_, &QPushButton::clicked, this, &DoubtsSlip::toggleAccepted);
  connect(&work.desk(), &Desk::edited, this, &DoubtsSlip::fill);
  connect(&work.desk(), &Desk::viewChanged, this, &DoubtsSlip::fill);
  fill();
}

void DoubtsSlip::add(const QString& text, const Entry& entry, bool inDoubt) {
  entries_.push_back(entry);
  const Desk& desk = work_.desk();
  const Part* part = desk.hasPart() ? &desk.part() : nullptr;
  auto* item = new QListWidgetItem(coreWords(text.toStdString(), part), list_);
  item->setForeground(inDoubt ? Look::now().red : Look::now().pencil);
}

void DoubtsSlip::addDoubt(int index) {
  const Desk& desk = work_.desk();
  const Doubt& doubt = desk.solution().doubts[index];
  const std::string text = desk.hasPart() ? doubtText(desk.part(), desk.solution(), doubt) : "";
  add(markOf(doubt) + ownWords(text), {index, -1, -1}, doubt.holdsUp());
}

void DoubtsSlip::addClash(int doubt, int index) {
  const Part& part = work_.desk().part();
  const Solution& solution = work_.desk().solution();
  const Unit unit = work_.desk().job().unit;
  for (const LoopMember& member : solution.clashes[index].loop) {
    const QString label = ownWords(labelOf(part, member.source));
    const Lettered* figure = figureOf(part, member.source);
    add(tr("      %1 %2 to %3: %4, makes %5")
            .arg(label, ownWords(member.from), ownWords(member.to),
                 figure == nullptr ? label : ownWords(figure->text),
                 ownWords(spoken(member.running, unit))),
        {doubt, index, -1}, false);
  }
  const std::vector<Suspect>& suspects = solution.suspects[index];
  for (std::size_t i = 0; i < suspects.size(); ++i) {
    const Suspect& suspect = suspects[i];
    const QString text = suspect.reason.look == Likeness::endsSwapped ? tr("   ▸ %1 may run %2: %3")
                                                                      : tr("   ▸ %1 may be %2: %3");
    add(text.arg(ownWords(suspect.reading), ownWords(wouldBeText(part, suspect)),
                 ownWords(reasonText(part, suspect))),
        {doubt, index, static_cast<int>(i)}, false);
  }
}

void DoubtsSlip::addRounding(int doubt, std::size_t index) {
  const Rounding& rounding = work_.desk().solution().roundings[index];
  if (rounding.fractions.empty()) return;
  add(tr("   ▸ read all of them as fractions; the print's text stays"), {doubt, -1, 0}, false);
}

void DoubtsSlip::fill() {
  const QSignalBlocker quiet(list_);
  const int row = list_->currentRow();
  list_->clear();
  entries_.clear();
  if (work_.desk().isBare()) {
    sayWhatComesFirst();
  } else {
    const int open = addAll();
    heading_->setText(open == 0 ? tr("&Doubts: nothing in doubt")
                                : tr("&Doubts: %n open", nullptr, open));
  }
  list_->setCurrentRow(std::min(row, list_->count() - 1));
  showChoices();
}

void DoubtsSlip::sayWhatComesFirst() {
  heading_->setText(tr("&Doubts: nothing to check yet"));
  add(tr("Nothing is on the print yet, so nothing can be right or wrong. First lay a picture of "
         "their print underneath (Ctrl+L), or trace an edge or a hole (Alt+T). Then read: two "
         "places and the figure between them."),
      {}, false);
}

int DoubtsSlip::addAll() {
  const Desk& desk = work_.desk();
  int open = 0;
  if (const auto& error = desk.tableError()) {
    add(QStringLiteral("? ") + ownWords(error->text), {}, true);
    ++open;
  }
  const Solution& solution = desk.solution();
  for (std::size_t i = 0; i < solution.doubts.size(); ++i) {
    const Doubt& doubt = solution.doubts[i];
    if (doubt.holdsUp()) ++open;
    addDoubt(static_cast<int>(i));
    const auto number = static_cast<int>(i);
    if (doubt.key.topic == DoubtTopic::clash) addClash(number, static_cast<int>(doubt.index));
    if (doubt.key.topic == DoubtTopic::rounded) addRounding(number, doubt.index);
  }
  if (const SetupTable* table = desk.table()) {
    for (const SetupWarning& one : table->warnings) {
      const std::string warning = warningWords(one, *table, spokenEnglish());
      add(QStringLiteral("! ") + ownWords(warning), {}, false);
    }
  }
  return open;
}

const DoubtsSlip::Entry* DoubtsSlip::chosen() const {
  const int row = list_->currentRow();
  return row >= 0 && row < static_cast<int>(entries_.size()) ? &entries_[row] : nullptr;
}

void DoubtsSlip::showChoices() {
  const Entry* entry = chosen();
  take_->setEnabled(entry != nullptr && entry->suspect >= 0);
  accept_->setEnabled(entry != nullptr && entry->doubt >= 0);
  const bool accepted = entry != nullptr && entry->doubt >= 0 &&
                        work_.desk().solution().doubts[entry->doubt].accepted;
  accept_->setText(accepted ? tr("T&ake back") : tr("&Accept"));
}

void DoubtsSlip::showChosen() {
  const Entry* entry = chosen();
  showChoices();
  if (entry == nullptr || entry->doubt < 0) return;
  const Solution& solution = work_.desk().solution();
  const Doubt& doubt = solution.doubts[entry->doubt];
  Selection selection;
  const auto point = [&](const Id& id) {
    const bool reading = work_.desk().part().reading(id) != nullptr;
    auto& ids = reading ? selection.readings : selection.places;
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  };
  if (entry->clash >= 0 && entry->suspect >= 0) {
    const Reading* reading =
        work_.desk().part().reading(solution.suspects[entry->clash][entry->suspect].reading);
    if (reading != nullptr) {
      for (const Id& id : {reading->id, reading->from, reading->to}) point(id);
    }
  } else {
    for (const Id& id : doubt.pointsAt()) point(id);
  }
  work_.desk().select(selection);
  emit work_.show(selection.places, selection.readings);
}

bool DoubtsSlip::takeSuspect() {
  const Entry* entry = chosen();
  if (entry == nullptr || entry->suspect < 0) return false;
  if (entry->clash < 0) return takeFractions(entry->doubt);
  Desk& desk = work_.desk();
  const Suspect suspect = desk.solution().suspects[entry->clash][entry->suspect];
  const Reading* before = desk.part().reading(suspect.reading);
  if (before == nullptr) return false;
  Reading reading = *before;
  if (suspect.reason.look == Likeness::endsSwapped) {
    std::swap(reading.from, reading.to);
  } else {
    auto figure = readLength(suspect.wouldBeText, {desk.job().unit});
    if (!figure.ok()) return false;
    reading.figure = std::move(*figure);
    reading.figure.reference = before->figure.reference;
    reading.meant.clear();
  }
  const QString said = ownWords(wouldBeText(desk.part(), suspect));
  desk.endMerge();
  return desk.applyPart(replaceReading(desk.part(), reading.id, reading),
                        tr("Read %1 as %2").arg(ownWords(reading.id), said));
}

// All decimals of the loop at once: their text stays, and what it stands for is kept beside it.
bool DoubtsSlip::takeFractions(int doubt) {
  Desk& desk = work_.desk();
  const Rounding rounding = desk.solution().roundings[desk.solution().doubts[doubt].index];
  Part part = desk.part();
  for (const MeantFraction& one : rounding.fractions) {
    for (Reading& reading : part.readings) {
      if (reading.id != one.reading) continue;
      reading.meant = writeFraction(one.meant);
      reading.figure.value = one.meant;
      reading.figure.exact = true;
    }
  }
  desk.endMerge();
  return desk.applyPart(std::move(part), tr("Read rounded decimals as fractions"));
}

void DoubtsSlip::toggleAccepted() {
  const Entry* entry = chosen();
  if (entry == nullptr || entry->doubt < 0) return;
  Desk& desk = work_.desk();
  const Doubt doubt = desk.solution().doubts[entry->doubt];
  Part part = desk.part();
  std::erase_if(part.accepted,
                [key = doubt.key.text()](const AcceptedDoubt& one) { return one.key == key; });
  if (!doubt.accepted) {
    part.accepted.emplace_back(doubt.key.text());
    part.accepted.back().about = doubt.about;
  }
  desk.endMerge();
  desk.applyPart(std::move(part), doubt.accepted ? tr("Take back") : tr("Accept a doubt"));
}

bool DoubtsSlip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == list_ && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
      takeSuspect();
      return true;
    }
  }
  if (watched == list_ && event->type() == QEvent::FocusIn) showChosen();
  return QWidget::eventFilter(watched, event);
}

void DoubtsSlip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), Look::now().slip);
}

}  // namespace inchwright::app

#include "moc_doubts_slip.cpp"
