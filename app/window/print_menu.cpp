#include "app/window/print_menu.h"

#include <QCoreApplication>
#include <QMenu>
#include <algorithm>
#include <functional>

#include "app/canvas/print_view.h"
#include "app/session/picture_edits.h"
#include "app/window/desk_window.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

QString choiceWords(const char* text) {
  return QCoreApplication::translate("PrintMenu", text);
}

void add(QMenu& menu, const QString& text, const std::function<void()>& action) {
  QObject::connect(menu.addAction(text), &QAction::triggered, &menu, [action] { action(); });
}

/// A slot that lies along the other axis of its face.
void turnSlot(Desk& desk, const Id& id) {
  const Feature* feature = desk.part().feature(id);
  if (feature == nullptr || feature->as<kind::Slot>() == nullptr) return;
  Feature turned = *feature;
  auto& axis = turned.as<kind::Slot>()->axis;
  const auto axes = axesIn(turned.face);
  axis = axis == axes[0] ? axes[1] : axes[0];
  desk.endMerge();
  desk.applyPart(replaceFeature(desk.part(), id, turned),
                 choiceWords("Turn the slot %1").arg(QString::fromStdString(id)));
}

void setLocate(Desk& desk, const Id& id, Locate locate, const std::optional<PartPlace>& mate) {
  const Feature* feature = desk.part().feature(id);
  if (feature == nullptr || feature->drilled() == nullptr) return;
  Feature found = *feature;
  found.drilled()->locate = locate;
  found.drilled()->mate = mate;
  desk.endMerge();
  desk.applyPart(replaceFeature(desk.part(), id, found),
                 choiceWords("How %1 finds its place").arg(QString::fromStdString(id)));
}

/// How a hole finds its place: by its coordinates, or with, from or after a hole of another part.
void addLocating(QMenu& menu, Desk& desk, const Feature& feature) {
  QMenu* located = menu.addMenu(choiceWords("&Located by"));
  const Drilled& drilled = *feature.drilled();
  const auto choice = [&](QMenu& in, const QString& text, Locate locate,
                          const std::optional<PartPlace>& mate) {
    QAction* action = in.addAction(text);
    action->setCheckable(true);
    action->setChecked(drilled.locate == locate &&
                       (!mate || (drilled.mate && drilled.mate->part == mate->part &&
                                  drilled.mate->place == mate->place)));
    QObject::connect(action, &QAction::triggered, &in,
                     [&desk, id = feature.id, locate, mate] { setLocate(desk, id, locate, mate); });
  };
  choice(*located, choiceWords("&Coordinates"), Locate::coordinate, std::nullopt);
  choice(*located, choiceWords("To &suit what is measured"), Locate::suit, std::nullopt);
  choice(*located, choiceWords("&Assembly, once all is in place"), Locate::assembly, std::nullopt);
  for (const Part& other : desk.job().parts) {
    if (other.name == desk.part().name) continue;
    QMenu* part = nullptr;
    for (const Feature& one : other.features) {
      if (!one.is<kind::Hole>()) continue;
      const QString name = QString::fromStdString(other.name);
      if (part == nullptr) part = located->addMenu(choiceWords("A hole of %1").arg(name));
      const PartPlace mate{other.name, one.id, {}};
      const QString id = QString::fromStdString(one.id);
      choice(*part, choiceWords("Spotted through %1").arg(id), Locate::mate, mate);
      choice(*part, choiceWords("Drilled together with %1").arg(id), Locate::pair, mate);
    }
  }
}

void addForPlace(QMenu& menu, DeskWindow& window, const Id& place) {
  Desk& desk = window.desk();
  Work& work = window.work();
  const auto begin = [&work, place](void (Work::*what)()) {
    return [&work, place, what] {
      (work.*what)();
      Pointed pointed;
      pointed.place = place;
      work.point(pointed);
    };
  };
  add(menu, choiceWords("&Read a chain from here"), begin(&Work::read));
  add(menu, choiceWords("&Zero here"), [&work, zero = begin(&Work::zero)] {
    zero();
    work.enter({});
  });
  add(menu, choiceWords("&Stack from here"), begin(&Work::stack));
  menu.addSeparator();
  add(menu, choiceWords("Another size, kind or &name …\tF2"), [&window] { window.amendChosen(); });
  const auto found = std::find_if(desk.part().features.begin(), desk.part().features.end(),
                                  [&](const Feature& one) { return isNamedBy(one, place); });
  if (found != desk.part().features.end() && found->is<kind::Slot>()) {
    add(menu, choiceWords("&Turn the slot"), [&desk, id = found->id] { turnSlot(desk, id); });
  }
  if (found != desk.part().features.end() && found->drilled()) addLocating(menu, desk, *found);
  add(menu, choiceWords("What it goes &together with …"), [&window] { window.showTogether(); });
  add(menu, choiceWords("&Delete\tDel"), [&window] { window.deleteChosen(); });
}

void addForReading(QMenu& menu, DeskWindow& window) {
  add(menu, choiceWords("Another &figure …\tF2"), [&window] { window.amendChosen(); });
  add(menu, choiceWords("&Delete\tDel"), [&window] { window.deleteChosen(); });
}

void addForPaper(QMenu& menu, DeskWindow& window) {
  PrintView& print = window.print();
  add(menu, choiceWords("&All of it"), [&print] { print.fit(); });
  add(menu,
      print.hidesMine() ? choiceWords("&Show what is mine") : choiceWords("&Hide what is mine"),
      [&print] { print.hideMine(!print.hidesMine()); });
  menu.addSeparator();
  add(menu, choiceWords("&Lay a picture underneath …"), [&window] { window.layPicture(); });
  if (print.picture().wanted()) {
    Work& work = window.work();
    add(menu, choiceWords("S&quare the picture up"), [&print] { print.picture().squareUp(); });
    add(menu, choiceWords("&Turn it by a quarter"), [&work] { work.turnPicture(); });
    const Desk& desk = window.desk();
    if (viewsOf(desk.part(), desk.face()).size() > 1) {
      add(menu, choiceWords("The &next picture in front"), [&work] { work.nextPictureInFront(); });
    }
  }
}

}  // namespace

void fillPrintMenu(QMenu& menu, DeskWindow& window, const Pointed& under) {
  Desk& desk = window.desk();
  if (!under.place.empty()) {
    desk.select({{under.place}, {}});
    addForPlace(menu, window, under.place);
  } else if (!under.reading.empty()) {
    desk.select({{}, {under.reading}});
    addForReading(menu, window);
  } else {
    addForPaper(menu, window);
  }
}

QString wordsOfChosen(const Part& part, const Selection& chosen) {
  if (chosen.places.size() + chosen.readings.size() != 1) return {};
  if (!chosen.readings.empty()) {
    const Reading* reading = part.reading(chosen.readings.front());
    return reading == nullptr ? QString() : QString::fromStdString(reading->figure.text);
  }
  const Feature* feature = part.feature(chosen.places.front());
  if (feature == nullptr) return {};
  for (const auto* size : {&diameterOf(*feature), &radiusOf(*feature)}) {
    if (*size) return QString::fromStdString((*size)->text);
  }
  return QString::fromStdString(feature->id);
}

}  // namespace inchwright::app
