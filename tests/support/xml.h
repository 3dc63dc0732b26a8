#pragma once

#include <gtest/gtest.h>

#include <QByteArray>
#include <QStringList>
#include <QXmlStreamReader>

namespace inchwright::test {

/// The names of all elements of an XML text, in their order; a text that is none fails the test.
inline QStringList xmlElements(const QByteArray& xml) {
  QXmlStreamReader reader(xml);
  QStringList names;
  while (!reader.atEnd()) {
    if (reader.readNext() == QXmlStreamReader::StartElement) names << reader.name().toString();
  }
  EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString() << " in line "
                                  << reader.lineNumber();
  return names;
}

/// Whether it is an SVG picture that an XML parser takes, without any script.
inline void expectSvg(const QByteArray& svg) {
  const QStringList names = xmlElements(svg);
  ASSERT_FALSE(names.isEmpty());
  EXPECT_EQ(names.front(), QLatin1String("svg"));
  EXPECT_FALSE(names.contains(QLatin1String("script")));
}

}  // namespace inchwright::test
