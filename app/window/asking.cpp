#include "app/window/asking.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>

namespace inchwright::app {
namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("Asking", text);
}

QString filter() {
  return tr("Inchwright jobs (*.inchwright);;All files (*)");
}

Asking::Answer askUnsaved(QWidget* window, const QString& name) {
  QMessageBox box(QMessageBox::NoIcon, tr("Unsaved work"),
                  tr("%1 has work in it that is not saved.").arg(name), QMessageBox::NoButton,
                  window);
  auto* save = box.addButton(tr("&Save it"), QMessageBox::AcceptRole);
  auto* leave = box.addButton(tr("&Throw it away"), QMessageBox::DestructiveRole);
  auto* stay = box.addButton(tr("St&ay"), QMessageBox::RejectRole);
  box.setDefaultButton(save);
  box.setEscapeButton(stay);
  box.exec();
  return box.clickedButton() == save    ? Asking::Answer::save
         : box.clickedButton() == leave ? Asking::Answer::leave
                                        : Asking::Answer::stay;
}

}  // namespace

Asking askingByDialogs(QWidget* window) {
  Asking asking;
  asking.fileToOpen = [window] {
    return QFileDialog::getOpenFileName(window, tr("Open a job"), {}, filter());
  };
  asking.pictureToOpen = [window] {
    return QFileDialog::getOpenFileName(
        window, tr("A picture of the print"), {},
        tr("Pictures (*.png *.jpg *.jpeg *.tif *.tiff *.webp *.pdf);;All files (*)"));
  };
  asking.fileToSave = [window](const QString& suggested) {
    return QFileDialog::getSaveFileName(window, tr("Save the job"), suggested, filter());
  };
  asking.unsavedWork = [window](const QString& name) { return askUnsaved(window, name); };
  asking.yes = [window](const QString& question) {
    QMessageBox box(QMessageBox::NoIcon, QStringLiteral("Inchwright"), question,
                    QMessageBox::NoButton, window);
    auto* yes = box.addButton(tr("&Yes"), QMessageBox::YesRole);
    box.addButton(tr("&No"), QMessageBox::NoRole);
    box.setDefaultButton(yes);
    box.exec();
    return box.clickedButton() == yes;
  };
  asking.tell = [window](const QString& what) {
    QMessageBox(QMessageBox::NoIcon, QStringLiteral("Inchwright"), what, QMessageBox::Ok, window)
        .exec();
  };
  return asking;
}

}  // namespace inchwright::app
