#include "app/window/help_page.h"

#include <QAction>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>
#include <functional>
#include <utility>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

QString line(const QString& key, const QString& what) {
  return QStringLiteral("<tr><td style='padding:2px 18px 2px 0'><b>%1</b></td><td>%2</td></tr>")
      .arg(key.toHtmlEscaped(), what.toHtmlEscaped());
}

QString title(const QString& text) {
  return QStringLiteral("<h3>%1</h3>").arg(text.toHtmlEscaped());
}

QString withoutMnemonic(QString text) {
  return text.remove(QLatin1Char('&'));
}

}  // namespace

HelpPage::HelpPage(const QMenuBar* menus, QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("Every key"));
  setAccessibleName(windowTitle());
  auto* page = new QTextBrowser(this);
  page->setAccessibleName(tr("Keys and words"));
  page->setFont(deskFont());
  page->setHtml(QStringLiteral("<table width='100%'><tr><td width='50%'>%1</td><td>%2</td></tr>"
                               "</table>")
                    .arg(keysOfMenus(menus), whatCanBeTyped()));
  auto* done = new QPushButton(tr("&Done"), this);
  done->setProperty("firm", true);
  connect(done, &QPushButton::clicked, this, &QDialog::accept);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(22, 16, 22, 16);
  column->addWidget(page, 1);
  column->addWidget(done, 0, Qt::AlignRight);
  const int unit = fontMetrics().lineSpacing();
  resize(unit * 58, unit * 38);
}

QString HelpPage::keysOfMenus(const QMenuBar* menus) const {
  QString html;
  for (const QAction* top : menus->actions()) {
    if (top->menu() == nullptr) continue;
    QString lines;
    const std::function<void(const QMenu*, const QString&)> walk = [&](const QMenu* menu,
                                                                       const QString& before) {
      for (const QAction* action : menu->actions()) {
        const QString text = before + withoutMnemonic(action->text());
        if (action->menu() != nullptr) {
          walk(action->menu(), text + QStringLiteral(": "));
        } else if (!action->shortcut().isEmpty()) {
          lines +=
              line(QKeySequence::listToString(action->shortcuts(), QKeySequence::NativeText), text);
        }
      }
    };
    walk(top->menu(), {});
    if (!lines.isEmpty()) {
      html += title(withoutMnemonic(top->text())) + QStringLiteral("<table>%1</table>").arg(lines);
    }
  }
  return html;
}

HelpPage::Rows HelpPage::hands() {
  return {
      {"Alt+L", tr("look: choose, move, rename, delete")},
      {"Alt+T", tr("trace: then the letter of what it is")},
      {"Alt+R", tr("read a chain")},
      {"Alt+I  Alt+M  Alt+E", tr("in line, midway, equal spaces")},
      {"Alt+Z", tr("zero")},
      {"Alt+K", tr("stack")},
      {"Alt+G", tr("read again, blind")},
      {"Alt+F", tr("always from the first place chosen")},
      {"Alt+O", tr("the next axis: X, Y, Z")},
      {"Alt+D", tr("the doubts; arrows walk in them")},
      {"Alt+S", tr("read the suspected figure so")},
      {"Alt+A", tr("accept the doubt, or take that back")},
      {"Alt+1  Alt+2  Alt+3", tr("of what the print offers: the figure that is lettered")},
      {"Tab", tr("the next thing on the desk; of what the print offers, the next one")},
      {"Enter", tr("takes the line, or what is offered when it is empty")},
      {"Escape", tr("one step back; what was offered then is not offered again. Stops a picture "
                    "that is being squared up")},
      {"F10", tr("the menus")}};
}

HelpPage::Rows HelpPage::pointing() {
  return {
      {tr("a click"), tr("chooses, or puts down what is traced, on the print's own line near by; "
                         "what was typed of the last place is taken first, unless the tracing "
                         "speaks against it")},
      {tr("Ctrl+click"), tr("puts it down exactly there, whatever lines are near")},
      {tr("Shift+click"), tr("chooses one more; while reading, begins another chain there; on my "
                             "sheet, the second of two sides that zero is midway between")},
      {tr("a drag"), tr("moves a trace; from bare paper, or with the middle button, the print")},
      {tr("the wheel, a pinch"), tr("nearer and farther, about that place; with Ctrl on my sheet")},
      {tr("a double click"), tr("on bare paper: all of it")},
      {"Page Up, Page Down", tr("the next place on their print, the next page of my sheet")},
      {tr("arrows"), tr("nudge what is chosen on their print; move my sheet")},
      {"Home", tr("all of it")}};
}

HelpPage::Rows HelpPage::completed() {
  return {
      {tr("a hole"), tr("Enter gives it the next name and the last size; several that are alike "
                        "are pointed at one after another and sized together")},
      {tr("an edge"), tr("its side; all four at once where the picture was squared up by them")},
      {tr("a row"), tr("point at its last hole as well: which way it runs")},
      {"in line, midway, concentric", tr("what lies so on the print; s says that it is stated")},
      {tr("a corner"), tr("one length, straight from the last; the fourth of a rectangle")}};
}

HelpPage::Rows HelpPage::lines() {
  return {{"L A 3/8", tr("a reading from L to A")},
          {"x A B 1 3/16", tr("the same with its axis")},
          {tr("centres A C 5/8"), tr("straight from one to the other")},
          {"angle A C 55", tr("the angle of that line")},
          {"edge L left", tr("an outer side; edge S x is a step across X")},
          {"hole A 1/4 ream", tr("a hole; 3/16 deep 1/2, 10-32 tap")},
          {"point P", tr("a place with nothing at it")},
          {"slot S x 1/4 by 1", tr("a slot along X, width by length")},
          {"ring G 6 on 2 1/2 from 30 drill 1/8",
           tr("holes on a circle; 22 1/2 deg where a fraction ends the angle")},
          {"row D x 5 holes pitch 9/16 drill 1/8", tr("holes in a row; or 4 spaces")},
          {"round U 3/8 about A left", tr("an outside radius")},
          {"in line y A B", tr("A and B share their Y; stated behind it: the print says so")},
          {"midway y A F K", tr("A half way from F to K")},
          {"equal x A B C", tr("the spaces between them are alike")},
          {"symmetric x A B about C", tr("A and B mirror about C")},
          {"concentric A B", tr("one lies about the other")},
          {"zero x middle L R stock", tr("zero in the middle of the stock")},
          {"zero y F", tr("zero at F")},
          {"stock left 1/16", tr("still to come off")},
          {"rename A Q", tr("and delete A")}};
}

HelpPage::Rows HelpPage::machine() {
  return {{"Space", tr("tick the next tool; behind the last, go on")},
          {tr("arrows, Home"), tr("the next place, the one before, the first")},
          {"Alt+X  Alt+Y", tr("what was measured")},
          {"Escape", tr("back to the desk")}};
}

QString HelpPage::whatCanBeTyped() const {
  QString html;
  const auto table = [&html](const QString& heading, const Rows& rows) {
    html += title(heading) + QStringLiteral("<table>");
    for (const auto& [key, what] : rows) html += line(key, what);
    html += QStringLiteral("</table>");
  };
  table(tr("The hands"), hands());
  table(tr("On the two sheets"), pointing());
  table(tr("What Enter completes"), completed());
  table(tr("What can be typed"), lines());
  table(tr("At the machine"), machine());
  return html;
}

}  // namespace inchwright::app

#include "moc_help_page.cpp"
