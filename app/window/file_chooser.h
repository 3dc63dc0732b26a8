#pragma once

#include <QString>

class QWidget;

namespace inchwright::app {

/// Asks for a file to open, with a small picture of the one chosen beside the list. Empty: none.
QString chooseFile(QWidget* window, const QString& title, const QString& folder,
                   const QString& filter);

}  // namespace inchwright::app
