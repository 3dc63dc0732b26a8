#include "app/window/together_slip.h"

#include <QComboBox>
#include <QGridLayout>
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
#include "app/session/activity.h"
#include "app/session/kit_edit.h"
#include "core/kit/kit_line.h"
#include "core/part/place_index.h"

namespace inchwright::app {
namespace {

QString kitText(const std::string& text) {
  return QString::fromStdString(text);
}

/// Fits to choose from, from a running one to a press; any other may be typed.
constexpr const char* kFits[] = {"RC2", "RC4", "RC6",   "LC2",   "LC5",   "LT2",
                                 "LN1", "LN2", "H7/f7", "H7/g6", "H7/h6", "H7/p6"};

/// `A · hole 1/4`: what a place is and how large.
QString placeWords(const Feature& feature, const Id& place) {
  QString text = kitText(place) + QStringLiteral(" · ") + app::wordFor(feature.kind());
  if (const auto& size = diameterOf(feature)) text += QLatin1Char(' ') + kitText(size->text);
  return text;
}

/// The line without the word that says it is a change.
std::string drafted(const QLineEdit& line) {
  const QString text = line.text().trimmed();
  const QString change = QStringLiteral("change ");
  return (text.startsWith(change) ? text.mid(change.size()) : text).toStdString();
}

template <class Thing>
struct Spelt;
template <>
struct Spelt<Mate> {
  static constexpr const char* kFirst = "mate";
  static constexpr auto read = readMateLine;
  static constexpr auto write = mateLine;
};
template <>
struct Spelt<Gap> {
  static constexpr const char* kFirst = "gap";
  static constexpr auto read = readGapLine;
  static constexpr auto write = gapLine;
};

/// What a mate is called until somebody calls it otherwise.
void nameAfterSides(Mate& mate) {
  const auto* hole = std::get_if<PartPlace>(&mate.hole);
  const auto* shaft = std::get_if<PartPlace>(&mate.shaft);
  if (!mate.name.empty() || hole == nullptr || shaft == nullptr) return;
  mate.name =
      TogetherSlip::tr("%1 in %2").arg(kitText(shaft->part), kitText(hole->part)).toStdString();
}

}  // namespace

TogetherSlip::TogetherSlip(Desk& desk, QWidget* parent)
    : QDialog(parent),
      desk_(desk),
      list_(new QListWidget(this)),
      part_(new QComboBox(this)),
      place_(new QComboBox(this)),
      to_(new QComboBox(this)),
      axis_(new QComboBox(this)),
      fit_(new QComboBox(this)),
      limits_{new QLineEdit(this), new QLineEdit(this)},
      line_(new QLineEdit(this)),
      said_(new QLabel(this)) {
  setObjectName(QStringLiteral("together"));
  setWindowTitle(tr("What goes together"));
  setAccessibleName(windowTitle());
  list_->setAccessibleName(windowTitle());
  list_->setWordWrap(true);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  line_->setObjectName(QStringLiteral("line"));
  line_->setAccessibleName(tr("A mate or a gap, in words"));
  line_->setPlaceholderText(
      tr("mate arbor: hole B of Plate, shaft P of Arbor, fit RC4     or click it together above"));
  said_->setObjectName(QStringLiteral("said"));
  said_->setWordWrap(true);
  said_->setMinimumHeight(fontMetrics().lineSpacing() * 2);
  auto* chosen = new QHBoxLayout;
  chosen->addStretch(1);
  chosen->addWidget(button(tr("Put it &right"), [this] { putRight(); }));
  chosen->addWidget(button(tr("&Take it away"), [this] { takeAway(); }));
  auto* last = new QHBoxLayout;
  last->addWidget(line_, 1);
  QPushButton* write = button(tr("&Write it down"), [this] { writeDown(); });
  write->setProperty("firm", true);
  last->addWidget(write);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(22, 16, 22, 16);
  column->addWidget(list_, 1);
  column->addLayout(chosen);
  column->addLayout(choices());
  column->addLayout(last);
  column->addWidget(said_);
  connect(line_, &QLineEdit::textChanged, this, &TogetherSlip::showEcho);
  connect(line_, &QLineEdit::returnPressed, this, &TogetherSlip::writeDown);
  connect(list_, &QListWidget::itemActivated, this, &TogetherSlip::putRight);
  connect(&desk, &Desk::edited, this, &TogetherSlip::showNow);
  resize(fontMetrics().averageCharWidth() * 110, fontMetrics().lineSpacing() * 28);
  showNow();
  chooseFrom(desk.selection());
  line_->setFocus();
}

QPushButton* TogetherSlip::button(const QString& words, const std::function<void()>& act) {
  auto* made = new QPushButton(words, this);
  made->setAutoDefault(false);
  connect(made, &QPushButton::clicked, this, act);
  return made;
}

QLayout* TogetherSlip::choices() {
  auto* grid = new QGridLayout;
  const auto named = [](QComboBox* box, const QString& name) {
    box->setAccessibleName(name);
    return box;
  };
  for (const Part& part : desk_.job().parts) part_->addItem(kitText(part.name));
  auto* label = new QLabel(tr("&Part"), this);
  label->setBuddy(part_);
  grid->addWidget(label, 0, 0);
  grid->addWidget(named(part_, tr("Part")), 0, 1);
  grid->addWidget(named(place_, tr("Place")), 0, 2);
  addMateChoices(*grid);
  named(to_, tr("To the place"));
  named(axis_, tr("Along"));
  addGapChoices(*grid);
  grid->setColumnStretch(1, 2);
  grid->setColumnStretch(2, 2);
  connect(part_, &QComboBox::currentIndexChanged, this, &TogetherSlip::fillPlaces);
  part_->setCurrentIndex(desk_.partIndex());
  fillPlaces();
  return grid;
}

void TogetherSlip::addMateChoices(QGridLayout& grid) {
  grid.addWidget(button(tr("It is the &hole"), [this] { takeSide(true); }), 0, 3);
  grid.addWidget(button(tr("It is the &shaft"), [this] { takeSide(false); }), 0, 4);
  fit_->setEditable(true);
  fit_->setAccessibleName(tr("Fit by its name"));
  for (const char* name : kFits) fit_->addItem(QString::fromLatin1(name));
  fit_->setCurrentText({});
  auto* row = new QHBoxLayout;
  row->addWidget(fit_, 1);
  const QString names[] = {tr("or from"), tr("to")};
  for (std::size_t i = 0; i < limits_.size(); ++i) {
    row->addWidget(new QLabel(names[i], this));
    limits_[i]->setAccessibleName(i == 0 ? tr("Least") : tr("Greatest"));
    row->addWidget(limits_[i], 1);
  }
  auto* label = new QLabel(tr("&Fit"), this);
  label->setBuddy(fit_);
  grid.addWidget(label, 1, 0);
  grid.addLayout(row, 1, 1, 1, 2);
  grid.addWidget(button(tr("So &much is wanted"), [this] { takeClearance(); }), 1, 3, 1, 2);
}

void TogetherSlip::addGapChoices(QGridLayout& grid) {
  axis_->addItems(
      {tr("along its axis"), tr("along X"), tr("along Y"), tr("along Z"), tr("straight across")});
  auto* label = new QLabel(tr("T&o"), this);
  label->setBuddy(to_);
  grid.addWidget(label, 2, 0);
  grid.addWidget(to_, 2, 1);
  grid.addWidget(axis_, 2, 2);
  grid.addWidget(button(tr("&Adds to a gap"), [this] { takeMember(1); }), 2, 3);
  grid.addWidget(button(tr("Takes &from it"), [this] { takeMember(-1); }), 2, 4);
}

void TogetherSlip::fillPlaces() {
  place_->clear();
  to_->clear();
  const Part* part = desk_.job().part(part_->currentText().toStdString());
  if (part == nullptr) return;
  for (const Feature& feature : part->features) {
    std::vector<Id> places{feature.id};
    for (int i = 1; i <= innerPlaceCount(feature); ++i) {
      places.push_back(feature.id + std::to_string(i));
    }
    for (const Id& place : places) {
      for (QComboBox* box : {place_, to_}) box->addItem(placeWords(feature, place), kitText(place));
    }
  }
}

/// What is chosen on the print is chosen here as well.
void TogetherSlip::chooseFrom(const Selection& selection) {
  QComboBox* boxes[] = {place_, to_};
  for (std::size_t i = 0; i < selection.places.size() && i < 2; ++i) {
    boxes[i]->setCurrentIndex(boxes[i]->findData(kitText(selection.places[i])));
  }
}

void TogetherSlip::showNow() {
  const int row = list_->currentRow();
  list_->clear();
  const auto add = [this](const QString& now, const std::string& line) {
    auto* item = new QListWidgetItem(
        withWholeFigures(now + QStringLiteral("\n    ") + kitText(line)), list_);
    item->setData(Qt::UserRole, kitText(line));
  };
  for (const Mate& mate : desk_.job().mates) add(mateNow(desk_, mate.name), mateLine(mate));
  for (const Gap& gap : desk_.job().gaps) add(gapNow(desk_, gap.name), gapLine(gap));
  list_->setCurrentRow(std::min(row, list_->count() - 1));
}

void TogetherSlip::putRight() {
  const QListWidgetItem* item = list_->currentItem();
  if (item == nullptr) return say(tr("Choose a mate or a gap above"));
  const QString typed = line_->text().trimmed();
  if (!typed.isEmpty() && typed != loaded_) {
    return say(tr("Something stands in the line: write it down or clear it first"));
  }
  loaded_ = QStringLiteral("change ") + item->data(Qt::UserRole).toString();
  line_->setText(loaded_);
  line_->setFocus();
}

void TogetherSlip::takeAway() {
  const int row = list_->currentRow();
  if (row < 0) return say(tr("Choose a mate or a gap above"));
  const Job& job = desk_.job();
  const auto at = static_cast<std::size_t>(row);
  const bool isMate = at < job.mates.size();
  const std::string name = isMate ? job.mates[at].name : job.gaps[at - job.mates.size()].name;
  const auto edit =
      kitEditOf(desk_, (isMate ? QStringLiteral("delete mate ") : QStringLiteral("delete gap ")) +
                           kitText(name));
  if (edit && applyKit(desk_, *edit)) say(edit->value().title);
}

void TogetherSlip::writeDown() {
  const auto edit = kitEditOf(desk_, line_->text().trimmed());
  if (!edit) return say(tr("Begin with mate or gap and a name, or click it together above"));
  if (!applyKit(desk_, *edit)) return say(coreWords(edit->error().text));
  const QString said = edit->value().said;
  line_->clear();
  for (const auto& field : limits_) field->clear();
  fit_->setCurrentText({});
  say(tr("Written down. %1").arg(said));
}

void TogetherSlip::showEcho() {
  const auto edit = kitEditOf(desk_, line_->text().trimmed());
  if (!edit) return say({});
  const Echo echo = echoOf(*edit);
  say(echo.refused ? tr("Not yet: %1").arg(echo.text) : echo.text);
}

void TogetherSlip::say(const QString& text) {
  said_->setText(withWholeFigures(text));
}

template <class Thing>
void TogetherSlip::change(const std::function<void(Thing&)>& edit) {
  const std::string text = drafted(*line_);
  Thing thing;
  if (!text.empty()) {
    if (!text.starts_with(Spelt<Thing>::kFirst)) {
      return say(tr("The line says something else: write it down or clear it first"));
    }
    auto read = Spelt<Thing>::read(desk_.job(), text);
    if (!read.ok()) return say(tr("Not yet: %1").arg(coreWords(read.error().text)));
    thing = std::move(read).value();
  }
  edit(thing);
  const QString before =
      line_->text().startsWith(QStringLiteral("change ")) ? QStringLiteral("change ") : QString();
  line_->setText(before + kitText(Spelt<Thing>::write(thing)));
}

PartPlace TogetherSlip::here() const {
  return {part_->currentText().toStdString(), place_->currentData().toString().toStdString(), {}};
}

void TogetherSlip::takeSide(bool hole) {
  const PartPlace at = here();
  if (at.place.empty()) return say(tr("Nothing is traced of %1 yet").arg(kitText(at.part)));
  change<Mate>([&](Mate& mate) {
    (hole ? mate.hole : mate.shaft) = at;
    nameAfterSides(mate);
  });
}

void TogetherSlip::takeClearance() {
  std::array<std::optional<Lettered>, 2> figures;
  for (std::size_t i = 0; i < limits_.size(); ++i) {
    const QString text = limits_[i]->text().trimmed();
    if (text.isEmpty()) continue;
    auto figure = readLength(text.toStdString(), {desk_.job().unit});
    if (!figure.ok()) return say(tr("Not yet: %1").arg(coreWords(figure.error().text)));
    figures[i] = std::move(figure).value();
  }
  const std::string fit = fit_->currentText().trimmed().toStdString();
  if (fit.empty() && !figures[0] && !figures[1])
    return say(tr("Choose a fit, or type from and to"));
  if (!fit.empty() && (figures[0] || figures[1])) {
    return say(tr("A fit by its name, or from and to: not both"));
  }
  const auto put = [&](auto& thing) {
    thing.least = figures[0];
    thing.greatest = figures[1];
  };
  if (drafted(*line_).starts_with(Spelt<Gap>::kFirst)) {
    if (!fit.empty()) return say(tr("A gap is wanted from and to so much, not by a fit"));
    return change<Gap>(put);
  }
  change<Mate>([&](Mate& mate) {
    put(mate);
    mate.fit = fit;
  });
}

void TogetherSlip::takeMember(int sign) {
  const PartPlace from = here();
  GapMember member;
  member.sign = sign;
  member.part = from.part;
  member.from = from.place;
  member.to = to_->currentData().toString().toStdString();
  if (member.from.empty() || member.from == member.to) {
    return say(tr("Choose the two places between which it runs"));
  }
  const int along = axis_->currentIndex();
  member.isStraight = along == 4;
  if (along > 0 && along < 4) member.axis = static_cast<Axis>(along - 1);
  change<Gap>([&](Gap& gap) {
    if (gap.name.empty()) gap.name = tr("gap %1").arg(desk_.job().gaps.size() + 1).toStdString();
    gap.members.push_back(member);
  });
}

}  // namespace inchwright::app

#include "moc_together_slip.cpp"
