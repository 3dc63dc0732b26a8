// Setups with collisions put in by hand of a random draw: each is found, by as much as it was put
// in, and nothing else is.

#include <gtest/gtest.h>

#include <random>

#include "tests/core/checks/held_plate.h"

namespace inchwright::test {
namespace {

/// A plate 6 × 4 × 1 in with a grid of holes that keep well clear of everything, and a list of what
/// has been put wrong. Figures in ten-thousandths of an inch.
class WrongSetup {
 public:
  explicit WrongSetup(unsigned seed) : random_(seed), plate_("6", "4", "1") {
    plate_.setup.jaw = Side::front;
    plate_.setup.stop = Side::left;
    plate_.vice("1 1/2");
    plate_.job.machine.travel[0] = lettered("5 1/4");
    plate_.job.machine.quill = lettered("3");
    for (int column = 0; column < 5; ++column) {
      for (int row = 0; row < 3; ++row) {
        const Id id = "G" + std::to_string(column) + std::to_string(row);
        plate_.hole(id, decimal(10'000 * (column + 1)), decimal(10'000 * (row + 1)), "1/4");
      }
    }
    plate_.parallel(Jaw::fixed, "1/8", "1", "0");
    plate_.parallel(Jaw::moving, "1/8", "1", "0");
    plate_.job.shop.cutters.emplace();
    for (const char* size : {"1/16", "1/8", "3/16", "1/4", "3/8", "1/2"}) {
      OwnedCutter one;
      one.size = lettered(size);
      one.centreCutting = true;
      if (one.size.value == inch("1/8")) one.length = lettered("1/4");
      plate_.job.shop.cutters->push_back(one);
    }
  }

  void wrong() {
    using Kind = void (WrongSetup::*)();
    constexpr Kind kKinds[] = {
        &WrongSetup::parallel,  &WrongSetup::clamp,    &WrongSetup::breaksInto,
        &WrongSetup::breaksOut, &WrongSetup::thinWall, &WrongSetup::through,
        &WrongSetup::grip,      &WrongSetup::travel,   &WrongSetup::noTool,
        &WrongSetup::piece,     &WrongSetup::headroom, &WrongSetup::crossing,
        &WrongSetup::clearOf,   &WrongSetup::stop,     &WrongSetup::jaw,
        &WrongSetup::bed,       &WrongSetup::cutter,   &WrongSetup::corner,
        &WrongSetup::tooDeep,   &WrongSetup::ticked,   &WrongSetup::slotBeside,
        &WrongSetup::slotFloor};
    const std::size_t kind = random_() % std::size(kKinds);
    if (done_[kind]) return;
    done_[kind] = true;
    (this->*kKinds[kind])();
  }

  Lines expected() const {
    Lines sorted = expected_;
    std::sort(sorted.begin(), sorted.end());
    return sorted;
  }
  std::vector<Finding> findings() const { return plate_.findings(); }

 private:
  int draw(int low, int high) {
    return low + static_cast<int>(random_() % unsigned(high - low + 1));
  }
  void expect(const std::string& what, int tenThousandths) {
    expected_.push_back(what + " " + decimal(tenThousandths));
  }

  // A hole keeps 1562.5 about its centre.
  void parallel() {
    const int column = draw(0, 4), row = draw(0, 2), by = draw(2, 60) * 5;
    LaidParallel& one = plate_.parallel(Jaw::fixed, "1/8", "1", "0");
    // Its near edge lies beyond the hole's, nearer by so much.
    one.gap = lettered(decimal(10'000 * (row + 1) + 1'563 - by));
    one.thick = lettered("1/8");
    one.from = lettered(decimal(10'000 * (column + 1) - 2'000));
    one.to = lettered(decimal(10'000 * (column + 1) + 2'000));
    expectHalf("parallel G" + std::to_string(column) + std::to_string(row), by);
  }
  // With half a ten-thousandth that the gap was rounded by.
  void expectHalf(const std::string& what, int by) {
    expect(what, by);
    halves_.push_back(what);
  }

  Obstacle box(int x0, int x1, int y0, int y1) const {
    Obstacle one;
    one.along[0] = {lettered(decimal(x0)), lettered(decimal(x1))};
    one.along[1] = {lettered(decimal(y0)), lettered(decimal(y1))};
    return one;
  }
  void clamp() {
    const int column = draw(0, 3), row = draw(0, 2), by = draw(1, 300);
    const int x = 10'000 * (column + 1) + 1'563 - by, y = 10'000 * (row + 1);
    plate_.setup.held.clamps.push_back(box(x, x + 2'000, y - 2'000, y + 2'000));
    plate_.setup.held.clamps.push_back(box(-5'000, 5'000, 0, 40'000));
    expectHalf("clamp G" + std::to_string(column) + std::to_string(row), by);
    if (done_[kStop]) expected_.push_back("?clamp P");
  }
  void clearOf() {
    const int column = draw(2, 4), row = draw(0, 1), by = draw(1, 300);  // not over N
    const int y = 10'000 * (row + 1) + 1'563 - by, x = 10'000 * (column + 1);
    plate_.setup.held.clearOf.push_back(box(x - 1'000, x + 1'000, y, y + 1'000));
    expectHalf("clear_of G" + std::to_string(column) + std::to_string(row), by);
  }
  void breaksInto() {
    const int wall = draw(-600, 290), row = draw(0, 2);
    plate_.hole("N", decimal(20'000), decimal(10'000 * (row + 1) + 2'187 + wall), "3/16");
    expectHalf("breaks_into G1" + std::to_string(row) + " N", 313 - wall);
  }
  void crossing() {
    // From the back face, blind, under a hole of the last row: its tip so far from it.
    const int left = draw(20, 300), before = draw(0, 3);
    const int column = before < 2 ? before : before + 1;  // not under O
    Drilled& made = plate_.hole("X", decimal(10'000 * (column + 1)), "1/2", "1/8", Face::back);
    // The hole begins 8750 from the back; the point of 1/8 is 375.5 long.
    made.depth = {false, lettered(decimal(8'750 - 375 - left))};
    if (left < 308) expected_.push_back("?breaks_into G" + std::to_string(column) + "2 X");
  }
  void breaksOut() {
    const int out = draw(1, 1'000);
    plate_.hole("O", decimal(30'000), decimal(40'000 - 1'250 + out), "1/4").breaksOut = false;
    expect("breaks_out O", out);
    // It lies in the moving jaw and over its parallel as well.
    expected_.push_back("?jaw O");
    expected_.push_back("?parallel O");
  }
  void thinWall() {
    const int wall = draw(0, 310);
    plate_.hole("W", decimal(60'000 - 1'250 - wall), decimal(5'000), "1/4");
    expectHalf("thin_wall W", 313 - wall);
    halves_.back() = "thin_wall W";
    plate_.job.machine.travel[0] = lettered("6");
    const auto travel = std::find(expected_.begin(), expected_.end(), "?travel");
    if (travel != expected_.end()) expected_.erase(travel);
    done_[7] = true;
  }
  void through() {
    const int over = draw(1, 500);
    // Tip: depth + 751.08 from the face; 9687.5 is allowed.
    plate_.hole("D", decimal(15'000), decimal(15'000), "1/4").depth = {
        false, lettered(decimal(9'687 - 751 + over))};
    expectHalf("breaks_through D", over);
  }
  void grip() {
    if (done_[kJaw]) return;  // it would lower the jaws out of the seat's way
    const int held = draw(200, 3'000);
    plate_.job.shop.vice->jawHeight = lettered(decimal(10'000 + held));
    expectHalf("grip", 3'333 - held);
  }
  void travel() {
    const int less = draw(1, 900);
    plate_.job.machine.travel[0] = lettered(decimal(40'000 - less));
    expected_.push_back("?travel");
  }
  void noTool() {
    Drilled& made = plate_.hole("M", decimal(25'000), decimal(25'000), "1/4");
    made.make = Make::tap;
    made.thread = "M9";
    expected_.push_back("no_tool M");
  }
  void piece() {
    const int lacks = draw(1, 2'000);
    StockPiece one;
    one.name = "short";
    one.size[0] = lettered(decimal(60'000 - lacks));
    plate_.setup.held.pieces.push_back(one);
    expect("stock_too_small", lacks);
  }
  void headroom() {
    const int over = draw(1, 5'000);
    plate_.job.shop.taps = {{"1/4-20 UNC", TapLead::second, lettered(decimal(50'000 + over)), {}}};
    plate_.job.shop.drills.emplace();
    for (const char* text : {"number", "letter"}) {
      plate_.job.shop.drills->push_back({*readDrillSet(text), lettered("2"), {}});
    }
    plate_.job.shop.drills->push_back({*readDrillSet("fractional"), lettered("2"), {}});
    Drilled& made = plate_.hole("H", decimal(35'000), decimal(15'000), "1/4");
    made.make = Make::tap;
    made.thread = "1/4-20 UNC";
    made.depth = {false, lettered("1/4")};
    expect("headroom", over);
  }
  Drilled& seat(const Id& id, int x, int y) {
    Drilled& made = plate_.hole(id, decimal(x), decimal(y), "1/8");
    made.make = Make::counterbore;
    made.seatDiameter = lettered("1/2");
    made.seatDepth = lettered("1/16");
    made.depth = {false, lettered("1/4")};
    return made;
  }
  void stop() {
    const int by = draw(1, 1'000);
    seat("P", 2'813 - by, 25'000);
    expectHalf("stop P", by);
    if (done_[kClamp]) expected_.push_back("?clamp P");  // the other one is on its way
  }
  void jaw() {
    if (done_[kGrip]) return;
    const int by = draw(1, 1'000);
    // Jaws begin half an inch down; a deep seat reaches them.
    seat("J", 45'000, 2'813 - by).seatDepth = lettered("0.9");
    expectHalf("jaw J", by);
  }
  void bed() {
    if (done_[kGrip]) return;  // it would be held well by these
    // A reamer goes 1/8 in below: the parallels are lower than that, the drills' points higher.
    for (LaidParallel& one : *plate_.setup.held.parallels) one.tall = lettered("0.11");
    plate_.job.shop.vice->jawHeight = lettered("0.61");
    plate_.hole("B", decimal(45'000), decimal(15'000), "1/4").make = Make::ream;
    expect("vice_bed B", 150);
    if (done_[kTicked]) expected_.push_back("?vice_bed RM");
    done_[kGrip] = true;
  }

  // Between the holes of the grid, and blind.
  kind::Slot& slot(const Id& id, int x, int y, int width, int depth) {
    Feature feature;
    feature.id = id;
    kind::Slot shape;
    shape.axis = Axis::x;
    shape.width = lettered(decimal(width));
    shape.width->tolerance = lettered("1/4 +1/32 -1/32").tolerance;  // not lettered close
    shape.length = lettered(decimal(4'000));
    shape.depth = {false, lettered(decimal(depth))};
    feature.shape = shape;
    plate_.part.features.push_back(feature);
    plate_.read(Axis::x, "L", id, decimal(x));
    plate_.read(Axis::y, "F", id, decimal(y));
    return *plate_.part.features.back().as<kind::Slot>();
  }
  void cutter() {
    const int over = draw(1, 600);
    slot("SC", 35'000, 25'000, 2'500, 1'000).cutter = lettered(decimal(2'500 + over));
    expect("cutter_too_big SC", over);
  }
  void tooDeep() {
    const int over = draw(1, 2'000);
    slot("SD", 45'000, 25'000, 1'250, 2'500 + over);
    expect("too_deep SD", over);
  }
  void slotFloor() {
    const int over = draw(1, 300);
    slot("SF", 15'000, 25'000, 2'500, 9'687 + over);
    expectHalf("breaks_through SF", over);
  }
  void slotBeside() {
    const int wall = draw(-400, 300);
    slot("SB", 25'000, 6'500, 2'500, 1'000);
    // Beyond its end, which is round.
    plate_.hole("Q", decimal(25'000 + 2'000 + 625 + wall), decimal(6'500), "1/8");
    expectHalf("breaks_into SB Q", 313 - wall);
  }
  void corner() {
    const int by = draw(1, 250);
    struct At {
      const char* id;
      Axis axis;
      int at;
    };
    for (const At& one : {At{"PL", Axis::x, 23'000},
                          {"PR", Axis::x, 27'000},
                          {"PF", Axis::y, 13'500},
                          {"PK", Axis::y, 16'500}}) {
      Feature edge;
      edge.id = one.id;
      edge.shape = kind::Edge{one.axis, std::nullopt};
      plate_.part.features.push_back(edge);
      plate_.read(one.axis, one.axis == Axis::x ? "L" : "F", one.id, decimal(one.at));
    }
    Feature round;
    round.id = "PC";
    kind::Round shape;
    shape.radius = lettered(decimal(313 - by));
    shape.corner = {"PF", "PR"};
    round.shape = shape;
    plate_.part.features.push_back(round);
    GivenOutline pocket;
    pocket.isInner = true;
    pocket.follows = {"PF", "PC", "PR", "PK", "PL"};
    pocket.depth = Depth{false, lettered("1/8")};
    plate_.part.outlines.push_back(pocket);
    expectHalf("corner_too_tight PC", by);
    expected_.push_back("no_tool pocket");
  }
  void ticked() {
    plate_.hole("RM", decimal(15'000), decimal(6'500), "3/16").make = Make::ream;
    MadePlace made;
    made.place = "RM";
    made.setup = "1";
    made.ticks = {"drill 3/16"};
    plate_.part.made.push_back(made);
    expected_.push_back("?drill_at_ream_size RM");
    // A reamer goes further below than the lowest parallels.
    if (plate_.setup.held.parallels->front().tall->value < inch("1/8")) {
      expected_.push_back("?vice_bed RM");
    }
  }

 public:
  const Lines& halves() const { return halves_; }

 private:
  static constexpr std::size_t kClamp = 1, kGrip = 6, kStop = 13, kJaw = 14, kTicked = 19;

  std::mt19937 random_;
  HeldPlate plate_;
  Lines expected_;
  Lines halves_;
  std::array<bool, 22> done_{};
};

std::pair<std::string, int> splitLine(const std::string& line) {
  const std::size_t point = line.rfind('.');
  if (point == std::string::npos) return {line, 0};
  const std::size_t blank = line.rfind(' ');
  return {line.substr(0, blank),
          static_cast<int>(std::lround(std::stod(line.substr(blank)) * 10'000))};
}

// Each finding stands for one expected: the same but for a ten-thousandth of rounding in how it was
// put in. Expected ones that begin with a question mark are of unsaid size.
void expectAll(const WrongSetup& made) {
  Lines found = linesOf(made.findings());
  for (std::string wanted : made.expected()) {
    const bool unsaid = wanted.starts_with("?");
    if (unsaid) wanted = wanted.substr(1);
    const auto [name, by] = splitLine(wanted);
    const auto match = std::find_if(found.begin(), found.end(), [&](const std::string& line) {
      const auto [foundName, foundBy] = splitLine(line);
      if (unsaid) return foundName.starts_with(name);
      return foundName == name && std::abs(foundBy - by) <= 1;
    });
    EXPECT_NE(match, found.end()) << "not found: " << wanted;
    if (match != found.end()) found.erase(match);
  }
  EXPECT_EQ(found, Lines{}) << "found beside";
}

TEST(GeneratedSetups, EveryCollisionIsFoundAndNothingElse) {
  int collisions = 0;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    WrongSetup made(seed);
    const unsigned times = seed % 5;
    for (unsigned i = 0; i < times; ++i) made.wrong();
    SCOPED_TRACE("seed " + std::to_string(seed));
    expectAll(made);
    collisions += static_cast<int>(made.expected().size());
    if (testing::Test::HasFailure()) return;
  }
  EXPECT_GT(collisions, 450);
}

}  // namespace
}  // namespace inchwright::test
