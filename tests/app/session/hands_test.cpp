// What the desk asks, offers and answers while hands are at work, word for word, and what becomes
// of the document. Each file of `hands/` is a session; what it led to is kept under the same name
// in `tests/golden/hands/`. After a wanted change run this test with INCHWRIGHT_RENEW_GOLDEN=1,
// read what differs, and commit it.
//
// The first line of a session names the sample to begin with, `-` for an empty plate; behind it
// `bare` where nothing of it is understood without a figure. Then a step a line:
//   : TEXT     into the strip and Enter; before that what is echoed
//   ? TEXT     into the strip only
//   and what `DrivenHands` can do.

#include <gtest/gtest.h>

#include <QStringList>
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "app/session/work.h"
#include "core/document/document.h"
#include "tests/support/driven_hands.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

namespace fs = std::filesystem;

using Words = std::vector<std::string>;

const char* nameOf(Doing doing) {
  static constexpr const char* kNames[] = {"looking",      "tracing",   "reading",   "relating",
                                           "zeroing",      "stacking",  "rereading", "squaring",
                                           "placing view", "accepting", "offering"};
  return kNames[static_cast<std::size_t>(doing)];
}

std::string read(const fs::path& file) {
  std::ifstream in(file);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

Words split(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<std::string>(in), {}};
}

Words linesOf(const std::string& text) {
  Words lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

class Session {
 public:
  explicit Session(const Words& begin) {
    if (begin[0] == "-") {
      desk_.take(jobOfPlate(), {});
    } else {
      auto job = loadDocument(INCHWRIGHT_SOURCE_DIR "/samples/" + begin[0] + ".inchwright");
      EXPECT_TRUE(job.ok()) << begin[0];
      if (!job.ok()) return;
      if (begin.size() > 1) job->parts[0].understood.clear();
      desk_.take(*job, {});
    }
    QObject::connect(&desk_, &Desk::refused, [this](const QString& why) { said("refused", why); });
    QObject::connect(&work_, &Work::typedTaken, [this] { said("typed", "taken by the click"); });
    QObject::connect(&work_, &Work::allLeft, [this] { said("left", "there is nothing to leave"); });
    QObject::connect(&work_, &Work::offersWanted, [this] { said("offers", "wanted"); });
    QObject::connect(&work_, &Work::show,
                     [this](const std::vector<Id>& places, const std::vector<Id>& readings) {
                       said("show", named(places) + " / " + named(readings));
                     });
    document_ = linesOf(writeDocument(desk_.job()));
    tell();
  }

  void step(const std::string& line) {
    told_ << "> " << line << "\n";
    if (line[0] == ':' || line[0] == '?') {
      const QString text = QString::fromStdString(line.size() > 2 ? line.substr(2) : std::string());
      const Echo echo = work_.echo(text);
      if (!echo.text.isEmpty()) {
        said(echo.refused    ? "echo refuses"
             : echo.doubtful ? "echo doubts"
                             : "echo",
             echo.text + (echo.at >= 0 ? QString(" (at %1)").arg(echo.at) : QString()));
      }
      if (line[0] == ':') said("entered", work_.enter(text) ? "yes" : "no");
    } else if (line == "pass") {
      said("passed", work_.pass() ? "yes" : "no");
    } else {
      ASSERT_TRUE(hands_.step(line)) << line;
    }
    tell();
  }

  std::string told() const { return told_.str(); }

 private:
  void said(const char* what, const QString& text) {
    told_ << "  " << what << ": " << text.toStdString() << "\n";
  }

  static QString named(const std::vector<Id>& ids) {
    QStringList all;
    for (const Id& id : ids) all << QString::fromStdString(id);
    return all.join(QLatin1Char(' '));
  }

  // What differs from what was told before.
  void tellIfNew(const char* what, const QString& now) {
    QString& before = told_before_[what];
    if (before == now) return;
    before = now;
    said(what, now);
  }

  void tell() {
    tellIfNew("doing", QLatin1String(nameOf(work_.doing())));
    tellIfNew("axis", QString::fromStdString(std::string(inchwright::nameOf(work_.axis()))));
    tellIfNew("prompt", work_.prompt());
    tellIfNew("offer", work_.offer());
    tellIfNew("chosen", named(work_.chosen()));
    const auto spot = [](QPointF at) { return QString("%1 %2").arg(at.x()).arg(at.y()); };
    tellIfNew("pending", work_.pending() ? spot(*work_.pending()) : QString());
    QStringList marks;
    for (const QPointF& mark : work_.marks()) marks << spot(mark);
    tellIfNew("marks", marks.join(QStringLiteral(", ")));
    const auto view = work_.viewShown();
    tellIfNew(
        "view",
        view ? QString("%1 turned %2").arg(QString::fromStdString(view->picture)).arg(view->turn)
             : QString());
    const auto stacked = work_.stacked();
    tellIfNew("stacked", !stacked        ? QString()
                         : stacked->ok() ? QStringLiteral("adds up")
                                         : QString::fromStdString(stacked->error().text));
    tellIfNew("undo", desk_.canUndo() ? desk_.undoTitle() : QString());
    tellIfNew("redo", desk_.canRedo() ? desk_.redoTitle() : QString());
    tellIfNew("selected", named(desk_.selection().places) + QStringLiteral(" / ") +
                              named(desk_.selection().readings));
    tellDocument();
  }

  // Lines of the document that are gone, and that are new.
  void tellDocument() {
    const Words now = linesOf(writeDocument(desk_.job()));
    const auto tellMissing = [&](const Words& from, const Words& in, const char* sign) {
      std::map<std::string, int> there;
      for (const std::string& line : in) ++there[line];
      for (const std::string& line : from) {
        if (there[line]-- > 0) continue;
        told_ << "  " << sign << " " << line.substr(line.find_first_not_of(' ')) << "\n";
      }
    };
    tellMissing(document_, now, "-");
    tellMissing(now, document_, "+");
    document_ = now;
  }

  Desk desk_;
  Work work_{desk_};
  DrivenHands hands_{work_};
  std::ostringstream told_;
  std::map<std::string, QString> told_before_;
  Words document_;
};

Words sessions() {
  Words names;
  for (const auto& file :
       fs::directory_iterator(INCHWRIGHT_SOURCE_DIR "/tests/app/session/hands")) {
    names.push_back(file.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

class HandsIn : public testing::TestWithParam<std::string> {
 protected:
  void SetUp() override { deskApplication(); }
};

TEST_P(HandsIn, ASession) {
  const fs::path source(INCHWRIGHT_SOURCE_DIR);
  const Words lines = linesOf(read(source / "tests/app/session/hands" / (GetParam() + ".txt")));
  ASSERT_GT(lines.size(), 1u);
  Session session(split(lines.front()));
  for (std::size_t i = 1; i < lines.size(); ++i) {
    if (!lines[i].empty() && lines[i][0] != '#') session.step(lines[i]);
  }
  const fs::path kept = source / "tests/golden/hands" / (GetParam() + ".txt");
  if (std::getenv("INCHWRIGHT_RENEW_GOLDEN") != nullptr) {
    std::ofstream(kept) << session.told();
    return;
  }
  const Words now = linesOf(session.told()), before = linesOf(read(kept));
  const auto differs = std::mismatch(now.begin(), now.end(), before.begin(), before.end());
  const auto line = [](auto at, const Words& in) { return at == in.end() ? "(the end)" : *at; };
  EXPECT_EQ(now, before) << "first in line " << differs.first - now.begin() + 1 << ": "
                         << line(differs.first, now)
                         << "\n  before: " << line(differs.second, before);
}

INSTANTIATE_TEST_SUITE_P(Hands, HandsIn, testing::ValuesIn(sessions()),
                         [](const auto& one) { return one.param; });

}  // namespace
}  // namespace inchwright::app
