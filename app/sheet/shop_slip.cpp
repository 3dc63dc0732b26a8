#include "app/sheet/shop_slip.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>
#include <algorithm>

#include "app/base/look.h"
#include "app/base/spoken_english.h"

namespace inchwright::app {
namespace {

constexpr int kUsual = 0;
constexpr int kOnlyThese = 1;
constexpr int kNone = 2;

QString wordFor(ShopList list) {
  switch (list) {
    case ShopList::drills:
      return ShopSlip::tr("Drills");
    case ShopList::reamers:
      return ShopSlip::tr("Reamers");
    case ShopList::taps:
      return ShopSlip::tr("Taps");
    case ShopList::cutters:
      return ShopSlip::tr("End mills");
    case ShopList::countersinks:
      return ShopSlip::tr("Countersinks");
    case ShopList::counterbores:
      return ShopSlip::tr("Counterbores");
    case ShopList::parallels:
      return ShopSlip::tr("Parallels");
    case ShopList::pins:
      break;
  }
  return ShopSlip::tr("Gauge pins");
}

QString exampleFor(ShopList list) {
  switch (list) {
    case ShopList::drills:
      return QStringLiteral("#7, F, 15/64, 5.1 mm, metric 1 to 6 by 0.5");
    case ShopList::reamers:
      return QStringLiteral("1/4, 3/8 hand, 6 mm");
    case ShopList::taps:
      return QStringLiteral("1/4-20 UNC, 2 BA bottoming, M3");
    case ShopList::parallels:
      return QStringLiteral("1/8 x 1, 1/4 x 1 1/2");
    case ShopList::pins:
      return QStringLiteral("0.061 to 0.250, 0.251 to 0.500 ZZ plus");
    case ShopList::cutters:
    case ShopList::countersinks:
    case ShopList::counterbores:
      break;
  }
  return QStringLiteral("1/4, 3/8, 6 mm");
}

QStringList itemsIn(const QString& text) {
  QStringList items;
  for (const QString& one : text.split(QLatin1Char(','), Qt::SkipEmptyParts)) {
    if (!one.trimmed().isEmpty()) items << one.simplified();
  }
  return items;
}

bool holdsAll(const QStringList& items, const QStringList& set) {
  return std::all_of(set.begin(), set.end(),
                     [&](const QString& one) { return items.contains(one); });
}

QString textOf(const std::optional<Lettered>& figure) {
  return figure ? QString::fromStdString(figure->text) : QString();
}

}  // namespace

ShopSlip::ShopSlip(Desk& desk, QWidget* parent) : QDialog(parent), desk_(desk) {
  setObjectName(QStringLiteral("shop"));
  setWindowTitle(tr("The shop I own"));
  setAccessibleName(windowTitle());
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(14);
  for (int i = 0; i < kShopLists; ++i) addList(grid, static_cast<ShopList>(i));
  auto* singles = new QHBoxLayout;
  singles->addWidget(boringFields());
  singles->addSpacing(24);
  singles->addWidget(viceFields());
  singles->addStretch(1);
  told_ = new QLabel;
  told_->setObjectName(QStringLiteral("told"));
  told_->setWordWrap(true);
  carried_ = new QCheckBox(tr("&carry it in this job"));
  carried_->setAccessibleName(tr("Carry the shop in this job"));
  connect(carried_, &QCheckBox::toggled, this, [this](bool on) {
    if (!filling_) carry(on);
  });
  undo_ = new QPushButton(tr("&Undo"));
  undo_->setAutoDefault(false);
  connect(undo_, &QPushButton::clicked, this, &ShopSlip::undo);
  connect(new QShortcut(QKeySequence::Undo, this), &QShortcut::activated, this, &ShopSlip::undo);
  auto* done = new QPushButton(tr("&Done"));
  done->setProperty("firm", true);
  done->setAutoDefault(false);
  connect(done, &QPushButton::clicked, this, &QDialog::accept);
  auto* below = new QHBoxLayout;
  below->addWidget(carried_);
  below->addWidget(told_, 1);
  below->addWidget(undo_);
  below->addWidget(done);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(26, 20, 26, 18);
  column->addLayout(grid, 1);
  column->addLayout(singles);
  column->addLayout(below);
  connect(&desk, &Desk::edited, this, &ShopSlip::showNow);
  connect(&desk, &Desk::viewChanged, this, &ShopSlip::showNow);
  showNow();
}

ShopSlip::~ShopSlip() {
  // A field that loses the focus takes what was typed, and needs the others to be there still.
  hide();
}

void ShopSlip::addList(QGridLayout* grid, ShopList list) {
  ListFields& fields = of(list);
  const QString name = wordFor(list);
  const int row = grid->rowCount();
  fields.said = new QComboBox;
  fields.said->setAccessibleName(tr("%1: what is owned").arg(name));
  fields.said->addItems({tr("all usual ones"), tr("only these"), tr("none")});
  connect(fields.said, &QComboBox::activated, this,
          [this, list](int choice) { takeSaid(list, choice); });
  grid->addWidget(new QLabel(name), row, 0);
  grid->addWidget(fields.said, row, 1);
  auto* ticks = new QHBoxLayout;
  ticks->setSpacing(9);
  const std::vector<ToolSet> sets = setsOf(list);
  for (std::size_t i = 0; i < sets.size(); ++i) {
    auto* tick = new QCheckBox(sets[i].name);
    tick->setAccessibleName(tr("%1: %2").arg(name, sets[i].name));
    connect(tick, &QCheckBox::toggled, this, [this, list, i](bool on) {
      if (!filling_) takeSet(list, i, on);
    });
    fields.sets.push_back(tick);
    ticks->addWidget(tick);
  }
  ticks->addStretch(1);
  fields.items = line(name);
  fields.items->setPlaceholderText(exampleFor(list));
  connect(fields.items, &QLineEdit::editingFinished, this, [this, list] {
    if (!filling_) takeItems(list);
  });
  if (sets.empty()) {
    grid->addWidget(fields.items, row, 2);
    return;
  }
  grid->addLayout(ticks, row, 2);
  grid->addWidget(fields.items, row + 1, 2);
}

QLineEdit* ShopSlip::line(const QString& name) {
  auto* field = new QLineEdit;
  field->setAccessibleName(name);
  return field;
}

QWidget* ShopSlip::boringFields() {
  auto* holder = new QWidget;
  auto* row = new QHBoxLayout(holder);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(new QLabel(tr("Boring head: holes from")));
  const QString names[] = {tr("Least hole to bore"), tr("Greatest hole to bore"),
                           tr("One division of the boring head")};
  const QString between[] = {tr("to"), tr("division"), tr("its dial counts")};
  for (std::size_t i = 0; i < boringSizes_.size(); ++i) {
    boringSizes_[i] = line(names[i]);
    boringSizes_[i]->setMaximumWidth(fontMetrics().averageCharWidth() * 9);
    connect(boringSizes_[i], &QLineEdit::editingFinished, this, &ShopSlip::takeSingles);
    row->addWidget(boringSizes_[i]);
    row->addWidget(new QLabel(between[i]));
  }
  boring_ = new QComboBox;
  boring_->setAccessibleName(tr("What the boring head's dial counts"));
  boring_->addItems({tr("not said"), tr("the slide"), tr("the diameter")});
  connect(boring_, &QComboBox::activated, this, &ShopSlip::takeSingles);
  row->addWidget(boring_);
  return holder;
}

QWidget* ShopSlip::viceFields() {
  auto* holder = new QWidget;
  auto* row = new QHBoxLayout(holder);
  row->setContentsMargins(0, 0, 0, 0);
  const QString names[] = {tr("Width of the vice's jaws"), tr("Height of the vice's jaws"),
                           tr("How far the vice opens")};
  const QString before[] = {tr("Vice: jaws wide"), tr("high"), tr("opens")};
  for (std::size_t i = 0; i < viceSizes_.size(); ++i) {
    viceSizes_[i] = line(names[i]);
    viceSizes_[i]->setMaximumWidth(fontMetrics().averageCharWidth() * 9);
    connect(viceSizes_[i], &QLineEdit::editingFinished, this, &ShopSlip::takeSingles);
    row->addWidget(new QLabel(before[i]));
    row->addWidget(viceSizes_[i]);
  }
  return holder;
}

bool ShopSlip::carried() const {
  return !desk_.job().shop.saysNothing();
}

const Shop& ShopSlip::base() const {
  return carried() ? desk_.job().shop : desk_.ownShop();
}

Shop ShopSlip::shop() const {
  return shopFor(desk_.job().shop, desk_.ownShop());
}

void ShopSlip::showNow() {
  filling_ = true;
  for (int i = 0; i < kShopLists; ++i) showList(static_cast<ShopList>(i));
  const Shop now = shop();
  const OwnedBoring boring =
      now.boring && !now.boring->empty() ? now.boring->front() : OwnedBoring{};
  boringSizes_[0]->setText(textOf(boring.least));
  boringSizes_[1]->setText(textOf(boring.greatest));
  boringSizes_[2]->setText(textOf(boring.division));
  boring_->setCurrentIndex(boring.dial ? static_cast<int>(*boring.dial) + 1 : 0);
  const OwnedVice vice = now.vice.value_or(OwnedVice{});
  viceSizes_[0]->setText(textOf(vice.jawWidth));
  viceSizes_[1]->setText(textOf(vice.jawHeight));
  viceSizes_[2]->setText(textOf(vice.opens));
  carried_->setChecked(carried());
  undo_->setEnabled(!before_.empty());
  told_->setText(carried() ? tr("This job carries its own: other jobs are not changed.")
                           : tr("Kept for all my jobs."));
  filling_ = false;
}

void ShopSlip::showList(ShopList list) {
  const auto items = itemsOf(shop(), list);
  ListFields& fields = of(list);
  fields.said->setCurrentIndex(!items ? kUsual : items->isEmpty() ? kNone : kOnlyThese);
  fields.items->setText(items ? items->join(QStringLiteral(", ")) : QString());
  const std::vector<ToolSet> sets = setsOf(list);
  for (std::size_t i = 0; i < sets.size(); ++i) {
    fields.sets[i]->setChecked(items && holdsAll(*items, sets[i].items));
  }
}

void ShopSlip::takeSaid(ShopList list, int choice) {
  if (choice == kOnlyThese) {
    of(list).items->setFocus();
    told_->setText(tr("Tick or type what there is."));
    return;
  }
  apply(withItems(base(), list, choice == kNone ? std::optional(QStringList()) : std::nullopt));
}

void ShopSlip::takeSet(ShopList list, std::size_t set, bool on) {
  // What stands in the field may have been typed a moment ago.
  QStringList items = itemsIn(of(list).items->text());
  const QStringList of = setsOf(list)[set].items;
  for (const QString& one : of) {
    if (!on) items.removeAll(one);
    if (on && !items.contains(one)) items << one;
  }
  apply(withItems(base(), list, items));
}

void ShopSlip::takeItems(ShopList list) {
  const QStringList items = itemsIn(of(list).items->text());
  const auto before = itemsOf(shop(), list);
  // An empty field says nothing; that there is none is chosen beside it.
  if (items == before.value_or(QStringList())) return;
  apply(withItems(base(), list, items.isEmpty() ? std::nullopt : std::optional(items)));
}

void ShopSlip::takeSingles() {
  if (filling_) return;
  const Shop now = shop();
  const auto take = [&](const QLineEdit* field, std::optional<Lettered>& figure) -> Result<Done> {
    const QString text = field->text().trimmed();
    if (text == textOf(figure)) return Done{};
    if (text.isEmpty()) {
      figure.reset();
      return Done{};
    }
    const auto read = readLength(text.toStdString());
    if (!read.ok()) {
      return Error{read.error().code, read.error().text, field->accessibleName().toStdString()};
    }
    figure = *read;
    return Done{};
  };
  OwnedBoring boring = now.boring && !now.boring->empty() ? now.boring->front() : OwnedBoring{};
  OwnedVice vice = now.vice.value_or(OwnedVice{});
  const OwnedBoring boringBefore = boring;
  const OwnedVice viceBefore = vice;
  std::optional<Lettered>* const figures[] = {&boring.least,  &boring.greatest, &boring.division,
                                              &vice.jawWidth, &vice.jawHeight,  &vice.opens};
  for (std::size_t i = 0; i < 6; ++i) {
    const QLineEdit* field = i < 3 ? boringSizes_[i] : viceSizes_[i - 3];
    if (const auto taken = take(field, *figures[i]); !taken.ok()) return refuse(taken.error());
  }
  boring.dial = boring_->currentIndex() > 0
                    ? std::optional(static_cast<DialCounts>(boring_->currentIndex() - 1))
                    : std::nullopt;
  Shop next = base();
  if (boring != boringBefore) {
    std::vector<OwnedBoring> heads = now.boring.value_or(std::vector<OwnedBoring>());
    if (heads.empty()) heads.resize(1);
    heads.front() = boring;
    next.boring = boring == OwnedBoring{} ? std::nullopt : std::optional(heads);
  }
  if (vice != viceBefore) next.vice = vice == OwnedVice{} ? std::nullopt : std::optional(vice);
  const auto checked = checkShop(next);
  apply(checked.ok() ? Result<Shop>(next) : Result<Shop>(checked.error()));
}

void ShopSlip::apply(const Result<Shop>& next) {
  if (!next.ok()) return refuse(next.error());
  if (*next == base()) return;
  if (carried()) {
    before_.emplace_back();
    Job job = desk_.job();
    job.shop = *next;
    desk_.endMerge();
    desk_.apply(std::move(job), tr("Change the shop"));
    return;
  }
  before_.push_back(desk_.ownShop());
  desk_.setOwnShop(*next);
  emit shopKept(*next);
}

void ShopSlip::refuse(const Error& error) {
  const QString why = coreWords(error.text);
  const QString what = QString::fromStdString(error.place);
  // Ticks and choices are as they count; what was typed stays, to be put right.
  filling_ = true;
  for (int i = 0; i < kShopLists; ++i) {
    const ShopList list = static_cast<ShopList>(i);
    const QString typed = of(list).items->text();
    showList(list);
    of(list).items->setText(typed);
  }
  filling_ = false;
  told_->setText(tr("Not taken: %1").arg(what.isEmpty() ? why : tr("%1: %2").arg(what, why)));
}

void ShopSlip::carry(bool on) {
  Job job = desk_.job();
  job.shop = on ? shop() : Shop{};
  if (on && job.shop.saysNothing()) {
    filling_ = true;
    carried_->setChecked(false);
    filling_ = false;
    told_->setText(tr("There is nothing to carry yet: all usual tools are taken as owned."));
    return;
  }
  before_.emplace_back();
  desk_.endMerge();
  desk_.apply(std::move(job),
              on ? tr("Carry the shop in the job") : tr("Leave the shop to all jobs"));
}

void ShopSlip::undo() {
  if (before_.empty()) return;
  const std::optional<Shop> last = before_.back();
  before_.pop_back();
  if (!last) return desk_.undo();
  desk_.setOwnShop(*last);
  emit shopKept(*last);
}

}  // namespace inchwright::app

#include "moc_shop_slip.cpp"
