#include "app/session/job_difference.h"

#include <QCoreApplication>

namespace inchwright::app {
namespace {

QString spoken(const char* text) {
  return QCoreApplication::translate("JobDifference", text);
}

QString plain(const std::string& text) {
  return QString::fromStdString(text);
}

QString endsOf(const Reading& reading) {
  return reading.to.empty() ? plain(reading.from)
                            : spoken("%1 to %2").arg(plain(reading.from), plain(reading.to));
}

template <class Thing>
const Thing* among(const std::vector<Thing>& all, const Id& id) {
  for (const Thing& one : all) {
    if (one.id == id) return &one;
  }
  return nullptr;
}

/// Says of each thing of two lists what there is to say of it: where it is missing, where it is
/// another.
template <class Thing, class Name, class Change>
void compareThings(QStringList& said, const std::vector<Thing>& there,
                   const std::vector<Thing>& here, const Name& nameOf, const Change& changeOf) {
  for (const Thing& one : there) {
    const Thing* other = among(here, one.id);
    if (other == nullptr) {
      said << spoken("%1 is only there").arg(nameOf(one));
    } else if (!(one == *other)) {
      said << changeOf(one, *other);
    }
  }
  for (const Thing& one : here) {
    if (among(there, one.id) == nullptr) said << spoken("%1 is only here").arg(nameOf(one));
  }
}

void compareParts(QStringList& said, const Part& there, const Part& here) {
  const auto nameOfReading = [](const Reading& one) {
    return spoken("%1 (%2, %3)").arg(plain(one.id), endsOf(one), plain(one.figure.text));
  };
  compareThings(said, there.readings, here.readings, nameOfReading,
                [&](const Reading& one, const Reading& other) {
                  if (one.figure.text == other.figure.text) {
                    return spoken("%1 is another reading there").arg(nameOfReading(other));
                  }
                  return spoken("%1 (%2) is %3 there and %4 here")
                      .arg(plain(one.id), endsOf(one), plain(one.figure.text),
                           plain(other.figure.text));
                });
  const auto nameOfFeature = [](const Feature& one) { return plain(one.id); };
  compareThings(said, there.features, here.features, nameOfFeature,
                [&](const Feature&, const Feature& other) {
                  return spoken("%1 is another there, or lies elsewhere").arg(nameOfFeature(other));
                });
  Part rest = there;
  rest.readings = here.readings;
  rest.features = here.features;
  if (!(rest == here)) said << spoken("other things about %1 differ").arg(plain(here.name));
}

}  // namespace

QStringList jobDifference(const Job& there, const Job& here, int most) {
  QStringList said;
  for (const Part& part : there.parts) {
    if (const Part* other = here.part(part.name)) {
      compareParts(said, part, *other);
    } else {
      said << spoken("the part %1 is only there").arg(plain(part.name));
    }
  }
  for (const Part& part : here.parts) {
    if (there.part(part.name) == nullptr) {
      said << spoken("the part %1 is only here").arg(plain(part.name));
    }
  }
  Job rest = there;
  rest.parts = here.parts;
  if (!(rest == here)) said << spoken("title, machine or pictures differ");
  if (said.isEmpty() && !(there == here)) said << spoken("the order of things differs");
  if (said.size() > most) {
    const auto more = said.size() - most + 1;
    said.erase(said.begin() + most - 1, said.end());
    said << spoken("and %1 more").arg(more);
  }
  return said;
}

}  // namespace inchwright::app
