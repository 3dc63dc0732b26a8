#include "app/machine/made_slip.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/base/look.h"
#include "app/base/sheet_date.h"
#include "app/base/spoken_english.h"
#include "app/session/typed_figure.h"
#include "app/words/way_figures.h"
#include "core/kit/as_made.h"
#include "core/part/edit.h"
#include "core/say/kit_words.h"

namespace inchwright::app {
namespace {

constexpr const char* kPinClasses[] = {"XX", "X", "Y", "Z", "ZZ"};

QString words(const std::string& text) {
  return QString::fromStdString(text);
}

QString textOf(const std::optional<Lettered>& figure) {
  return figure ? words(figure->text) : QString();
}

/// The job as if of all that was measured at a place only this piece were there.
Job ofPiece(Job job, int part, const MadePlace& made) {
  std::vector<MadePlace>& all = job.parts[static_cast<std::size_t>(part)].made;
  std::erase_if(all, [&](const MadePlace& one) {
    return one.place == made.place && (one.setup != made.setup || one.piece != made.piece);
  });
  return job;
}

}  // namespace

MadeSlip::MadeSlip(Desk& desk, Id place, QWidget* parent)
    : QDialog(parent),
      desk_(desk),
      place_(std::move(place)),
      found_(new QLabel(this)),
      said_(new QLabel(this)),
      list_(new QListWidget(this)),
      reason_(new QLineEdit(this)),
      choose_(new QPushButton(tr("&Write it down"), this)) {
  setObjectName(QStringLiteral("made"));
  setWindowTitle(tr("As made: %1").arg(words(place_)));
  setAccessibleName(windowTitle());
  found_->setObjectName(QStringLiteral("found"));
  found_->setWordWrap(true);
  found_->setFont(deskFont(1.1));
  said_->setObjectName(QStringLiteral("said"));
  said_->setWordWrap(true);
  list_->setAccessibleName(tr("Ways out"));
  list_->setWordWrap(true);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  reason_->setAccessibleName(tr("Reason for the way out"));
  reason_->setPlaceholderText(tr("why this one"));
  choose_->setAutoDefault(false);
  auto* done = new QPushButton(tr("&Done"), this);
  done->setProperty("firm", true);
  done->setAutoDefault(false);
  auto* chosen = new QHBoxLayout;
  chosen->addWidget(reason_, 1);
  chosen->addWidget(choose_);
  chosen->addWidget(done);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(26, 20, 26, 18);
  column->addWidget(fields());
  column->addWidget(found_);
  column->addWidget(list_, 1);
  column->addWidget(said_);
  column->addLayout(chosen);
  connect(choose_, &QPushButton::clicked, this, &MadeSlip::choose);
  connect(done, &QPushButton::clicked, this, &QDialog::accept);
  connect(list_, &QListWidget::currentRowChanged, this,
          [this](int row) { choose_->setEnabled(row >= 0); });
  connect(&desk, &Desk::edited, this, &MadeSlip::showNow);
  resize(fontMetrics().averageCharWidth() * 100, fontMetrics().lineSpacing() * 30);
  piece_->setText(words(madeAt(desk_.part(), place_, desk_.setup().name).piece));
  showNow();
  size_->setFocus();
}

MadeSlip::~MadeSlip() {
  // A field that loses the focus takes what was typed, and needs the others to be there still.
  hide();
}

QLineEdit* MadeSlip::line(const QString& name, int letters) {
  auto* field = new QLineEdit(this);
  field->setAccessibleName(name);
  field->setMaximumWidth(fontMetrics().averageCharWidth() * (letters + 3));
  connect(field, &QLineEdit::editingFinished, this, &MadeSlip::take);
  return field;
}

QWidget* MadeSlip::fields() {
  auto* holder = new QWidget(this);
  auto* form = new QFormLayout(holder);
  form->setContentsMargins(0, 0, 0, 0);
  piece_ = new QLineEdit(this);
  piece_->setAccessibleName(tr("Which piece"));
  piece_->setMaximumWidth(fontMetrics().averageCharWidth() * 15);
  piece_->setPlaceholderText(tr("of several"));
  connect(piece_, &QLineEdit::editingFinished, this, [this] {
    if (!filling_) showNow();
  });
  size_ = line(tr("Size as found"), 14);
  instrument_ = line(tr("Measured with"), 28);
  error_ = line(tr("How far that may be wrong, either way"), 10);
  auto* measured = new QHBoxLayout;
  measured->addWidget(size_);
  measured->addWidget(new QLabel(tr("measured with"), this));
  measured->addWidget(instrument_);
  measured->addWidget(new QLabel(tr("good to ±"), this));
  measured->addWidget(error_);
  measured->addStretch(1);
  form->addRow(tr("&Piece"), piece_);
  form->addRow(tr("Si&ze"), measured);
  qobject_cast<QLabel*>(form->labelForField(measured))->setBuddy(size_);
  form->addRow(tr("Pin that &goes in"), pinRow(go_, tr("Pin that goes in")));
  form->addRow(tr("Pin that does &not"), pinRow(noGo_, tr("Pin that does not go in")));
  return holder;
}

QWidget* MadeSlip::pinRow(PinFields& pin, const QString& name) {
  auto* holder = new QWidget(this);
  auto* row = new QHBoxLayout(holder);
  row->setContentsMargins(0, 0, 0, 0);
  pin.size = line(name, 14);
  pin.pinClass = new QComboBox(this);
  pin.pinClass->setAccessibleName(tr("%1: its class").arg(name));
  pin.pinClass->addItem(tr("class as owned"));
  for (const char* one : kPinClasses) pin.pinClass->addItem(QLatin1String(one));
  pin.sign = new QComboBox(this);
  pin.sign->setAccessibleName(tr("%1: its sign").arg(name));
  pin.sign->addItems({tr("sign as owned"), tr("plus"), tr("minus")});
  for (QComboBox* box : {pin.pinClass, pin.sign}) {
    connect(box, &QComboBox::activated, this, &MadeSlip::take);
  }
  row->addWidget(pin.size);
  row->addWidget(pin.pinClass);
  row->addWidget(pin.sign);
  row->addStretch(1);
  return holder;
}

std::string MadeSlip::piece() const {
  return piece_->text().trimmed().toStdString();
}

MadePlace MadeSlip::made() const {
  return madeOfPiece(desk_.part(), place_, desk_.setup().name, piece());
}

void MadeSlip::showPin(const PinFields& pin, const std::optional<TriedPin>& tried) {
  pin.size->setText(tried ? words(tried->size.text) : QString());
  const QString named = tried ? words(tried->pinClass) : QString();
  pin.pinClass->setCurrentIndex(std::max(0, pin.pinClass->findText(named, Qt::MatchFixedString)));
  pin.sign->setCurrentIndex(tried && tried->sign ? static_cast<int>(*tried->sign) + 1 : 0);
}

void MadeSlip::showNow() {
  if (!desk_.hasPart()) return;
  filling_ = true;
  const MadePlace now = made();
  size_->setText(textOf(now.size));
  showPin(go_, now.go);
  showPin(noGo_, now.noGo);
  instrument_->setText(now.with ? words(now.with->name) : QString());
  error_->setText(now.with ? textOf(now.with->error) : QString());
  said_->clear();
  showWays();
  filling_ = false;
}

/// What was found beside what was wanted, and what there is to do about it.
void MadeSlip::showWays() {
  const int row = list_->currentRow();
  list_->clear();
  ways_.clear();
  found_->setText(tr("Nothing was measured here yet."));
  const MadePlace now = made();
  const auto step = desk_.step();
  if (step && now.measured()) {
    const Job job = ofPiece(desk_.job(), desk_.partIndex(), now);
    // What was found changes no solution.
    const auto solutions = desk_.solutions();
    auto all = asMade(job, solutions);
    if (!all.ok()) return found_->setText(coreWords(all.error().text));
    std::erase_if(all->rows, [&](const MadeRow& one) {
      return one.part != desk_.part().name || one.place != place_;
    });
    all->gaps.clear();
    all->mates.clear();
    QStringList lines;
    for (const std::string& one : madeLines(*all, *step)) lines << coreWords(one);
    found_->setText(withWholeFigures(lines.join(QLatin1Char('\n'))));
    auto ways = waysOut(job, solutions, desk_.part().name, place_);
    if (ways.ok()) ways_ = *std::move(ways);
  }
  for (const Way& way : ways_) {
    QStringList lines;
    for (const std::string& one : waysOutLines(desk_.part(), {way}, *step)) {
      lines << coreWords(one);
    }
    list_->addItem(withWholeFigures(lines.join(QLatin1Char('\n'))));
  }
  for (const Mended& one : desk_.part().mended) {
    if (one.place != place_ || one.piece != piece()) continue;
    for (std::size_t i = 0; i < ways_.size(); ++i) {
      if (ways_[i].way == one.way) list_->setCurrentRow(static_cast<int>(i));
    }
    reason_->setText(words(one.reason));
    said_->setText(
        tr("Written down: %1. Why: %2").arg(coreWords(wayWords(one.way)), words(one.reason)));
  }
  if (row >= 0 && row < list_->count()) list_->setCurrentRow(row);
  list_->setEnabled(!ways_.empty());
  reason_->setEnabled(!ways_.empty());
  choose_->setEnabled(list_->currentRow() >= 0);
}

bool MadeSlip::takeFigure(QLineEdit* field, std::optional<Lettered>& figure) {
  const QString text = field->text().trimmed();
  if (text == textOf(figure)) return true;
  if (text.isEmpty()) {
    figure.reset();
    return true;
  }
  const auto read = readTyped(text.toStdString(), desk_.job().machine.unit, desk_.job().unit);
  const QString why = !read.ok()                    ? coreWords(read.error().text)
                      : read->value <= Length()     ? tr("a size is more than nothing")
                      : read->tolerance.has_value() ? tr("what was found has no tolerance")
                                                    : QString();
  if (!why.isEmpty()) {
    said_->setText(tr("Not taken: %1: %2").arg(field->accessibleName(), why));
    return false;
  }
  figure = *read;
  return true;
}

bool MadeSlip::takePin(const PinFields& pin, std::optional<TriedPin>& tried) {
  std::optional<Lettered> size = tried ? std::optional(tried->size) : std::nullopt;
  if (!takeFigure(pin.size, size)) return false;
  if (!size) {
    tried.reset();
    return true;
  }
  if (!tried) tried.emplace();
  tried->size = *size;
  const int chosen = pin.pinClass->currentIndex();
  // A class that is none of those here stays until another is chosen.
  if (chosen > 0) tried->pinClass = kPinClasses[chosen - 1];
  if (chosen == 0 && pin.pinClass->findText(words(tried->pinClass), Qt::MatchFixedString) > 0) {
    tried->pinClass.clear();
  }
  const int sign = pin.sign->currentIndex();
  tried->sign = sign > 0 ? std::optional(static_cast<PinSign>(sign - 1)) : std::nullopt;
  return true;
}

void MadeSlip::take() {
  if (filling_ || !desk_.hasPart()) return;
  const MadePlace before = made();
  MadePlace now = before;
  if (!takeFigure(size_, now.size) || !takePin(go_, now.go) || !takePin(noGo_, now.noGo)) return;
  Instrument with = now.with.value_or(Instrument{});
  if (!takeFigure(error_, with.error)) return;
  with.name = instrument_->text().trimmed().toStdString();
  now.with = with == Instrument{} ? std::nullopt : std::optional(with);
  if (now == before) return;
  if (now.go && now.noGo && now.go->size.value >= now.noGo->size.value) {
    said_->setText(tr("Not taken: the pin that goes in is as large as the one that does not"));
    return;
  }
  desk_.endMerge();
  desk_.applyPart(withMade(desk_.part(), now), tr("Measure %1").arg(words(place_)));
}

void MadeSlip::choose() {
  const int row = list_->currentRow();
  const auto step = desk_.step();
  if (row < 0 || row >= static_cast<int>(ways_.size()) || !step) return;
  const QString reason = reason_->text().trimmed();
  if (reason.isEmpty()) {
    said_->setText(tr("Say why this one: whoever reads the sheet later will ask."));
    reason_->setFocus();
    return;
  }
  const Way& way = ways_[static_cast<std::size_t>(row)];
  Mended mended;
  mended.place = place_;
  mended.piece = piece();
  mended.way = way.way;
  mended.figures = figuresText(way, *step);
  mended.chosen = figuresOf(way);
  mended.reason = reason.toStdString();
  mended.when = sheetDate();
  desk_.endMerge();
  desk_.applyPart(withMended(desk_.part(), mended),
                  tr("Put %1 right: %2").arg(words(place_), words(std::string(nameOf(way.way)))));
}

}  // namespace inchwright::app

#include "moc_made_slip.cpp"
