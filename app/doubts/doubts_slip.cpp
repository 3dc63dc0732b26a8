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
#include "app/session/activity.h"
#include "core/measure/writing.h"
#include "core/part/edit.h"
#include "core/say/doubt_words.h"
#include "core/say/reading_words.h"
#include "core/say/setup_words.h"
#include "core/say/source_words.h"

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

/// Red is for what contradicts; what is merely not said yet is graphite.
bool contradicts(const Doubt& doubt) {
  switch (doubt.key.topic) {
    case DoubtTopic::clash:
    case DoubtTopic::crossedSides:
    case DoubtTopic::sameSide:
    case DoubtTopic::outside:
    case DoubtTopic::breaksEdge:
    case DoubtTopic::holesMeet:
    case DoubtTopic::swappedEnds:
    case DoubtTopic::wrongWay:
    case DoubtTopic::offTrace:
    case DoubtTopic::oddSizes:
    case DoubtTopic::size:
    case DoubtTopic::readTwice:
      return doubt.holdsUp();
    default:
      return false;
  }
}

/// Whether it may be said together with others of its kind and axis.
bool isLoose(const Doubt& doubt) {
  return doubt.key.topic == DoubtTopic::loose && !doubt.accepted && doubt.key.axis &&
         !doubt.key.places.empty();
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
  connect(&work.desk(), &Desk::selectionChanged, this, &DoubtsSlip::showChoices);
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
  QString words = markOf(doubt) + ownWords(text);
  for (const AcceptedDoubt& one : desk.part().accepted) {
    const bool reasoned = doubt.accepted && one.key == doubt.key.text() && !one.reason.empty();
    if (reasoned) words += QStringLiteral(" (%1)").arg(ownWords(one.reason));
  }
  add(words, {index, -1, -1}, contradicts(doubt));
}

/// Places that nothing fixes along one axis, in one line: `A, B, C and 4 more: not placed yet along
/// Y`.
void DoubtsSlip::addLoose(const std::vector<int>& loose) {
  if (loose.size() == 1) return addDoubt(loose[0]);
  constexpr std::size_t kNamed = 4;
  const Solution& solution = work_.desk().solution();
  QStringList names;
  for (const int index : loose) {
    if (names.size() < static_cast<qsizetype>(kNamed) || loose.size() == kNamed + 1) {
      names << ownWords(solution.doubts[index].key.places.front());
    }
  }
  const auto more = loose.size() - static_cast<std::size_t>(names.size());
  const QString listed = names.join(QStringLiteral(", "));
  const QString axis = wordFor(*solution.doubts[loose[0]].key.axis);
  Entry entry{loose[0], -1, -1};
  entry.alike = loose;
  add(QStringLiteral("? ") +
          (more == 0
               ? tr("%1: not placed yet along %2").arg(listed, axis)
               : tr("%1 and %2 more: not placed yet along %3").arg(listed).arg(more).arg(axis)),
      entry, false);
}

void DoubtsSlip::addClash(int doubt, int index) {
  const Part& part = work_.desk().part();
  const Solution& solution = work_.desk().solution();
  const Unit unit = work_.desk().job().unit;
  for (const LoopMember& member : solution.clashes[index].loop) {
    const Lettered* figure = figureOf(part, member.source);
    const std::string label = labelOf(part, member.source);
    add(tr("      %1 to %2: %3, makes %4")
            .arg(ownWords(member.from), ownWords(member.to),
                 ownWords(figure == nullptr ? label : figure->text),
                 ownWords(spoken(member.running, unit))),
        {doubt, index, -1, label}, false);
  }
  const std::vector<Suspect>& suspects = solution.suspects[index];
  for (std::size_t i = 0; i < suspects.size(); ++i) {
    const Suspect& suspect = suspects[i];
    const QString text = suspect.reason.look == Likeness::endsSwapped ? tr("   ▸ %1 may run %2: %3")
                                                                      : tr("   ▸ %1 may be %2: %3");
    add(text.arg(ownWords(readingWords(part, suspect.reading)),
                 ownWords(wouldBeText(part, suspect)), ownWords(reasonText(part, suspect))),
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
    heading_->setText(open == 0 ? tr("&Doubts: none open") : tr("&Doubts: %n open", nullptr, open));
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
    add(QStringLiteral("? ") + ownWords(error->text), {}, false);
    ++open;
  }
  const Solution& solution = desk.solution();
  for (std::size_t i = 0; i < solution.doubts.size(); ++i) {
    const Doubt& doubt = solution.doubts[i];
    if (doubt.holdsUp()) ++open;
    const auto number = static_cast<int>(i);
    if (isLoose(doubt)) {
      // All along one axis at the first of them.
      std::vector<int> alike;
      for (std::size_t j = 0; j < solution.doubts.size(); ++j) {
        const Doubt& other = solution.doubts[j];
        if (isLoose(other) && other.key.axis == doubt.key.axis)
          alike.push_back(static_cast<int>(j));
      }
      if (alike.front() == number) addLoose(alike);
      continue;
    }
    addDoubt(number);
    if (doubt.key.topic == DoubtTopic::clash) addClash(number, static_cast<int>(doubt.index));
    if (doubt.key.topic == DoubtTopic::rounded) addRounding(number, doubt.index);
  }
  if (const SheetEdition* edition = desk.edition(); edition != nullptr && edition->isNew()) {
    add(QStringLiteral("! ") + ownWords(newEditionWords(*edition)), {}, true);
    for (const std::string& one : edition->changes) {
      add(QStringLiteral("      ") + ownWords(one), {}, false);
    }
  }
  for (const std::string& one : desk.kitDoubts()) {
    add(QStringLiteral("≠ ") + ownWords(one), {}, true);
    ++open;
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

const Suspect* DoubtsSlip::meant() const {
  const Desk& desk = work_.desk();
  if (desk.isBare()) return nullptr;
  const Solution& solution = desk.solution();
  const Entry* entry = chosen();
  if (entry != nullptr && entry->suspect >= 0) {
    return entry->clash < 0 ? nullptr : &solution.suspects[entry->clash][entry->suspect];
  }
  // Else the reading that is chosen, here among the sums or on the print, where it is blamed.
  const std::vector<Id>& readings = desk.selection().readings;
  if (readings.size() != 1) return nullptr;
  for (const std::vector<Suspect>& suspects : solution.suspects) {
    for (const Suspect& suspect : suspects) {
      if (suspect.reading == readings[0]) return &suspect;
    }
  }
  return nullptr;
}

void DoubtsSlip::showChoices() {
  const Entry* entry = chosen();
  const Suspect* suspect = meant();
  const bool fractions = entry != nullptr && entry->suspect >= 0 && entry->clash < 0;
  take_->setEnabled(suspect != nullptr || fractions);
  take_->setToolTip(suspect == nullptr
                        ? tr("Enter on a suspected figure reads it so")
                        : tr("Reads %1 as %2")
                              .arg(ownWords(suspect->reading),
                                   ownWords(wouldBeText(work_.desk().part(), *suspect))));
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
  const bool suspected = entry->clash >= 0 && entry->suspect >= 0;
  const Id named =
      suspected ? solution.suspects[entry->clash][entry->suspect].reading : entry->member;
  if (const Reading* reading = work_.desk().part().reading(named)) {
    for (const Id& id : {reading->id, reading->from, reading->to}) point(id);
  } else if (!entry->alike.empty()) {
    for (const int index : entry->alike) {
      for (const Id& id : solution.doubts[index].pointsAt()) point(id);
    }
  } else {
    for (const Id& id : doubt.pointsAt()) point(id);
  }
  work_.desk().select(selection);
  emit work_.show(selection.places, selection.readings);
}

bool DoubtsSlip::takeSuspect() {
  const Entry* entry = chosen();
  if (entry != nullptr && entry->suspect >= 0 && entry->clash < 0) {
    return takeFractions(entry->doubt);
  }
  const Suspect* wanted = meant();
  if (wanted == nullptr) return false;
  Desk& desk = work_.desk();
  const Suspect suspect = *wanted;
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
    reading.offered.clear();
  }
  const QString said = ownWords(wouldBeText(desk.part(), suspect));
  desk.endMerge();
  const bool done =
      desk.applyPart(replaceReading(desk.part(), reading.id, reading),
                     tr("Read %1 as %2").arg(ownWords(readingWords(desk.part(), *before)), said));
  if (done) emit settled();
  return done;
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
  const bool done = desk.applyPart(std::move(part), tr("Read rounded decimals as fractions"));
  if (done) emit settled();
  return done;
}

void DoubtsSlip::toggleAccepted() {
  const Entry* entry = chosen();
  if (entry == nullptr || entry->doubt < 0) return;
  Desk& desk = work_.desk();
  const Doubt doubt = desk.solution().doubts[entry->doubt];
  if (!doubt.accepted) {
    std::vector<AcceptedDoubt> accepted;
    const std::vector<int> one{entry->doubt};
    for (const int index : entry->alike.empty() ? one : entry->alike) {
      const Doubt& each = desk.solution().doubts[index];
      accepted.emplace_back(each.key.text());
      accepted.back().about = each.about;
    }
    work_.accept(accepted, list_->currentItem()->text().mid(2));
  } else {
    Part part = desk.part();
    std::erase_if(part.accepted,
                  [key = doubt.key.text()](const AcceptedDoubt& one) { return one.key == key; });
    desk.endMerge();
    desk.applyPart(std::move(part), tr("Take back that a doubt was accepted"));
  }
  emit settled();
}

bool DoubtsSlip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == list_ && event->type() == QEvent::KeyPress) {
    const auto* press = static_cast<QKeyEvent*>(event);
    if (press->key() == Qt::Key_Return || press->key() == Qt::Key_Enter) {
      // Only on the suspected figure itself, and not by a key that is still held down.
      const Entry* entry = chosen();
      if (entry != nullptr && entry->suspect >= 0 && !press->isAutoRepeat()) takeSuspect();
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
