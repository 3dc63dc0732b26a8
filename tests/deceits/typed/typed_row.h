#pragma once

#include <QCoreApplication>
#include <QStringList>
#include <stdexcept>
#include <string>
#include <vector>

#include "core/document/document.h"
#include "core/part/edit.h"
#include "core/part/parts_of_job.h"
#include "core/say/doubt_words.h"
#include "tests/support/driven_hands.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {

/// One row of `cases.txt`.
struct TypedDeceit {
  std::string line;
  std::string begin;               ///< how the part came about
  std::vector<std::string> steps;  ///< see cases.txt
  std::vector<std::string> said;   ///< what must be said, or become of the document
};

/// The text between separators, without blanks round it.
inline std::vector<std::string> piecesOf(const std::string& text, const std::string& separator) {
  std::vector<std::string> pieces;
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t to = std::min(text.find(separator, from), text.size());
    const std::size_t begin = text.find_first_not_of(' ', from);
    const std::size_t end = text.find_last_not_of(' ', to - 1);
    const bool empty = begin >= to || to == from;
    pieces.push_back(empty ? std::string() : text.substr(begin, end - begin + 1));
    from = to + separator.size();
  }
  return pieces;
}

/// A desk on which one row is done, and all that is said meanwhile.
class TypedDesk {
 public:
  using Begins = std::map<std::string, std::string>;

  TypedDesk(const std::string& begin, const Begins& begins) : begins_(begins) {
    desk_.take(jobAt(begin), {});
    QObject::connect(&desk_, &Desk::refused, [this](const QString& why) { refused_ << why; });
    before_ = desk_.job();
  }

  /// The deceit itself is marked with `!`, or has what is sound behind `//`; sound, it is left out
  /// or that is done instead.
  void step(std::string line, bool sound) {
    const bool marked = line[0] == '!';
    if (marked) line = line.substr(line.find_first_not_of(' ', 1));
    const auto texts = piecesOf(line, " // ");
    if ((marked || texts.size() > 1) && !met_) {
      met_ = true;
      before_ = desk_.job();
    }
    if (marked && sound) return;
    const bool typed = line[0] == ':';
    line = texts.size() > 1 && sound ? (typed ? ": " : "") + texts[1] : texts[0];
    refused_.clear();
    entered_ = false;
    echo_ = {};
    if (line[0] == ':') {
      const QString text =
          QString::fromStdString(line.substr(std::min<std::size_t>(2, line.size())));
      echo_ = work_.echo(text);
      entered_ = work_.enter(text);
    } else if (!doToDocument(line) && !hands_.step(line)) {
      throw std::runtime_error("no such step: " + line);
    }
    if (sound && typed && texts.size() > 1) allTaken_ = allTaken_ && entered_;
    QCoreApplication::processEvents();
  }

  /// Whether every text that was typed instead of a deceit was taken.
  bool allTaken() const { return allTaken_; }

  /// Whether it is said now: `refuses WORDS`, `doubts WORDS` (while it is typed), `echoes WORDS`,
  /// `asks WORDS` (the strip), `offers WORDS`, `list WORDS` (of what stands in doubt), `unchanged`
  /// (since the deceit), `holds WORDS` (the document).
  bool says(const std::string& demand) const {
    const std::size_t space = std::min(demand.find(' '), demand.size());
    const std::string kind = demand.substr(0, space);
    const QString words = QString::fromStdString(demand.substr(std::min(space + 1, demand.size())));
    if (kind == "unchanged") return desk_.job() == before_;
    if (words.isEmpty()) throw std::runtime_error("nothing is demanded by " + demand);
    if (kind == "refuses") return !entered_ && refused_.join('\n').contains(words);
    if (kind == "doubts") return (echo_.doubtful || echo_.refused) && echo_.text.contains(words);
    if (kind == "echoes") return !echo_.refused && echo_.text.contains(words);
    if (kind == "asks") return work_.prompt().contains(words);
    if (kind == "offers") return (work_.offer().isEmpty() ? "nothing" : work_.offer()) == words;
    if (kind == "list") return doubts().contains(words);
    if (kind == "holds") return document().contains(words);
    throw std::runtime_error("no such demand: " + demand);
  }

  /// All of it, for whoever looks at a row that failed.
  std::string told() const {
    const auto line = [](const char* what, const QString& text) {
      return text.isEmpty() ? std::string() : std::string(what) + text.toStdString() + "\n";
    };
    return line("  refused: ", refused_.join("; ")) +
           line(echo_.refused    ? "  echo refuses: "
                : echo_.doubtful ? "  echo doubts: "
                                 : "  echo: ",
                echo_.text) +
           line("  asks: ", work_.prompt()) + line("  offers: ", work_.offer()) +
           line("  doubts: ", doubts().trimmed()) +
           (desk_.job() == before_ ? "  the document is unchanged\n" : "");
  }

 private:
  /// What is done to the whole document: `another NAME`, `open BEGIN`, `remove`, `rename NAME`.
  bool doToDocument(const std::string& line) {
    const std::size_t space = std::min(line.find(' '), line.size());
    const std::string word = line.substr(0, space);
    const std::string rest = line.substr(std::min(space + 1, line.size()));
    if (word == "another") {
      Job job = desk_.job();
      job.parts.push_back(job.parts[0]);
      job.parts.back().name = rest;
      desk_.apply(job, QStringLiteral("Another part"));
    } else if (word == "open") {
      desk_.take(jobAt(rest), {});
    } else if (word == "remove") {
      desk_.apply(*removePart(desk_.job(), desk_.part().name), QStringLiteral("Take away"));
    } else {
      return false;
    }
    return true;
  }

  /// A sample, `bare` behind it where nothing of it is understood without a figure, or what the
  /// lines of a beginning make of an empty plate: `L left @ 0` is traced there.
  Job jobAt(const std::string& name) const {
    const auto own = begins_.find(name);
    if (own == begins_.end()) {
      const std::vector<std::string> words = piecesOf(name, " ");
      auto job = loadDocument(INCHWRIGHT_SOURCE_DIR "/samples/" + words[0] + ".inchwright");
      if (!job.ok()) throw std::runtime_error("no beginning and no sample: " + name);
      if (words.size() > 1) job->parts[0].understood.clear();
      return *job;
    }
    std::string lines;
    std::map<std::string, std::vector<std::string>> traces;
    for (const std::string& line : piecesOf(own->second, ";")) {
      const auto halves = piecesOf(line, " @ ");
      lines += halves[0] + "\n";
      if (halves.size() < 2) continue;
      const auto at = piecesOf(halves[1], ",");
      traces[piecesOf(halves[0], " ")[1]] = at;
    }
    Job job = jobOfPlate(lines.c_str());
    for (Feature& feature : job.parts[0].features) {
      if (const auto found = traces.find(feature.id); found != traces.end()) {
        feature.traced = found->second;
      }
    }
    return job;
  }

  QString doubts() const {
    QString all;
    if (!desk_.hasPart()) return all;
    for (const Doubt& doubt : desk_.solution().doubts) {
      if (doubt.accepted) continue;
      all += QString::fromStdString(doubtText(desk_.part(), desk_.solution(), doubt)) + "\n";
    }
    return all;
  }
  QString document() const { return QString::fromStdString(writeDocument(desk_.job())); }

  const Begins& begins_;
  Desk desk_;
  Work work_{desk_};
  DrivenHands hands_{work_};
  Job before_;
  bool met_ = false;  ///< the deceit was begun
  bool entered_ = true;
  bool allTaken_ = true;
  Echo echo_;
  QStringList refused_;
};

}  // namespace inchwright::app
