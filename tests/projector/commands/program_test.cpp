// The commands as a person runs them: exit codes, messages and files.
#include <gtest/gtest.h>

#include <QImage>
#include <QtGlobal>
#include <algorithm>
#include <cmath>

#include "calibration/check/hand_check.h"
#include "drafting/piece/piece.h"
#include "projector/cutting/now.h"
#include "projector/cutting/record.h"
#include "projector/frame/laying.h"
#include "tests/projector/commands/program.h"
#include "tests/projector/test_map.h"
#include "tests/projector/test_piece.h"

namespace cowlcast::projector {
namespace {

namespace fs = std::filesystem;
using testing::Ran;
using testing::run_cowlcast;
using testing::text_of;

class Program : public ::testing::Test {
 protected:
  void SetUp() override {
    folder = fs::temp_directory_path() /
             ("cowlcast-" + std::string(::testing::UnitTest::GetInstance()->current_test_info()->name()));
    fs::remove_all(folder);
    fs::create_directories(folder);
    map = testing::map_of({});
    std::ofstream(folder / "table.json") << map.to_json();
    std::ofstream(folder / "piece.json") << drafting::piece_to_json(testing::small_front());
  }
  void TearDown() override { fs::remove_all(folder); }

  Ran run(const std::string& arguments, const std::string& input = "") const {
    const Ran ran = run_cowlcast(folder, arguments, input);
    if (ran.code != 0) {
      EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << "one line: " << ran.err;
      EXPECT_TRUE(ran.err.starts_with("cowlcast: ")) << ran.err;
    }
    return ran;
  }

  fs::path folder;
  calibration::TableMap map;
};

TEST_F(Program, HelpsWithEveryCommand) {
  const Ran help = run("--help");
  EXPECT_EQ(help.code, 0);
  EXPECT_NE(help.out.find("NAME.cowlcast"), std::string::npos) << "a project stands in place of a command";
  for (const char* command : {"sheets", "targets", "screens", "capture", "calibrate", "camera", "check",
                              "locate", "draft", "top", "teach", "frame", "cast", "demo"}) {
    const Ran ran = run(std::string(command) + " --help");
    EXPECT_EQ(ran.code, 0) << command;
    EXPECT_NE(ran.out.find("Example: "), std::string::npos) << command;
  }
}

TEST_F(Program, WithoutCommandAndScreenSaysWhatIsNeeded) {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) qunsetenv(name);
  const Ran ran = run("");
  EXPECT_EQ(ran.code, 2);
  EXPECT_NE(ran.err.find("no screen"), std::string::npos) << ran.err;
}

TEST_F(Program, WrongUsageIsTwo) {
  for (const char* line :
       {"cut", "sheets", "sheets --paper a3 --out x", "sheets --paper a4 --count 0 --out x",
        "sheets --paper a4 --count many --out x", "targets --projector 1920 --out x",
        "draft --base demo --drape long --out x", "draft --base demo --drape 480 --out x --allowance hem",
        "frame --table table.json --piece piece.json --at 1,2 --out f.png",
        "frame --table table.json --piece piece.json --at 1,2,3 --only everything --out f.png",
        "calibrate --projector 1920x1080 --photos . --ruler 240 --out t.json",
        "calibrate --projector 1920x1080 --photos . --span 1,2 --out t.json", "locate", "demo --out"}) {
    const Ran ran = run(line);
    EXPECT_EQ(ran.code, 2) << line << '\n' << ran.err;
    EXPECT_NE(ran.err.find("--help"), std::string::npos) << ran.err;
  }
  EXPECT_FALSE(fs::exists(folder / "x"));
}

TEST_F(Program, MakesSheetsAndTargets) {
  ASSERT_EQ(run("sheets --paper letter --count 2 --out s/deep").code, 0);
  EXPECT_TRUE(text_of(folder / "s/deep/sheets.pdf").starts_with("%PDF"));
  const QImage page((folder / "s/deep/sheet-2.png").string().c_str());
  EXPECT_EQ(page.size(), QSize(3300, 2550));  // 11 x 8.5 in at 300 dpi
  EXPECT_NEAR(page.dotsPerMeterX() * 0.0254, 300.0, 0.1);
  EXPECT_FALSE(fs::exists(folder / "s/deep/sheet-3.png"));
  EXPECT_EQ(run("sheets --paper A4 --count 1 --out s4").code, 0);
  ASSERT_EQ(run("targets --projector 1280X800 --out t").code, 0);
  EXPECT_EQ(QImage((folder / "t/target.png").string().c_str()).size(), QSize(1280, 800));
  EXPECT_EQ(QImage((folder / "t/plain.png").string().c_str()).size(), QSize(1280, 800));
  EXPECT_EQ(run("targets --projector 100x90 --out t2").code, 2);
  EXPECT_FALSE(fs::exists(folder / "t2"));
}

TEST_F(Program, LocatesThereAndBack) {
  const Ran there = run("locate --table table.json --height 1.2", "960 540\n\n  0 0 \r\n1919.25 1079\n");
  ASSERT_EQ(there.code, 0) << there.err;
  const Ran back = run("locate --table table.json --from-mat --height 1.2mm", there.out);
  ASSERT_EQ(back.code, 0);
  std::istringstream lines(back.out);
  for (const Eigen::Vector2d& wanted :
       {Eigen::Vector2d(960, 540), Eigen::Vector2d(0, 0), Eigen::Vector2d(1919.25, 1079)}) {
    double u = 0, v = 0;
    ASSERT_TRUE(lines >> u >> v);
    EXPECT_NEAR(u, wanted.x(), 1e-6);
    EXPECT_NEAR(v, wanted.y(), 1e-6);
  }
  // Against OpenCV's projectPoints on the same optics.
  const Ran one = run("locate --table table.json --from-mat", "123.5 -67.25\n");
  double u = 0, v = 0;
  std::istringstream(one.out) >> u >> v;
  EXPECT_LT((testing::pixel_by_opencv(map, {123.5, -67.25}, 0.0) - Eigen::Vector2d(u, v)).norm(), 1e-6);
}

TEST_F(Program, LocateRefusesALineThatIsNoPointAndSaysWhich) {
  for (const char* bad : {"3", "3 4 5", "a b", "nan 1", "1,2"}) {
    const Ran ran = run("locate --table table.json", std::string("1 2\n") + bad + "\n");
    EXPECT_EQ(ran.code, 3) << bad;
    EXPECT_NE(ran.err.find("Line 2"), std::string::npos) << ran.err;
  }
  EXPECT_EQ(run("locate --table table.json --from-mat", "1e9 1e9\n").code, 3);
  const Ran far = run("locate --table table.json", "1e99 1e99\n");
  EXPECT_EQ(far.code, 3);
  EXPECT_NE(far.err.find("no such pixel"), std::string::npos) << far.err;
  EXPECT_NE(run("locate --table table.json --from-mat", "900 0\n").err.find("lit area"), std::string::npos);
  EXPECT_EQ(run("locate --table table.json", "").code, 0);
}

TEST_F(Program, MendsTheScaleOnceByAReading) {
  map.scale = {"page", 1.0, 1.0, 0.006};
  std::ofstream(folder / "table.json") << map.to_json();
  const Ran drawn = run("check --table table.json --out figure.png");
  ASSERT_EQ(drawn.code, 0) << drawn.err;
  double side = 0.0;
  const size_t at = drawn.out.find("A to B: ");
  ASSERT_NE(at, std::string::npos) << drawn.out;
  side = std::stod(drawn.out.substr(at + 8));
  const std::string tape = std::to_string(side - 2.0);
  const Ran once = run("check --table table.json --tape A,B," + tape + " --refine-scale");
  EXPECT_EQ(once.code, 0) << once.err;
  EXPECT_NE(once.out.find("A2, B2"), std::string::npos) << once.out;
  const std::string mended = text_of(folder / "table.json");
  for (const std::string& again : {"A,B," + tape, "A2,B2," + tape}) {
    const Ran twice = run("check --table table.json --tape " + again + " --refine-scale");
    EXPECT_EQ(twice.code, 3) << twice.out;
    EXPECT_NE(twice.err.find("Light the figure"), std::string::npos) << twice.err;
    EXPECT_EQ(text_of(folder / "table.json"), mended);
  }
  EXPECT_EQ(run("check --table table.json --tape A,B," + tape).code, 3) << "of another figure";
  EXPECT_NE(run("check --table table.json --out figure.png").out.find("A2 to C2"), std::string::npos);
  EXPECT_EQ(run("check --table table.json --tape A2,B2," + std::to_string(side)).code, 0);
  EXPECT_EQ(run("check --table table.json --tape A2,B," + tape).code, 2);
  EXPECT_EQ(run("check --table table.json --tape A2,B2," + tape + " --read-to 500").code, 2);
}

TEST_F(Program, FilesThatAreMissingOrWrongAreNamed) {
  const Ran missing = run("locate --table none.json", "1 2\n");
  EXPECT_EQ(missing.code, 1);
  EXPECT_NE(missing.err.find("none.json"), std::string::npos);
  std::ofstream(folder / "broken.json") << "{\"format\": 3";
  EXPECT_EQ(run("locate --table broken.json", "1 2\n").code, 3);
  EXPECT_EQ(run("locate --table piece.json", "1 2\n").code, 3);
  EXPECT_EQ(run("frame --table table.json --piece table.json --at 0,0,0 --out f.png").code, 3);
  EXPECT_EQ(run("draft --base none.svg --drape 480 --out x").code, 1);
  std::ofstream(folder / "bad.svg") << "<svg/>";
  EXPECT_EQ(run("draft --base bad.svg --drape 480 --out x").code, 3);
  EXPECT_EQ(run("frame --table table.json --piece piece.json --at 0,0,0 --out no/f.png").code, 1);
  EXPECT_EQ(run("calibrate --projector 1920x1080 --photos none --out t.json").code, 1);
  fs::create_directories(folder / "empty");
  EXPECT_EQ(run("calibrate --projector 1920x1080 --photos empty --out t.json").code, 3);
  std::ofstream(folder / "empty/a.jpg") << "no picture";
  EXPECT_EQ(run("calibrate --projector 1920x1080 --photos empty --out t.json").code, 3);
  for (const char* place : {"--out no/t.json", "--out t.json --error-map no/e.png"}) {
    const Ran nowhere = run(std::string("calibrate --projector 1920x1080 --photos empty ") + place);
    EXPECT_EQ(nowhere.code, 1) << "told before the photographs are read: " << nowhere.err;
    EXPECT_NE(nowhere.err.find("there is no folder"), std::string::npos) << nowhere.err;
  }
  EXPECT_FALSE(fs::exists(folder / "t.json"));
}

TEST_F(Program, DraftsFromTheDemoAndFromItsOwnFile) {
  const Ran ran = run("draft --base demo --drape 19in --neckline-drop 5cm --out c");
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_FALSE(ran.out.empty());
  const drafting::Piece front = drafting::piece_from_json(text_of(folder / "c/front.json"));
  ASSERT_TRUE(front.cowl);
  EXPECT_NEAR(front.cowl->drape, 482.6, 1e-6);
  EXPECT_NEAR(front.points.at("neck-point").x(), 241.3, 1e-6);
  EXPECT_TRUE(text_of(folder / "c/front.svg").find("<svg") != std::string::npos);
  EXPECT_EQ(run("draft --base c/base.json --drape 420 --out d").code, 0);
  EXPECT_EQ(run("draft --base demo --drape 30 --out e").code, 3);
  EXPECT_FALSE(fs::exists(folder / "e"));
}

TEST_F(Program, FramesTheCutLineAlone) {
  ASSERT_EQ(
      run("frame --table table.json --piece piece.json --at -60,-120,15 --only cut-line --out f.png").code,
      0);
  const QImage frame((folder / "f.png").string().c_str());
  ASSERT_EQ(frame.size(), QSize(1920, 1080));
  const Laying laying{-60, -120, 15 * 3.14159265358979323846 / 180};
  for (const Point& corner : testing::small_front().cut_line) {
    const Eigen::Vector2d at = testing::pixel_by_opencv(map, mat_from_piece(laying, corner), 0.0);
    const QRgb light =
        frame.pixel(static_cast<int>(std::lround(at.x())), static_cast<int>(std::lround(at.y())));
    EXPECT_GT(qRed(light), 100);
    EXPECT_EQ(qRed(light), qBlue(light));
  }
  EXPECT_EQ(qRed(frame.pixel(5, 5)), 0);
}

TEST_F(Program, FramesInFullWithAndWithoutABladesPath) {
  EXPECT_EQ(
      run("frame --table table.json --piece piece.json --at 0,0,0 --cloth navy --height 1.5 --out f.png")
          .code,
      0);
  EXPECT_EQ(
      run("frame --table table.json --piece piece.json --at 0,0,0 --stroke 2 --hand left --out g.png").code,
      0);
  EXPECT_NE(text_of(folder / "f.png"), text_of(folder / "g.png"));
  EXPECT_EQ(
      run("frame --table table.json --piece piece.json --at 0,0,0 --stroke 2 --band 30 --out b.png").code, 0);
  EXPECT_EQ(run("frame --table table.json --piece piece.json --at 0,0,0 --stroke 99 --out h.png").code, 3);
}

TEST_F(Program, CautionsWhereTheSlantOfTheLightIsLittleKnown) {
  const std::string frame = "frame --table table.json --piece piece.json --at 0,0,0 --out f.png --height ";
  EXPECT_EQ(run(frame + "5").err.find("slants"), std::string::npos);
  calibration::TableMap unsure = map;
  unsure.error = {{-500, -300}, 1000.0, 2, 2, {0.2, 0.2, 0.2, 0.2}, {0.2, 0.2, 0.2, 0.2}};
  std::ofstream(folder / "table.json") << unsure.to_json();
  EXPECT_EQ(run(frame + "1").err.find("slants"), std::string::npos);
  const Ran ran = run(frame + "5");
  EXPECT_EQ(ran.code, 0);
  EXPECT_NE(ran.err.find("on cloth 5.0 mm high lines may be off by up to 1.02 mm"), std::string::npos)
      << ran.err;
  EXPECT_NE(ran.err.find("--lamp-height"), std::string::npos);
}

TEST_F(Program, TakesNoSizesThatCannotBe) {
  const std::string frame = "frame --table table.json --piece piece.json --at 0,0,0 ";
  for (const char* wrong :
       {"--blade 5 --out f.png", "--blade 2m --out f.png", "--band 5m --out f.png", "--height 60 --out f.png",
        "--height -1 --out f.png", "--cloth pink --out f.png", "--cloth navy,,white --out f.png",
        "--out f.jpg", "--out f", "--stroke 0 --out f.png"}) {
    const Ran ran = run(frame + wrong);
    EXPECT_EQ(ran.code, 2) << wrong;
    EXPECT_NE(ran.err.find("See: cowlcast frame --help"), std::string::npos) << ran.err;
  }
  EXPECT_NE(run(frame + "--out f.jpg").err.find(".png"), std::string::npos);
  EXPECT_NE(run(frame + "--blade 5 --out f.png").err.find("from 10 to 100 mm"), std::string::npos);
  EXPECT_EQ(run("cast --table table.json --piece piece.json --mat 900").code, 2);
  EXPECT_FALSE(fs::exists(folder / "f.png"));
  // A blade that this cloth is too thick for: a job refused.
  EXPECT_EQ(run(frame + "--stroke 1 --blade 10 --height 6 --out f.png").code, 3);
}

TEST_F(Program, AdvisesADimRoomForDarkClothAlone) {
  const std::string frame = "frame --table table.json --piece piece.json --at 0,0,0 --out F.PNG --cloth ";
  const Ran navy = run(frame + "Navy"), pattern = run(frame + "navy,white"), white = run(frame + "white");
  EXPECT_EQ(navy.code, 0);
  EXPECT_NE(navy.out.find("Dim the room"), std::string::npos) << navy.out;
  EXPECT_NE(pattern.out.find("Dim the room"), std::string::npos) << pattern.out;
  EXPECT_EQ(white.out.find("Dim the room"), std::string::npos) << white.out;
}

TEST_F(Program, DoesNotGoOnWithTheRecordOfAnotherPieceOfTheSameName) {
  const drafting::Piece piece = testing::small_front();
  Record record;
  record.piece = piece.name;
  record.table_made_at = map.made_at;
  record.strokes = 6;
  record.cut = 3;
  record.shape = "0123456789abcdef";
  const std::string text = record_to_json(record);
  std::ofstream(folder / "r.json") << text;
  const Ran other = run("cast --table table.json --piece piece.json --record r.json --anyway");
  EXPECT_EQ(other.code, 3);
  EXPECT_NE(other.err.find("3 of 6 strokes are cut of a small front with another cut line"),
            std::string::npos)
      << other.err;
  EXPECT_NE(other.err.find("another --record file"), std::string::npos);
  EXPECT_EQ(text_of(folder / "r.json"), text) << "refused, so untouched";
}

TEST_F(Program, DoesNotMoveAPieceThatIsHalfCut) {
  const drafting::Piece piece = testing::small_front();
  Record record;
  record.piece = piece.name;
  record.table_made_at = map.made_at;
  record.shape = shape_of(piece);
  record.strokes = 5;
  record.cut = 1;
  const std::string text = record_to_json(record);
  std::ofstream(folder / "r.json") << text;
  const std::string cast = "cast --table table.json --piece piece.json --record r.json --anyway ";
  for (const char* place : {"--at 40,0,0", "--mirrored", "--at 0,0,10"}) {
    const Ran moved = run(cast + place);
    EXPECT_EQ(moved.code, 3) << place;
    EXPECT_NE(moved.err.find("1 of 5 strokes are cut and the piece lies at 0.00,0.00,0.000"),
              std::string::npos)
        << moved.err;
  }
  EXPECT_EQ(text_of(folder / "r.json"), text);
}

TEST_F(Program, DoesNotCutByATableWhoseCheckDidNotAgree) {
  map.made_at = present_time();
  std::ofstream(folder / "table.json") << map.to_json();
  const std::string frame = "frame --table table.json --piece piece.json --at 0,0,0 --out f.png";
  EXPECT_EQ(run(frame).err.find("check by hand"), std::string::npos);
  const calibration::CheckFigure figure = calibration::check_figure(map);
  const double drawn = (figure.at('A') - figure.at('C')).norm();
  EXPECT_EQ(run("check --table table.json --tape A,C," + std::to_string(drawn + 9.0)).code, 3);
  const Ran cast = run("cast --table table.json --piece piece.json");
  EXPECT_EQ(cast.code, 3);
  EXPECT_NE(cast.err.find("from A to C the tape read"), std::string::npos) << cast.err;
  EXPECT_NE(cast.err.find("--anyway"), std::string::npos) << cast.err;
  const Ran drawing = run(frame);
  EXPECT_EQ(drawing.code, 0);
  EXPECT_NE(drawing.err.find("Caution: a check by hand did not agree"), std::string::npos) << drawing.err;
  EXPECT_EQ(run("check --table table.json --tape A,C," + std::to_string(drawn)).code, 0);
  EXPECT_EQ(run(frame).err.find("check by hand"), std::string::npos) << "the last one agreed";
}

TEST_F(Program, SaysWhenAPieceLiesOutsideTheLight) {
  const Ran partly = run_cowlcast(
      folder, "frame --table table.json --piece piece.json --at 560,0,0 --only cut-line --out f.png");
  EXPECT_EQ(partly.code, 0);
  EXPECT_NE(partly.err.find("outside the light, by up to"), std::string::npos) << partly.err;
  EXPECT_TRUE(fs::exists(folder / "f.png"));
  const Ran wholly = run("frame --table table.json --piece piece.json --at 5000,0,0 --out g.png");
  EXPECT_EQ(wholly.code, 3);
  EXPECT_NE(wholly.err.find("--at"), std::string::npos);
  EXPECT_FALSE(fs::exists(folder / "g.png"));
}

}  // namespace
}  // namespace cowlcast::projector
