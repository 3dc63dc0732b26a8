#include "app/sheet/lathe_slip.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/session/typed_figure.h"
#include "core/part/edit.h"
#include "core/say/lathe_words.h"

namespace inchwright::app {
namespace {

QString latheWords(const std::string& text) {
  return QString::fromStdString(text);
}

QString zeroWords(const ZeroAlong& zero) {
  if (zero.middle.size() != 2) return latheWords(zero.at);
  const QString middle =
      latheWords(zero.middle[0]) + QStringLiteral("–") + latheWords(zero.middle[1]);
  return zero.ofStock ? LatheSlip::tr("middle of %1 of the stock").arg(middle)
                      : LatheSlip::tr("middle of %1").arg(middle);
}

/// What `held_` offers, in its order.
enum class HeldBy { left, right, mill };

}  // namespace

LatheSlip::LatheSlip(Desk& desk, QWidget* parent) : FieldSlip(desk, parent) {
  setObjectName(QStringLiteral("latheSetup"));
  setWindowTitle(tr("In the lathe"));
  setAccessibleName(windowTitle());
  auto* columns = new QHBoxLayout;
  columns->setSpacing(36);
  for (const auto& [title, fields] : {std::pair(tr("How it is held"), holdingFields()),
                                      std::pair(tr("The lathe"), latheFields())}) {
    auto* column = new QVBoxLayout;
    auto* heading = new QLabel(title);
    heading->setFont(deskFont(1.15));
    column->addWidget(heading);
    column->addWidget(fields);
    column->addStretch(1);
    columns->addLayout(column);
  }
  layOut(columns);
  resize(fontMetrics().averageCharWidth() * 100, sizeHint().height());
  fill();
}

LatheSlip::~LatheSlip() {
  // A field that loses the focus takes what was typed, and needs the others to be there still.
  hide();
}

QWidget* LatheSlip::holdingFields() {
  auto* holder = new QWidget;
  auto* form = new QFormLayout(holder);
  const auto take = [this] { takeSetup(); };
  name_ = line(tr("Name of the setup"), take);
  held_ = choice(
      tr("How it is held"),
      {tr("by its left end"), tr("by its right end"), tr("not in the lathe: in the mill")}, take);
  standsOut_ = line(tr("How far it stands out of the chuck"), take);
  zero_ = choice(tr("Zero on"), {}, take);
  offset_ = line(tr("Zero moved by"), take);
  partingTool_ = line(tr("Width of the parting tool"), take);
  corner_ = choice(tr("Corner of the parting tool that is touched off"),
                   {tr("left corner"), tr("right corner")}, take);
  form->addRow(tr("&Name"), name_);
  form->addRow(tr("&Held"), held_);
  form->addRow(tr("Stands &out"), standsOut_);
  form->addRow(tr("&Zero on"), zero_);
  form->addRow(tr("then &further by"), offset_);
  form->addRow(tr("&Parted off with a tool"), partingTool_);
  form->addRow(tr("touched off with its"), corner_);
  return holder;
}

QWidget* LatheSlip::latheFields() {
  auto* holder = new QWidget;
  auto* form = new QFormLayout(holder);
  const auto take = [this] { takeLathe(); };
  unit_ = choice(tr("Unit of the lathe's readout"), {tr("inches"), tr("millimetres")}, take);
  step_ = line(tr("Step of the lathe's readout"), take);
  carriageCounts_ =
      choice(tr("Carriage counts up"), {tr("towards the chuck"), tr("away from the chuck")}, take);
  crossCounts_ = choice(tr("Cross slide counts"), {tr("the diameter"), tr("the radius")}, take);
  carriageLetter_ = line(tr("Letter of the carriage"), take);
  crossLetter_ = line(tr("Letter of the cross slide"), take);
  roughLeaves_ = line(tr("What roughing leaves on the diameter"), take);
  form->addRow(tr("Un&it"), unit_);
  form->addRow(tr("St&ep"), step_);
  form->addRow(tr("&Carriage counts up"), carriageCounts_);
  form->addRow(tr("C&ross slide counts"), crossCounts_);
  form->addRow(tr("Its &letter for lengths"), carriageLetter_);
  form->addRow(tr("and for dia&meters"), crossLetter_);
  form->addRow(tr("Rou&ghing leaves"), roughLeaves_);
  return holder;
}

void LatheSlip::showNow() {
  if (!desk_.hasPart()) return;
  filling_ = true;
  const auto textOf = [](const std::optional<Lettered>& figure) {
    return figure ? latheWords(figure->text) : QString();
  };
  const Setup& setup = desk_.setup();
  const Chucked chucked = setup.chucked.value_or(Chucked{});
  name_->setText(latheWords(setup.name));
  const HeldBy by = !setup.chucked               ? HeldBy::mill
                    : chucked.held == Side::left ? HeldBy::left
                                                 : HeldBy::right;
  held_->setCurrentIndex(static_cast<int>(by));
  standsOut_->setText(textOf(chucked.standsOut));
  const ZeroAlong* zero = setup.zeroAlong(Axis::x);
  zero_->clear();
  zero_->addItem(tr("the free end"));
  for (const Id& id : desk_.solution().positions.along(Axis::x).places) {
    const Feature* feature = desk_.part().feature(id);
    if (feature != nullptr && feature->is<kind::Edge>()) zero_->addItem(latheWords(id));
  }
  // One that is set otherwise, on a hole or in the middle of two, is kept until another is chosen.
  const QString now = zero == nullptr ? zero_->itemText(0) : zeroWords(*zero);
  if (zero_->findText(now) < 0) zero_->addItem(now);
  zero_->setCurrentIndex(zero_->findText(now));
  offset_->setText(zero == nullptr ? QString() : textOf(zero->offset));
  offset_->setEnabled(zero != nullptr);
  partingTool_->setText(chucked.partOff ? latheWords(chucked.partOff->width.text) : QString());
  corner_->setCurrentIndex(chucked.partOff ? static_cast<int>(chucked.partOff->corner) : 0);
  corner_->setEnabled(chucked.partOff.has_value());
  for (QWidget* field : {static_cast<QWidget*>(standsOut_), static_cast<QWidget*>(partingTool_)}) {
    field->setEnabled(setup.chucked.has_value());
  }
  const Lathe lathe = desk_.job().lathe.value_or(Lathe{});
  unit_->setCurrentIndex(lathe.unit == Unit::inch ? 0 : 1);
  step_->setText(latheWords(lathe.step));
  carriageCounts_->setCurrentIndex(static_cast<int>(lathe.carriageCounts));
  crossCounts_->setCurrentIndex(static_cast<int>(lathe.crossCounts));
  carriageLetter_->setText(latheWords(lathe.carriageLetter));
  crossLetter_->setText(latheWords(lathe.crossLetter));
  roughLeaves_->setText(textOf(lathe.roughLeaves));
  const auto& error = desk_.tableError();
  QStringList lines;
  if (error) {
    lines << coreWords(error->text);
  } else if (const LatheWork* work = desk_.lathe()) {
    lines << coreWords(heldWords(*work, lathe));
    for (const std::string& one : latheWarnings(*work)) lines << tr("Mind: %1").arg(coreWords(one));
  }
  said_->setText(lines.join(QLatin1Char('\n')));
  filling_ = false;
}

void LatheSlip::takeSetup() {
  Setup setup = desk_.setup();
  const Unit unit = desk_.job().unit;
  const QString name = name_->text().trimmed();
  if (!name.isEmpty()) setup.name = name.toStdString();
  const auto by = static_cast<HeldBy>(held_->currentIndex());
  if (by == HeldBy::mill) {
    setup.chucked.reset();
  } else {
    Chucked chucked = setup.chucked.value_or(Chucked{});
    chucked.held = by == HeldBy::left ? Side::left : Side::right;
    chucked.standsOut = figureOf(standsOut_, chucked.standsOut, unit);
    const auto width = figureOf(
        partingTool_, chucked.partOff ? std::optional(chucked.partOff->width) : std::nullopt, unit);
    if (width) {
      if (!chucked.partOff) chucked.partOff.emplace();
      chucked.partOff->width = *width;
      chucked.partOff->corner = static_cast<ToolCorner>(corner_->currentIndex());
    } else {
      chucked.partOff.reset();
    }
    setup.chucked = chucked;
  }
  const ZeroAlong* before = setup.zeroAlong(Axis::x);
  std::optional<ZeroAlong> zero;
  if (zero_->currentIndex() > 0) {
    zero = before != nullptr ? *before : ZeroAlong{};
    zero->axis = Axis::x;
    if (before == nullptr || zero_->currentText() != zeroWords(*before)) {
      zero->middle.clear();
      zero->ofStock = false;
      zero->at = zero_->currentText().toStdString();
    }
    zero->offset = figureOf(offset_, zero->offset, unit);
  }
  // Zeros along the other axes wait for the setup to be one of the mill again.
  std::erase_if(setup.zero, [](const ZeroAlong& one) { return one.axis == Axis::x; });
  if (zero) setup.zero.insert(setup.zero.begin(), *std::move(zero));
  apply(setup);
}

void LatheSlip::takeLathe() {
  Job job = desk_.job();
  Lathe lathe = job.lathe.value_or(Lathe{});
  const Unit unit = unit_->currentIndex() == 0 ? Unit::inch : Unit::millimetre;
  std::string step = step_->text().trimmed().toStdString();
  // Another unit brings its customary step along.
  if (unit != lathe.unit && step == lathe.step) {
    step = unit == Unit::inch ? Lathe().step : std::string(kLatheMillimetreStep);
  }
  const auto read = readStep(step, unit);
  if (!read.ok()) {
    refuse(step_, coreWords(read.error().text));
    return;
  }
  // What is left does not change with the readout.
  if (lathe.roughLeaves && unit != lathe.unit) {
    const auto kept = readTyped(lathe.roughLeaves->text, lathe.unit, unit);
    if (kept.ok()) lathe.roughLeaves = *kept;
    roughLeaves_->setText(latheWords(lathe.roughLeaves->text));
  }
  lathe.unit = unit;
  lathe.step = step;
  lathe.carriageCounts = static_cast<CarriageCounts>(carriageCounts_->currentIndex());
  lathe.crossCounts = static_cast<CrossCounts>(crossCounts_->currentIndex());
  for (const auto& [field, letter] : {std::pair(carriageLetter_, &lathe.carriageLetter),
                                      std::pair(crossLetter_, &lathe.crossLetter)}) {
    const std::string typed = field->text().trimmed().toStdString();
    if (!typed.empty()) *letter = typed;
  }
  lathe.roughLeaves = figureOf(roughLeaves_, lathe.roughLeaves, unit);
  if (lathe == job.lathe.value_or(Lathe{})) return;
  job.lathe = lathe;
  desk_.endMerge();
  desk_.apply(std::move(job), tr("Change the lathe"));
}

}  // namespace inchwright::app

#include "moc_lathe_slip.cpp"
