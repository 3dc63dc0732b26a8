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
#include "app/doubts/doubt_mark.h"
#include "app/session/activity.h"
#include "app/session/doubt_edits.h"
#include "app/session/picture_edits.h"
#include "core/say/doubt_words.h"
#include "core/say/placing_words.h"
#include "core/say/reading_words.h"
#include "core/say/setup_words.h"
#include "core/say/source_words.h"

namespace inchwright::app {
namespace {

QString ownWords(const std::string& text) {
  return QString::fromStdString(text);
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
  heading_->setFont(deskFont(1.1));
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
  connect(take_, &QPushButton::clicked, this, [this] { take(meant()); });
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
  lines_.push_back({withWholeFigures(coreWords(text.toStdString(), part)),
                    inDoubt ? Look::now().red : Look::now().pencil});
}

bool DoubtsSlip::isListed() const {
  if (list_->count() != static_cast<int>(lines_.size())) return false;
  return std::all_of(lines_.begin(), lines_.end(), [this, row = 0](const Line& line) mutable {
    const QListWidgetItem* item = list_->item(row++);
    return item->text() == line.text && item->foreground() == line.colour;
  });
}

void DoubtsSlip::listAnew() {
  list_->clear();
  for (const Line& line : lines_) {
    auto* item = new QListWidgetItem(line.text, list_);
    item->setForeground(line.colour);
  }
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
  add(words, {index}, contradicts(doubt));
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
  Entry entry{loose[0]};
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
        {doubt, Choice::none, 0, 0, label}, false);
  }
  const std::vector<Suspect>& suspects = solution.suspects[index];
  for (std::size_t i = 0; i < suspects.size(); ++i) {
    const Suspect& suspect = suspects[i];
    const QString text = suspect.reason.look == Likeness::endsSwapped ? tr("   ▸ %1 may run %2: %3")
                                                                      : tr("   ▸ %1 may be %2: %3");
    add(text.arg(ownWords(readingWords(part, suspect.reading)),
                 ownWords(wouldBeText(part, suspect)), ownWords(reasonText(part, suspect))),
        {doubt, Choice::suspect, static_cast<std::size_t>(index), i}, false);
  }
}

void DoubtsSlip::addCentres(int doubt, const CentresClash& clash, std::size_t index) {
  const Part& part = work_.desk().part();
  for (const std::uint32_t member : clash.members) {
    const Reading& reading = part.readings[member];
    add(QStringLiteral("      ") + ownWords(readingWords(part, reading)) + QStringLiteral(": ") +
            ownWords(reading.figure.text),
        {doubt, Choice::none, 0, 0, reading.id}, false);
  }
  const auto& suspects = work_.desk().solution().centreSuspects[index];
  for (std::size_t i = 0; i < suspects.size(); ++i) {
    add(QStringLiteral("   ▸ ") + ownWords(suspectText(part, suspects[i])),
        {doubt, Choice::centreSuspect, index, i}, false);
  }
}

void DoubtsSlip::addAnswers(int doubt, const SeveralAnswers& several, std::size_t index) {
  if (several.answers.size() < 2) return;
  for (std::size_t i = 0; i < several.answers.size(); ++i) {
    add(tr("   ▸ %1: the print shows %2 at %3")
            .arg(i + 1)
            .arg(ownWords(several.place), ownWords(pointText(several.answers[i]))),
        {doubt, Choice::answer, index, i}, false);
  }
}

void DoubtsSlip::addRounding(int doubt, std::size_t index) {
  const Rounding& rounding = work_.desk().solution().roundings[index];
  if (rounding.fractions.empty()) return;
  add(tr("   ▸ read all of them as fractions; the print's text stays"),
      {doubt, Choice::fractions, index}, false);
}

void DoubtsSlip::fill() {
  const QSignalBlocker quiet(list_);
  const int row = list_->currentRow();
  const QString words = row < 0 ? QString() : list_->item(row)->text();
  lines_.clear();
  entries_.clear();
  if (work_.desk().isBare()) {
    sayWhatComesFirst();
  } else {
    const int open = addAll();
    heading_->setText(open == 0 ? tr("&Doubts: none open") : tr("&Doubts: %n open", nullptr, open));
  }
  if (!isListed()) {
    listAnew();
    list_->setCurrentRow(rowAgain(row, words));
  }
  showChoices();
}

int DoubtsSlip::rowAgain(int row, const QString& words) const {
  std::optional<int> same;
  for (int other = 0; row >= 0 && other < list_->count(); ++other) {
    if (list_->item(other)->text() != words) continue;
    if (!same || std::abs(other - row) < std::abs(*same - row)) same = other;
  }
  if (same) return *same;
  row = std::min(row, list_->count() - 1);
  while (row >= 0 && entries_[static_cast<std::size_t>(row)].choice != Choice::none) --row;
  return row;
}

void DoubtsSlip::sayWhatComesFirst() {
  heading_->setText(tr("&Doubts: nothing to check yet"));
  const Desk& desk = work_.desk();
  const Picture* picture =
      desk.hasPart() ? pictureUnder(desk.job(), desk.part(), desk.face()) : nullptr;
  if (picture != nullptr) {
    add(picture->points.empty()
            ? tr("Nothing is traced yet, so nothing can be right or wrong. First the picture is "
                 "squared up, as the line on the left asks (Ctrl+U); then trace an edge or a hole "
                 "on it (Alt+T), and read: two places and the figure between them.")
            : tr("Nothing is traced yet, so nothing can be right or wrong. Trace an edge or a hole "
                 "on the picture (Alt+T), or look at what it offers (Ctrl+G). Then read: two "
                 "places and the figure between them."),
        {}, false);
    return;
  }
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
  // What may not go together comes before what only wants a second look.
  std::optional<int> apart;
  const auto tellApart = [&] {
    if (apart) return;
    apart = static_cast<int>(desk.kitDoubts().size());
    for (const std::string& one : desk.kitDoubts()) {
      add(QStringLiteral("≠ ") + ownWords(one), {}, true);
    }
  };
  for (std::size_t i = 0; i < solution.doubts.size(); ++i) {
    const Doubt& doubt = solution.doubts[i];
    if (doubt.holdsUp()) {
      ++open;
    } else {
      tellApart();
    }
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
    if (doubt.placing == PlacingDoubt::clashes) {
      addCentres(number, solution.beyond.clashes[doubt.index], doubt.index);
    }
    if (doubt.placing == PlacingDoubt::answers) {
      addAnswers(number, solution.beyond.answers[doubt.index], doubt.index);
    }
  }
  tellApart();
  open += *apart;
  for (const PictureView& view : desk.part().views) {
    const auto picture = std::find_if(desk.job().pictures.begin(), desk.job().pictures.end(),
                                      [&](const Picture& one) { return one.name == view.picture; });
    if (picture == desk.job().pictures.end()) continue;
    if (const auto crooked = crookedBy(picture->points)) {
      add(tr("! the picture %1: %2").arg(ownWords(view.picture), ownWords(crookedText(*crooked))),
          {}, true);
      ++open;
    }
  }
  if (const SheetEdition* edition = desk.edition(); edition != nullptr && edition->isNew()) {
    add(QStringLiteral("! ") + ownWords(newEditionWords(*edition)), {}, true);
    for (const std::string& one : edition->changes) {
      add(QStringLiteral("      ") + ownWords(one), {}, false);
    }
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

DoubtsSlip::Entry DoubtsSlip::meant() const {
  const Desk& desk = work_.desk();
  if (desk.isBare()) return {};
  const Entry* entry = chosen();
  const bool canTake = entry != nullptr && entry->choice != Choice::none;
  const std::vector<Id>& readings = desk.selection().readings;
  if (readings.size() != 1) return canTake ? *entry : Entry();
  // The reading that is chosen, here among the sums or on the print, where it is blamed; the line
  // only where it is about that one.
  const auto isAbout = [&](const Entry& one) { return readingOf(one) == readings[0]; };
  if (canTake && (isAbout(*entry) || readingOf(*entry).empty())) return *entry;
  const auto blamed = std::find_if(entries_.begin(), entries_.end(), isAbout);
  return blamed == entries_.end() ? Entry() : *blamed;
}

Id DoubtsSlip::readingOf(const Entry& entry) const {
  const Solution& solution = work_.desk().solution();
  if (entry.choice == Choice::suspect) return solution.suspects[entry.list][entry.number].reading;
  if (entry.choice != Choice::centreSuspect) return {};
  const CentreSuspect& suspect = solution.centreSuspects[entry.list][entry.number];
  return work_.desk().part().readings[suspect.reading].id;
}

QString DoubtsSlip::wordsOf(const Entry& entry) const {
  const Part& part = work_.desk().part();
  const Solution& solution = work_.desk().solution();
  switch (entry.choice) {
    case Choice::none:
      break;
    case Choice::suspect: {
      const Suspect& suspect = solution.suspects[entry.list][entry.number];
      return tr("Reads %1 as %2")
          .arg(ownWords(readingWords(part, suspect.reading)), ownWords(wouldBeText(part, suspect)));
    }
    case Choice::centreSuspect:
      return ownWords(suspectText(part, solution.centreSuspects[entry.list][entry.number]));
    case Choice::fractions:
      return tr("Reads all of them as fractions; the print's text stays");
    case Choice::answer:
      return tr("Writes down that the print shows %1 there")
          .arg(ownWords(solution.beyond.answers[entry.list].place));
  }
  return tr("Enter on a suspected figure reads it so");
}

void DoubtsSlip::showChoices() {
  const Entry* entry = chosen();
  const Entry wanted = meant();
  take_->setEnabled(wanted.choice != Choice::none);
  take_->setText(wanted.choice == Choice::answer ? tr("It lie&s there") : tr("Read it &so"));
  take_->setToolTip(work_.desk().isBare() ? QString() : wordsOf(wanted));
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
  const Id suspected = readingOf(*entry);
  const Id named = suspected.empty() ? entry->member : suspected;
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

void DoubtsSlip::take(const Entry& wanted) {
  if (wanted.choice == Choice::none) return;
  Desk& desk = work_.desk();
  const Part& part = desk.part();
  const Solution& solution = desk.solution();
  const auto settle = [&]() -> Result<Settled> {
    switch (wanted.choice) {
      case Choice::none:
      case Choice::suspect:
        return readSo(part, solution.suspects[wanted.list][wanted.number], desk.job().unit);
      case Choice::centreSuspect:
        return readSo(part, solution.centreSuspects[wanted.list][wanted.number], desk.job().unit);
      case Choice::fractions:
        return readAsFractions(part, solution.roundings[wanted.list]);
      case Choice::answer:
        break;
    }
    return takeAnswer(part, solution.beyond.answers[wanted.list], wanted.number);
  };
  auto settled = settle();
  if (!settled.ok()) {
    emit desk.refused(ownWords(settled.error().text));
    return;
  }
  desk.endMerge();
  if (desk.applyPart(std::move(settled->part), settled->title)) emit this->settled();
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
    // Also from one of its sums or suspects: what is let stand is the doubt.
    const auto first = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& other) {
      return other.doubt == entry->doubt;
    });
    const auto row = static_cast<int>(first - entries_.begin());
    work_.accept(accepted, list_->item(row)->text().mid(2));
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
      if (entry != nullptr && !press->isAutoRepeat()) take(Entry(*entry));
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
