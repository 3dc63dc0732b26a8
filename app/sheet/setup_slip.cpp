#include "app/sheet/setup_slip.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>
#include <algorithm>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/session/activity.h"
#include "app/session/held_text.h"
#include "app/session/side_words.h"
#include "app/session/typed_figure.h"
#include "core/measure/writing.h"
#include "core/part/edit.h"
#include "core/say/setup_words.h"

namespace inchwright::app {
namespace {

QString ownWords(const std::string& text) {
  return QString::fromStdString(text);
}

QLabel* heading(const QString& text) {
  auto* label = new QLabel(text);
  label->setFont(deskFont(1.15));
  return label;
}

QStringList sideWords() {
  QStringList words;
  for (int i = 0; i < 6; ++i) words << wordFor(static_cast<Side>(i));
  return words;
}

}  // namespace

SetupSlip::SetupSlip(Desk& desk, QWidget* parent) : FieldSlip(desk, parent) {
  setObjectName(QStringLiteral("setup"));
  setWindowTitle(tr("Zero, stock and machine"));
  setAccessibleName(windowTitle());
  auto* columns = new QHBoxLayout;
  columns->setSpacing(36);
  auto* left = new QVBoxLayout;
  left->addWidget(heading(tr("How it lies")));
  left->addWidget(layingFields());
  left->addWidget(heading(tr("Zero")));
  left->addWidget(zeroFields());
  left->addStretch(1);
  auto* right = new QVBoxLayout;
  right->addWidget(heading(tr("Still to come off")));
  right->addWidget(stockFields());
  right->addWidget(heading(tr("The machine")));
  right->addWidget(machineFields());
  right->addWidget(heading(tr("The paper")));
  right->addWidget(paperFields());
  right->addStretch(1);
  columns->addLayout(left);
  columns->addLayout(right);
  layOut(columns);
  fill();
}

SetupSlip::~SetupSlip() {
  // A field that loses the focus takes what was typed, and needs the others to be there still.
  hide();
}

QComboBox* SetupSlip::sideChoice(const QString& name) {
  return choice(name, QStringList{tr("–")} + sideWords(), [this] { takeSetup(); });
}

QWidget* SetupSlip::layingFields() {
  auto* holder = new QWidget;
  auto* form = new QFormLayout(holder);
  const auto take = [this] { takeSetup(); };
  name_ = line(tr("Name of the setup"), take);
  face_ = choice(tr("Face that is up"), sideWords(), take);
  turn_ = choice(tr("Turned, anticlockwise"), {tr("0°"), tr("90°"), tr("180°"), tr("270°")}, take);
  jaw_ = sideChoice(tr("Side against the fixed jaw"));
  stop_ = sideChoice(tr("Side against the stop"));
  parallels_ = line(tr("Parallels"), take);
  parallels_->setPlaceholderText(tr("fixed 1/8 x 1 gap 1/4; moving 1/8 x 1, or bed"));
  pieces_ = line(tr("Pieces for the stop, as measured"), take);
  pieces_->setPlaceholderText(tr("1 x 4.031 y 1.520; 2 x 4.010"));
  form->addRow(tr("&Name"), name_);
  form->addRow(tr("Face &up"), face_);
  form->addRow(tr("&Turned"), turn_);
  form->addRow(tr("Fixed &jaw"), jaw_);
  form->addRow(tr("St&op"), stop_);
  form->addRow(tr("Paralle&ls"), parallels_);
  form->addRow(tr("Pie&ces"), pieces_);
  return holder;
}

QWidget* SetupSlip::zeroFields() {
  auto* holder = new QWidget;
  auto* grid = new QGridLayout(holder);
  grid->setContentsMargins(0, 0, 0, 0);
  const QString heads[] = {tr("on, or middle of"), tr("and"), tr("of"), tr("then further by")};
  for (int i = 0; i < 4; ++i) grid->addWidget(new QLabel(heads[i]), 0, i + 1);
  const auto take = [this] { takeSetup(); };
  for (const Axis axis : kAxes) {
    ZeroFields fields;
    fields.axis = axis;
    const QString name = wordFor(axis);
    fields.first = choice(tr("%1 zero on").arg(name), {}, take);
    fields.second = choice(tr("%1 zero in the middle to").arg(name), {}, take);
    fields.of = choice(tr("%1 zero of the finished part or the stock").arg(name),
                       {tr("finished"), tr("stock")}, take);
    fields.offset = line(tr("%1 zero moved by").arg(name), take);
    const int row = grid->rowCount();
    auto* label = new QLabel(QStringLiteral("&") + name);
    label->setBuddy(fields.first);
    grid->addWidget(label, row, 0);
    grid->addWidget(fields.first, row, 1);
    grid->addWidget(fields.second, row, 2);
    grid->addWidget(fields.of, row, 3);
    grid->addWidget(fields.offset, row, 4);
    zeros_.push_back(fields);
  }
  return holder;
}

QWidget* SetupSlip::stockFields() {
  auto* holder = new QWidget;
  auto* grid = new QGridLayout(holder);
  grid->setContentsMargins(0, 0, 0, 0);
  const QStringList words = sideWords();
  for (int i = 0; i < 6; ++i) {
    QLineEdit* field = line(tr("Stock on the %1").arg(words[i]), [this] { takeSetup(); });
    stock_.push_back(field);
    grid->addWidget(new QLabel(words[i]), i / 2, (i % 2) * 2);
    grid->addWidget(field, i / 2, (i % 2) * 2 + 1);
  }
  return holder;
}

QWidget* SetupSlip::machineFields() {
  auto* holder = new QWidget;
  auto* form = new QFormLayout(holder);
  const auto take = [this] { takeMachine(); };
  unit_ = choice(tr("Unit of the readout"), {tr("inches"), tr("millimetres")}, take);
  step_ = line(tr("Step of the readout"), take);
  xCounts_ = choice(tr("X counts up"), {tr("to the right"), tr("to the left")}, take);
  yCounts_ = choice(tr("Y counts up"), {tr("away from me"), tr("towards me")}, take);
  finder_ = line(tr("Diameter of the edge finder"), take);
  auto* keep = new QPushButton(tr("&Keep for new jobs"));
  keep->setAutoDefault(false);
  keep->setAccessibleName(tr("Keep this machine for new jobs"));
  connect(keep, &QPushButton::clicked, this, [this] {
    emit machineKept(desk_.job().machine);
    said_->setText(tr("New jobs begin with this machine."));
  });
  form->addRow(tr("Un&it"), unit_);
  form->addRow(tr("St&ep"), step_);
  form->addRow(tr("X counts up"), xCounts_);
  form->addRow(tr("Y counts up"), yCounts_);
  form->addRow(tr("Edge &finder"), finder_);
  form->addRow(keep);
  return holder;
}

QWidget* SetupSlip::paperFields() {
  auto* holder = new QWidget;
  auto* form = new QFormLayout(holder);
  const auto take = [this] { takePaper(); };
  paper_ = choice(tr("Paper"), {tr("A4"), tr("Letter")}, take);
  distance_ = new QSpinBox;
  distance_->setAccessibleName(tr("Reading distance in millimetres"));
  distance_->setRange(300, 3000);
  distance_->setSingleStep(100);
  distance_->setSuffix(tr(" mm"));
  connect(distance_, &QSpinBox::valueChanged, this, [this] {
    if (!filling_) takePaper();
  });
  rounding_ = new QCheckBox(tr("show what rounding to the step cost"));
  connect(rounding_, &QCheckBox::toggled, this, [this] {
    if (!filling_) takePaper();
  });
  form->addRow(tr("&Paper"), paper_);
  form->addRow(tr("&Read from"), distance_);
  form->addRow(rounding_);
  return holder;
}

void SetupSlip::showZero(const ZeroFields& fields) {
  QStringList places;
  for (const Id& id : desk_.solution().positions.along(fields.axis).places) places << ownWords(id);
  const ZeroAlong* zero = desk_.setup().zeroAlong(fields.axis);
  const bool middle = zero != nullptr && zero->middle.size() == 2;
  const auto put = [&](QComboBox* box, const QString& none, const QString& now) {
    box->clear();
    box->addItem(none);
    box->addItems(places);
    box->setCurrentIndex(std::max(0, box->findText(now)));
  };
  put(fields.first, tr("the usual"),
      zero == nullptr ? QString() : ownWords(middle ? zero->middle[0] : zero->at));
  put(fields.second, tr("–"), middle ? ownWords(zero->middle[1]) : QString());
  fields.of->setCurrentIndex(middle && zero->ofStock ? 1 : 0);
  fields.of->setEnabled(middle);
  fields.second->setEnabled(zero != nullptr);
  fields.offset->setEnabled(zero != nullptr);
  fields.offset->setText(zero != nullptr && zero->offset ? ownWords(zero->offset->text)
                                                         : QString());
}

void SetupSlip::showNow() {
  if (!desk_.hasPart()) return;
  filling_ = true;
  const Setup& setup = desk_.setup();
  name_->setText(ownWords(setup.name));
  face_->setCurrentIndex(static_cast<int>(setup.face));
  turn_->setCurrentIndex(setup.turn / 90);
  jaw_->setCurrentIndex(setup.jaw ? static_cast<int>(*setup.jaw) + 1 : 0);
  stop_->setCurrentIndex(setup.stop ? static_cast<int>(*setup.stop) + 1 : 0);
  parallels_->setText(parallelsText(setup.held.parallels));
  pieces_->setText(piecesText(setup.held.pieces));
  for (const ZeroFields& fields : zeros_) showZero(fields);
  for (std::size_t i = 0; i < stock_.size(); ++i) {
    stock_[i]->setText(setup.stock[i] ? ownWords(setup.stock[i]->text) : QString());
  }
  const Machine& machine = desk_.job().machine;
  unit_->setCurrentIndex(machine.unit == Unit::inch ? 0 : 1);
  step_->setText(ownWords(machine.step));
  xCounts_->setCurrentIndex(static_cast<int>(machine.xCounts));
  yCounts_->setCurrentIndex(static_cast<int>(machine.yCounts));
  finder_->setText(machine.finder ? ownWords(machine.finder->text) : QString());
  const SheetOptions& sheet = desk_.sheetOptions();
  paper_->setCurrentIndex(sheet.paper == Paper::a4 ? 0 : 1);
  distance_->setValue(qRound(sheet.readingDistance));
  rounding_->setChecked(sheet.showRounding);
  const auto& error = desk_.tableError();
  said_->setText(error           ? coreWords(error->text)
                 : desk_.table() ? QString::fromStdString(zeroLine(*desk_.table(), spokenEnglish()))
                                 : QString());
  filling_ = false;
}

void SetupSlip::takeSetup() {
  Setup setup = desk_.setup();
  const QString name = name_->text().trimmed();
  if (!name.isEmpty()) setup.name = name.toStdString();
  setup.face = static_cast<Face>(face_->currentIndex());
  setup.turn = turn_->currentIndex() * 90;
  const auto side = [](const QComboBox* box) {
    return box->currentIndex() > 0 ? std::optional(static_cast<Side>(box->currentIndex() - 1))
                                   : std::nullopt;
  };
  setup.jaw = side(jaw_);
  setup.stop = side(stop_);
  auto parallels = readParallels(parallels_->text(), setup.held.parallels, desk_.job().unit);
  if (parallels.ok()) {
    setup.held.parallels = *std::move(parallels);
  } else {
    refuse(parallels_, coreWords(parallels.error().text));
  }
  auto pieces = readPieces(pieces_->text(), setup.held.pieces, desk_.job().unit);
  if (pieces.ok()) {
    setup.held.pieces = std::move(pieces).value();
  } else {
    refuse(pieces_, coreWords(pieces.error().text));
  }
  std::vector<ZeroAlong> zeros;
  for (const ZeroFields& fields : zeros_) {
    if (fields.first->currentIndex() <= 0) continue;
    const ZeroAlong* before = setup.zeroAlong(fields.axis);
    ZeroAlong zero = before != nullptr ? *before : ZeroAlong{};
    zero.axis = fields.axis;
    const std::string first = fields.first->currentText().toStdString();
    const bool middle = fields.second->currentIndex() > 0;
    zero.at = middle ? std::string() : first;
    zero.middle.clear();
    if (middle) zero.middle = {first, fields.second->currentText().toStdString()};
    zero.ofStock = middle && fields.of->currentIndex() == 1;
    zero.offset = figureOf(fields.offset, zero.offset, desk_.job().unit);
    zeros.push_back(std::move(zero));
  }
  setup.zero = std::move(zeros);
  for (std::size_t i = 0; i < stock_.size(); ++i) {
    setup.stock[i] = figureOf(stock_[i], setup.stock[i], desk_.job().unit);
  }
  apply(setup);
}

void SetupSlip::takeMachine() {
  Job job = desk_.job();
  Machine& machine = job.machine;
  const Unit unit = unit_->currentIndex() == 0 ? Unit::inch : Unit::millimetre;
  std::string step = step_->text().trimmed().toStdString();
  // Another unit brings its customary step along.
  if (unit != machine.unit && step == machine.step) {
    step = unit == Unit::inch ? Machine().step : std::string(kMillimetreStep);
  }
  const auto read = readStep(step, unit);
  if (!read.ok()) {
    refuse(step_, coreWords(read.error().text));
    return;
  }
  // What the finder is does not change with the readout.
  if (machine.finder && unit != machine.unit) {
    const auto kept = readTyped(machine.finder->text, machine.unit, unit);
    if (kept.ok()) machine.finder = *kept;
    finder_->setText(ownWords(machine.finder->text));
  }
  machine.unit = unit;
  machine.step = step;
  machine.xCounts = static_cast<CountsX>(xCounts_->currentIndex());
  machine.yCounts = static_cast<CountsY>(yCounts_->currentIndex());
  machine.finder = figureOf(finder_, machine.finder, unit);
  desk_.endMerge();
  desk_.apply(std::move(job), tr("Change the machine"));
}

void SetupSlip::takePaper() {
  SheetOptions options = desk_.sheetOptions();
  options.paper = paper_->currentIndex() == 0 ? Paper::a4 : Paper::letter;
  options.readingDistance = distance_->value();
  options.showRounding = rounding_->isChecked();
  desk_.setSheetOptions(options);
  emit sheetChosen(options);
}

}  // namespace inchwright::app

#include "moc_setup_slip.cpp"
