// Two desks and a disk, driven by a seeded script and held at every step against a plain model of
// what must hold: edits, undo, redo, save, save as, open, kill, recover, changes by somebody else,
// a full disk. INCHWRIGHT_MODEL_STEPS and INCHWRIGHT_MODEL_SEED make it longer or another.

#include <gtest/gtest.h>
#include <sys/resource.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <csignal>
#include <map>
#include <memory>
#include <optional>
#include <random>
#include <set>

#include "app/session/preferences.h"
#include "app/window/desk_files.h"
#include "core/document/document.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

constexpr unsigned kSteps = 500;
constexpr unsigned kSeed = 20'261'129;
constexpr int kNames = 3;

unsigned fromSurroundings(const char* name, unsigned otherwise) {
  const QByteArray value = qgetenv(name);
  return value.isEmpty() ? otherwise : value.toUInt();
}

/// While it lives nothing longer than a few bytes can be written: the disk is full.
class FullDisk {
 public:
  explicit FullDisk(bool full) : full_(full) {
    if (!full) return;
    std::signal(SIGXFSZ, SIG_IGN);
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit few{16, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &few);
  }
  ~FullDisk() {
    if (full_) ::setrlimit(RLIMIT_FSIZE, &before_);
  }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;

 private:
  bool full_;
  rlimit before_{};
};

/// What a desk must be.
struct ModelDesk {
  struct Version {
    Job job;
    QString merge;
  };
  std::vector<Version> versions{Version{}};
  std::size_t now = 0;
  std::optional<std::size_t> saved = 0;
  QString file;
  std::optional<Job> known;  ///< what the file held when it was last seen
  bool onlyLook = false;
  QString held;  ///< the file no other window may write
  std::optional<Job> journal;

  const Job& job() const { return versions[now].job; }
  bool unsaved() const { return saved != now; }
  void settle() {
    if (!unsaved()) journal.reset();
  }
  void take(Job job, const QString& from) {
    versions = {Version{std::move(job), {}}};
    now = 0;
    saved = 0;
    file = from;
    journal.reset();
  }
  void apply(Job next, const QString& merge) {
    if (saved && *saved > now) saved.reset();
    versions.resize(now + 1);
    if (!merge.isEmpty() && versions[now].merge == merge && saved != now) {
      versions[now].job = std::move(next);
    } else {
      versions.push_back({std::move(next), merge});
      ++now;
    }
    settle();
  }
};

struct ModelLeft {
  Job job;
  QString file;
  std::optional<Job> known;

  /// As it is spoken of; one may be undone back to nothing.
  std::string title() const { return job.title.empty() ? "without a title" : job.title; }
};

class SessionModel : public testing::Test {
 protected:
  /// A process with its desk.
  struct Process {
    std::unique_ptr<Desk> desk;
    std::unique_ptr<DeskFiles> files;
    ModelDesk model;
  };

  void SetUp() override {
    deskApplication();
    QDir(dataFolder(QStringLiteral("journal"))).removeRecursively();
    QDir(dataFolder(QStringLiteral("aside"))).removeRecursively();
    seed = fromSurroundings("INCHWRIGHT_MODEL_SEED", kSeed);
    random.seed(seed);
    for (Process& process : processes) start(process);
  }

  int draw(int below) { return static_cast<int>(random() % static_cast<unsigned>(below)); }
  bool one(int in) { return draw(in) == 0; }
  QString pathOf(int name) const {
    return folder.filePath(QStringLiteral("%1.inchwright").arg(QChar(u'a' + name)));
  }
  Job freshJob() {
    Job job = emptyJob();
    job.title = "job " + std::to_string(++jobs);
    return job;
  }

  Asking asking() {
    Asking ask;
    ask.fileToSave = [this](const QString&) { return saveAsTo; };
    ask.unsavedWork = [this](const QString&) {
      ++askedUnsaved;
      return leaving;
    };
    ask.choose = [this](const Asking::Question& question) {
      // On a full disk it is told, and not tried elsewhere for now.
      if (question.text.startsWith(QStringLiteral("Not saved."))) return question.escape;
      ++asked;
      if (question.text.startsWith(QStringLiteral("Last time"))) return answerLeft(question.text);
      // 0 is to keep both, to replace or to look; the last is to leave it.
      return std::min(answer, static_cast<int>(question.answers.size()) - 1);
    };
    ask.tell = [this](const QString&) { ++told; };
    return ask;
  }

  /// Goes on with at most one, so that it is known onto which desk it comes.
  int answerLeft(const QString& question) {
    const QString title = question.section(QLatin1Char('('), -1).section(QLatin1Char(')'), 0, 0);
    const int number = title.section(QLatin1Char(' '), 1).toInt();
    const int wanted = (number + answer) % 3;
    const int given = wanted == 0 && wentOn ? 2 : wanted;
    wentOn = wentOn || given == 0;
    answers[title.toStdString()].push_back(given);
    return given;
  }

  void start(Process& process) {
    process.desk = std::make_unique<Desk>();
    process.files = std::make_unique<DeskFiles>(*process.desk, asking());
    process.model = {};
  }

  bool heldByAnother(const Process& process, const QString& path) const {
    for (const Process& other : processes) {
      if (&other != &process && other.model.held == path) return true;
    }
    return false;
  }

  // The model's own idea of each step. They say whether it is done and foretell what is asked.

  bool modelSaveTo(ModelDesk& desk, const Process& process, const QString& path) {
    if (heldByAnother(process, path)) return false;
    if (full) return false;
    disk[path] = desk.job();
    desk.known = desk.job();
    desk.file = path;
    desk.held = path;
    desk.onlyLook = false;
    desk.saved = desk.now;
    desk.versions[desk.now].merge.clear();
    desk.settle();
    return true;
  }

  bool modelSave(ModelDesk& desk, const Process& process) {
    if (desk.file.isEmpty() || desk.onlyLook) return modelSaveAs(desk, process);
    QString path = desk.file;
    if (disk.count(path) != 0 && !(desk.known && disk[path] == *desk.known)) {
      ++mustAsk;
      if (answer == 2) return false;
      for (int number = 2; answer == 0 && disk.count(path) != 0; ++number) {
        path = desk.file;
        path.replace(QStringLiteral(".inchwright"), QStringLiteral(" (%1).inchwright").arg(number));
      }
    }
    return modelSaveTo(desk, process, path);
  }

  bool modelSaveAs(ModelDesk& desk, const Process& process) {
    if (saveAsTo == desk.file && !desk.onlyLook) return modelSave(desk, process);
    if (disk.count(saveAsTo) != 0) {
      ++mustAsk;
      if (answer != 0) return false;
    }
    return modelSaveTo(desk, process, saveAsTo);
  }

  bool modelMayLeave(ModelDesk& desk, const Process& process) {
    if (!desk.unsaved()) return true;
    ++mustAskUnsaved;
    if (leaving == Asking::Answer::save) return modelSave(desk, process);
    return leaving == Asking::Answer::leave;
  }

  bool modelOpen(ModelDesk& desk, const Process& process, const QString& path) {
    if (disk.count(path) == 0 || !modelMayLeave(desk, process)) return false;
    const bool free = !heldByAnother(process, path);
    if (!free) {
      ++mustAsk;
      if (answer != 0) return false;
    }
    // On a full disk nobody can be told that it is open here, unless that was noted before.
    desk.held = free && (!full || desk.held == path) ? path : QString();
    desk.onlyLook = !free;
    desk.take(disk[path], path);
    desk.known = disk[path];
    return true;
  }

  void modelRecover(Process& process) {
    ModelDesk& desk = process.model;
    std::set<std::string> expected, offered;
    for (const auto& [title, given] : answers) offered.insert(title);
    std::vector<ModelLeft> still;
    for (const ModelLeft& work : left) {
      if (disk.count(work.file) != 0 && disk[work.file] == work.job) continue;
      ++mustAsk;
      expected.insert(work.title());
      std::vector<int>& said = answers[work.title()];
      const int given = said.empty() ? -1 : said.front();
      if (!said.empty()) said.erase(said.begin());
      if (given == 0) {
        desk.take(disk.count(work.file) != 0 ? disk[work.file] : emptyJob(), work.file);
        desk.onlyLook = !work.file.isEmpty() && heldByAnother(process, work.file);
        desk.held = desk.onlyLook || full ? QString() : work.file;
        desk.known = work.known;
        desk.apply(work.job, {});
        // On a full disk nothing says whose it is now, so it stays for the next start as well.
        if (full) {
          still.push_back(work);
        } else {
          desk.journal = work.job;
        }
      } else if (given == 1) {
        aside.insert(work.title());
      } else {
        still.push_back(work);
      }
    }
    EXPECT_EQ(offered, expected);
    left = still;
  }

  /// The process ends as by SIGKILL: what it would have written at its end is taken back.
  void kill(Process& process) {
    const QString journal = process.files->journal().path(), note = journal + ".file";
    std::map<QString, std::optional<QByteArray>> before;
    for (const QString& file : {journal, note}) {
      QFile there(file);
      before[file] =
          there.open(QIODevice::ReadOnly) ? std::optional(there.readAll()) : std::nullopt;
    }
    process.files.reset();
    process.desk.reset();
    for (const auto& [file, bytes] : before) {
      QFile::remove(file);
      QFile again(file);
      if (bytes && again.open(QIODevice::WriteOnly)) again.write(*bytes);
    }
    const ModelDesk& desk = process.model;
    if (desk.journal) left.push_back({*desk.journal, desk.file, desk.known});
    start(process);
  }

  void step();
  void edit(Process& process);
  void toDisk(Process& process, int what);
  void elsewhere(Process& process, int what);
  void check();

  unsigned seed = 0;
  std::mt19937 random;
  QTemporaryDir folder;
  Process processes[2];
  std::map<QString, Job> disk;
  std::vector<ModelLeft> left;
  std::multiset<std::string> aside;
  int jobs = 0;
  // What the script answers in this step, and what came of it.
  bool full = false;
  QString saveAsTo;
  Asking::Answer leaving = Asking::Answer::leave;
  int answer = 0;
  bool wentOn = false;
  std::map<std::string, std::vector<int>> answers;  ///< by title, in the order of asking
  int asked = 0, askedUnsaved = 0, told = 0, mustAsk = 0, mustAskUnsaved = 0;
  QString did;
};

void SessionModel::edit(Process& process) {
  ModelDesk& model = process.model;
  if (one(4)) {
    did = "undo";
    process.desk->undo();
    if (model.now > 0) {
      model.versions[model.now].merge.clear();
      --model.now;
      model.settle();
    }
  } else if (one(4)) {
    did = "redo";
    process.desk->redo();
    if (model.now + 1 < model.versions.size()) {
      ++model.now;
      model.settle();
    }
  } else {
    did = "edit";
    Job job = freshJob();
    const QString merge = one(3) ? QStringLiteral("drag") : QString();
    process.desk->apply(job, QStringLiteral("edit"), merge);
    model.apply(std::move(job), merge);
  }
}

void SessionModel::toDisk(Process& process, int what) {
  ModelDesk& model = process.model;
  const FullDisk disk_is(full);
  bool done = false, must = false;
  if (what == 0) {
    did = "save";
    done = process.files->save();
    must = modelSave(model, process);
  } else if (what == 1) {
    did = "save as";
    done = process.files->saveAs();
    must = modelSaveAs(model, process);
  } else if (what == 2) {
    did = "open";
    const QString path = pathOf(draw(kNames));
    done = process.files->open(path);
    must = modelOpen(model, process, path);
  } else if (what == 3) {
    did = "new";
    done = process.files->newJob();
    must = modelMayLeave(model, process);
    if (must) {
      model.take(emptyJob(), {});
      model.known.reset();
      model.held.clear();
      model.onlyLook = false;
    }
  } else {
    did = "flush";
    process.files->journal().flush();
    if (model.unsaved() && !full) model.journal = model.job();
    return;
  }
  EXPECT_EQ(done, must);
}

void SessionModel::elsewhere(Process& process, int what) {
  if (what == 0) {
    did = "changed by somebody else";
    const QString path = pathOf(draw(kNames));
    disk[path] = freshJob();
    ASSERT_TRUE(saveDocument(disk[path], path.toStdString()).ok());
  } else if (what == 1) {
    did = "moved away by somebody else";
    const QString path = pathOf(draw(kNames));
    disk.erase(path);
    QFile::remove(path);
  } else if (what == 2) {
    did = "left";
    const FullDisk disk_is(full);
    if (modelMayLeave(process.model, process)) {
      ASSERT_TRUE(process.files->mayLeave());
      process.files->journal().drop();
      start(process);
    } else {
      EXPECT_FALSE(process.files->mayLeave());
    }
  } else {
    did = "killed";
    kill(process);
    if (one(3)) return;
    did = "killed and recovered";
    const FullDisk disk_is(full);
    const bool any = process.files->recover([]() -> DeskFiles* {
      ADD_FAILURE() << "one at most is gone on with";
      return nullptr;
    });
    EXPECT_EQ(any, wentOn);
    modelRecover(process);
  }
}

void SessionModel::step() {
  full = one(8);
  saveAsTo = pathOf(draw(kNames));
  leaving = static_cast<Asking::Answer>(draw(3));
  answer = draw(3);
  wentOn = false;
  answers.clear();
  asked = askedUnsaved = told = mustAsk = mustAskUnsaved = 0;
  Process& process = processes[draw(2)];
  const int what = draw(20);
  if (what < 8) {
    edit(process);
  } else if (what < 16) {
    toDisk(process, (what - 8) / 2 + (what == 15 ? 1 : 0));
  } else {
    elsewhere(process, what - 16);
  }
  QCoreApplication::sendPostedEvents();
  EXPECT_EQ(asked, mustAsk) << "nothing is replaced unasked, and nothing asked for nothing";
  EXPECT_EQ(askedUnsaved, mustAskUnsaved);
}

void SessionModel::check() {
  for (const Process& process : processes) {
    const ModelDesk& model = process.model;
    EXPECT_EQ(process.desk->job(), model.job());
    EXPECT_EQ(process.desk->unsaved(), model.unsaved());
    EXPECT_EQ(process.desk->file(), model.file);
    const QString journal = process.files->journal().path();
    EXPECT_EQ(QFile::exists(journal), model.journal.has_value());
    if (model.journal) {
      const auto kept = loadDocument(journal.toStdString());
      EXPECT_TRUE(kept.ok() && *kept == *model.journal);
    }
  }
  const QStringList there = QDir(folder.path()).entryList(QDir::Files | QDir::Hidden);
  EXPECT_EQ(static_cast<std::size_t>(there.size()), disk.size()) << qPrintable(there.join(u' '));
  for (const auto& [path, job] : disk) {
    const auto kept = loadDocument(path.toStdString());
    EXPECT_TRUE(kept.ok() && *kept == job) << qPrintable(path);
  }
  EXPECT_EQ(static_cast<std::size_t>(QDir(dataFolder(QStringLiteral("aside"))).count()) - 2,
            aside.size());
}

TEST_F(SessionModel, NothingIsLostOverARandomScript) {
  const unsigned steps = fromSurroundings("INCHWRIGHT_MODEL_STEPS", kSteps);
  std::map<QString, int> done;
  for (unsigned i = 0; i < steps; ++i) {
    step();
    check();
    ++done[did];
    if (HasFailure()) FAIL() << "seed " << seed << ", step " << i << ": " << qPrintable(did);
    // What somebody clears away now and then, so that a long run does not drown in copies.
    if (disk.size() > 40) {
      for (auto at = disk.begin(); at != disk.end();) {
        if (!at->first.contains(u'(')) {
          ++at;
          continue;
        }
        QFile::remove(at->first);
        at = disk.erase(at);
      }
    }
  }
  // Each kind of step came about.
  EXPECT_EQ(done.size(), 13u);
}

}  // namespace
}  // namespace inchwright::app
