#include "app/canvas/print_accessible.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <map>

#include "app/canvas/print_view.h"

namespace inchwright::app {
namespace {

/// One place or reading of a print, known by its number there.
class SpokenThing : public QAccessibleInterface, public QAccessibleActionInterface {
 public:
  SpokenThing(PrintView& view, int index) : view_(view), index_(index) {}

  bool isValid() const override { return index_ < view_.thingCount(); }
  QObject* object() const override { return nullptr; }
  QWindow* window() const override { return view_.window()->windowHandle(); }
  QAccessibleInterface* parent() const override {
    return QAccessible::queryAccessibleInterface(&view_);
  }
  QAccessibleInterface* child(int) const override { return nullptr; }
  QAccessibleInterface* childAt(int, int) const override { return nullptr; }
  int childCount() const override { return 0; }
  int indexOfChild(const QAccessibleInterface*) const override { return -1; }
  int index() const { return index_; }

  QString text(QAccessible::Text what) const override {
    if (!isValid()) return {};
    const PrintThing thing = view_.thing(index_);
    if (what == QAccessible::Name) return thing.name;
    if (what == QAccessible::Description || what == QAccessible::Value) return thing.status;
    return {};
  }
  void setText(QAccessible::Text, const QString&) override {}

  QRect rect() const override {
    if (!isValid()) return {};
    const QRect box = view_.thing(index_).box.toAlignedRect();
    return {view_.mapToGlobal(box.topLeft()), box.size()};
  }

  QAccessible::Role role() const override {
    return isValid() && view_.thing(index_).reading ? QAccessible::StaticText
                                                    : QAccessible::Graphic;
  }

  QAccessible::State state() const override {
    QAccessible::State state;
    state.selectable = true;
    if (!isValid()) {
      state.invalid = true;
      return state;
    }
    state.selected = view_.thing(index_).chosen;
    state.invisible = !view_.isVisible();
    state.offscreen = !QRectF(view_.rect()).intersects(view_.thing(index_).box);
    return state;
  }

  void* interface_cast(QAccessible::InterfaceType type) override {
    return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this)
                                                : nullptr;
  }
  QStringList actionNames() const override { return {pressAction()}; }
  void doAction(const QString& name) override {
    if (name == pressAction() && isValid()) view_.pointAt(index_);
  }
  QStringList keyBindingsForAction(const QString&) const override { return {}; }

 private:
  PrintView& view_;
  int index_;
};

class SpokenPrint : public QAccessibleWidget {
 public:
  explicit SpokenPrint(PrintView* view)
      : QAccessibleWidget(view, QAccessible::Canvas, view->accessibleName()), view_(*view) {}
  ~SpokenPrint() override {
    for (const auto& [index, id] : children_) QAccessible::deleteAccessibleInterface(id);
  }

  int childCount() const override { return view_.thingCount(); }

  QAccessibleInterface* child(int index) const override {
    if (index < 0 || index >= view_.thingCount()) return nullptr;
    const auto known = children_.find(index);
    if (known != children_.end()) return QAccessible::accessibleInterface(known->second);
    auto* made = new SpokenThing(view_, index);
    children_[index] = QAccessible::registerAccessibleInterface(made);
    return made;
  }

  int indexOfChild(const QAccessibleInterface* child) const override {
    const auto* thing = dynamic_cast<const SpokenThing*>(child);
    return thing == nullptr ? -1 : thing->index();
  }

  QAccessibleInterface* childAt(int x, int y) const override {
    const QPointF at = view_.mapFromGlobal(QPointF(x, y));
    int best = -1;
    qreal smallest = 0;
    for (int i = 0; i < view_.thingCount(); ++i) {
      const QRectF box = view_.thing(i).box;
      const qreal size = box.width() * box.height();
      // A hole lies within the strip of an edge that crosses it: the smaller one is meant.
      if (box.contains(at) && (best < 0 || size < smallest)) {
        best = i;
        smallest = size;
      }
    }
    return child(best);
  }

 private:
  PrintView& view_;
  mutable std::map<int, QAccessible::Id> children_;
};

QAccessibleInterface* makeSpoken(const QString&, QObject* object) {
  auto* view = qobject_cast<PrintView*>(object);
  return view == nullptr ? nullptr : new SpokenPrint(view);
}

}  // namespace

void speakPrints() {
  // Qt forgets the factory together with the application, and installs one only once.
  QAccessible::installFactory(&makeSpoken);
}

void announceChosen(PrintView& view) {
  if (!QAccessible::isActive()) return;
  for (int i = 0; i < view.thingCount(); ++i) {
    if (!view.thing(i).chosen) continue;
    QAccessibleEvent event(&view, QAccessible::Focus);
    event.setChild(i);
    QAccessible::updateAccessibility(&event);
    return;
  }
}

}  // namespace inchwright::app
