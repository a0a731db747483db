// `cowlcast top` as a person runs it: its files, what it says, what it refuses.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "drafting/block/block.h"
#include "drafting/geometry/polyline.h"
#include "tests/projector/commands/program.h"

namespace cowlcast::projector {
namespace {

namespace fs = std::filesystem;
using drafting::Piece;
using testing::Ran;
using testing::text_of;

class TopProgram : public ::testing::Test {
 protected:
  void SetUp() override {
    folder = fs::temp_directory_path() /
             ("cowlcast-top-" + std::string(::testing::UnitTest::GetInstance()->current_test_info()->name()));
    fs::remove_all(folder);
    fs::create_directories(folder);
  }
  void TearDown() override { fs::remove_all(folder); }

  Ran run(const std::string& arguments) const {
    const Ran ran = testing::run_cowlcast(folder, "top " + arguments);
    if (ran.code != 0) {
      EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << "one line: " << ran.err;
      EXPECT_TRUE(ran.err.starts_with("cowlcast: ")) << ran.err;
    }
    return ran;
  }
  Piece piece(const std::string& name) const { return drafting::piece_from_json(text_of(folder / name)); }
  static bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
  }

  fs::path folder;
};

int count_of(const std::string& text, const std::string& words) {
  int count = 0;
  for (size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) ++count;
  return count;
}

TEST_F(TopProgram, WritesEveryFileOfTheTop) {
  const Ran ran = run("--base demo --drape 480 --inner-panel 13cm --separate-facing --out t");
  ASSERT_EQ(ran.code, 0) << ran.err;
  for (const char* name : {"cowl-front", "cowl-facing", "back", "inner-panel"}) {
    EXPECT_GT(piece("t/" + std::string(name) + ".json").cut_line.size(), 4u) << name;
    EXPECT_TRUE(says(text_of(folder / "t" / (std::string(name) + ".svg")), "<svg")) << name;
  }
  for (const char* name : {"top.pdf", "record.pdf", "handout.pdf"})
    EXPECT_TRUE(text_of(folder / "t" / name).starts_with("%PDF")) << name;
  const std::string dxf = text_of(folder / "t/top.dxf");
  EXPECT_EQ(count_of(dxf, "\nBLOCK\n"), 4);  // one block a piece: ASTM D6673-10
  EXPECT_TRUE(says(text_of(folder / "t/opening.svg"), "<animate"));
  EXPECT_EQ(count_of(text_of(folder / "t/steps.svg"), "<g id=\"step-"), 8);
  EXPECT_TRUE(says(text_of(folder / "t/hang.svg"), "collar bone"));
  EXPECT_TRUE(says(text_of(folder / "t/record.txt"), "clear elastic"));
  EXPECT_FALSE(says(text_of(folder / "t/record.txt"), "DOES NOT WALK"));
  for (const char* seam : {"shoulder: ", "side seam: ", "inner panel armhole: ", "facing: "})
    EXPECT_TRUE(says(ran.out, seam)) << ran.out;
  EXPECT_TRUE(says(ran.out, "what works"));
  EXPECT_NEAR(piece("t/cowl-front.json").points.at("neck-point").x(), 240.0, 1e-6);
}

TEST_F(TopProgram, LeavesOutWhatIsNotAskedFor) {
  ASSERT_EQ(run("--base demo --drape 480 --out t").code, 0);
  EXPECT_FALSE(fs::exists(folder / "t/inner-panel.json"));
  EXPECT_FALSE(fs::exists(folder / "t/cowl-facing.json"));
  EXPECT_TRUE(drafting::has_edge(piece("t/cowl-front.json"), "facing-edge"));
}

TEST_F(TopProgram, HangsAsDeepAsAsked) {
  ASSERT_EQ(run("--base demo --hang 17cm --out t").code, 0);
  const double length = piece("t/cowl-front.json").cowl->drape;
  const double span = 2.0 * drafting::block_front(drafting::demo_measures()).points.at("neck-point").x();
  // A chain of half length s and sag h has a = (s^2 - h^2) / 2h, and half its span is
  // a asinh(s / a): the catenary, any handbook of mechanics.
  const double s = 0.5 * length, h = 170.0, a = (s * s - h * h) / (2.0 * h);
  EXPECT_NEAR(2.0 * a * std::asinh(s / a), span, 1e-6);
  const Ran deep = run("--base demo --hang 90cm --out d");
  EXPECT_EQ(deep.code, 3);
  EXPECT_TRUE(says(deep.err, "mm deep")) << deep.err;
}

TEST_F(TopProgram, WeighsSetsAndPlacesTheOpenings) {
  ASSERT_EQ(run("--base demo --drape 440 --weight high --out h").code, 0);
  ASSERT_EQ(run("--base demo --drape 440 --weight low --out l").code, 0);
  const auto high = piece("h/cowl-front.json").cowl->hinge_angles;
  const auto low = piece("l/cowl-front.json").cowl->hinge_angles;
  EXPECT_GT(high.front(), high.back());
  EXPECT_LT(low.front(), low.back());
  ASSERT_EQ(run("--base demo --drape 480 --openings 15,16,17 --out s").code, 0);
  const auto set = piece("s/cowl-front.json").cowl->hinge_angles;
  for (size_t i = 0; i < 3; ++i)
    EXPECT_NEAR(set.at(i) * 180.0 / std::numbers::pi, 15.0 + static_cast<double>(i), 1e-6);
  const Ran far = run("--base demo --drape 480 --openings 30,30,30 --out n");
  EXPECT_EQ(far.code, 3);
  EXPECT_TRUE(says(far.err, "nearest that work")) << far.err;
  ASSERT_EQ(run("--base demo --drape 440 --slash 7cm,shoulder,0.4 --slash 110,armhole,0.5 --out p").code, 0);
  const Piece placed = piece("p/cowl-front.json");
  ASSERT_EQ(placed.cowl->slash_lines.size(), 2u);
  const auto& starts = placed.cowl->slash_lines;
  EXPECT_NEAR(starts[0].from.y() - starts[1].from.y(), 40.0, 1e-6);
}

TEST_F(TopProgram, BiasTackUpAndACowlInTheBack) {
  const Ran ran =
      run("--base demo --drape 480 --bias --trial-hang 12 --tack-up 6cm --back-cowl 300 --separate-facing "
          "--paper one --out t");
  ASSERT_EQ(ran.code, 0) << ran.err;
  const Piece front = piece("t/cowl-front.json"), back = piece("t/cowl-back.json");
  ASSERT_TRUE(front.grain && front.mirror);
  const Eigen::Vector2d way = front.grain->to - front.grain->from;
  EXPECT_NEAR(way.x(), way.y(), 1e-6);
  EXPECT_NEAR(back.points.at("neck-point").x(), 150.0, 1e-6);
  EXPECT_NEAR(drafting::length(drafting::edge_of(front, "side-seam").points) -
                  drafting::length(drafting::edge_of(back, "side-seam").points),
              60.0, 1e-3);
  EXPECT_EQ(std::count_if(front.notches.begin(), front.notches.end(),
                          [](const auto& notch) { return notch.name == "tack"; }),
            2);
  EXPECT_TRUE(fs::exists(folder / "t/cowl-back-facing.json"));
  EXPECT_TRUE(fs::exists(folder / "t/back-steps.svg"));
  EXPECT_TRUE(says(ran.out, "back facing: ")) << ran.out;
  EXPECT_FALSE(says(text_of(folder / "t/record.txt"), "clear elastic"));
}

TEST_F(TopProgram, ATopThatDoesNotWalkNeedsAnExplicitYes) {
  drafting::BodyMeasures other = drafting::demo_measures();
  other.shoulder_length += 4.0;
  std::ofstream(folder / "back.json") << drafting::piece_to_json(drafting::block_back(other));
  const Ran no = run("--base demo --back back.json --drape 480 --out t");
  EXPECT_EQ(no.code, 3);
  EXPECT_TRUE(says(no.out, "DOES NOT WALK")) << no.out;
  EXPECT_TRUE(says(no.err, "shoulder")) << no.err;
  EXPECT_TRUE(says(no.err, "--cut-anyway")) << no.err;
  EXPECT_FALSE(fs::exists(folder / "t"));
  EXPECT_EQ(run("--base demo --back back.json --drape 480 --cut-anyway --out t").code, 0);
  EXPECT_TRUE(says(text_of(folder / "t/record.txt"), "DOES NOT WALK"));
}

TEST_F(TopProgram, CarriesPiecesOverUnchanged) {
  Piece sleeve = drafting::block_front(drafting::demo_measures());
  sleeve.name = "Back";  // the same file name as the top's own back
  std::ofstream(folder / "sleeve.json") << drafting::piece_to_json(sleeve);
  ASSERT_EQ(run("--base demo --drape 480 --carry sleeve.json --out t").code, 0);
  EXPECT_TRUE(drafting::has_edge(piece("t/back.json"), "centre-back"));
  EXPECT_EQ(drafting::piece_to_json(piece("t/back-2.json")), text_of(folder / "sleeve.json"));
}

TEST_F(TopProgram, RangesAreRightAtBothEnds) {
  const Ran ran = run("--base demo --ranges --neckline-drop 40 --max-swing 12");
  ASSERT_EQ(ran.code, 0) << ran.err;
  double least = 0, most = 0;
  const size_t at = ran.out.find("3 slash lines: ");
  ASSERT_NE(at, std::string::npos) << ran.out;
  ASSERT_EQ(std::sscanf(ran.out.c_str() + at, "3 slash lines: drape %lf to %lf", &least, &most), 2);
  const auto code = [&](double drape) {
    return run("--base demo --neckline-drop 40 --max-swing 12 --out r --drape " + std::to_string(drape)).code;
  };
  EXPECT_EQ(code(least), 0);
  EXPECT_EQ(code(most), 0);
  EXPECT_EQ(code(least - 0.5), 3);
  EXPECT_EQ(code(most + 0.5), 3);
}

TEST_F(TopProgram, PrintsOnThePaperAsked) {
  // A4 by ISO 216 is 210 x 297 mm, A0 841 x 1189 mm; Letter is 8.5 x 11 in. PDF units: 1/72 in.
  const std::pair<const char*, const char*> papers[] = {
      {"a4", "/MediaBox [ 0 0 595"}, {"letter", "/MediaBox [ 0 0 612"}, {"a0", "/MediaBox [ 0 0 2383"}};
  for (const auto& [paper, box] : papers) {
    ASSERT_EQ(run("--base demo --drape 480 --out t --paper " + std::string(paper)).code, 0);
    EXPECT_TRUE(says(text_of(folder / "t/top.pdf"), box)) << paper;
  }
}

TEST_F(TopProgram, WrongUsageIsTwoAndBadBasesAreNamed) {
  for (const char* line :
       {"--base demo --out t", "--base demo --drape 480", "--base demo --drape 480 --hang 90 --out t",
        "--base demo --drape 480 --weight odd --out t", "--base demo --drape 480 --slash 70 --out t",
        "--base demo --drape 480 --openings a,b --out t", "--base demo --drape 480 --paper a3 --out t",
        "--base demo --drape 480 --body 1,2 --out t", "--base demo --drape 480 --trial-hang 9 --out t",
        "--base none.svg --drape 480 --out t"}) {
    const Ran ran = run(line);
    EXPECT_EQ(ran.code, 2) << line << '\n' << ran.err;
    EXPECT_TRUE(says(ran.err, "--help")) << ran.err;
  }
  EXPECT_EQ(run("--base none.svg --back demo --drape 480 --out t").code, 1);
  EXPECT_EQ(run("--base demo --drape 480 --weight 2,1 --out t").code, 3);
  EXPECT_EQ(run("--base demo --drape 480 --inner-panel 600 --out t").code, 3);
  EXPECT_EQ(run("--base demo --drape 480 --carry none.json --out t").code, 1);
  EXPECT_FALSE(fs::exists(folder / "t"));
  ASSERT_EQ(run("--base demo --drape 480 --out t").code, 0);
  const Ran twice = run("--base t/cowl-front.json --back demo --drape 480 --out u");
  EXPECT_EQ(twice.code, 3);
  EXPECT_TRUE(says(twice.err, "is a cowl already")) << twice.err;
  EXPECT_EQ(run("--base demo --back t/cowl-front.json --drape 480 --out u").code, 3);
  EXPECT_EQ(run("--base demo --back t/back.json --drape 480 --out u").code, 0);
}

TEST_F(TopProgram, DraftsFromASizeOrABodyAndSaysTheBasesSize) {
  const Ran sized = run("--size 12 --drape 480 --out s");
  ASSERT_EQ(sized.code, 0) << sized.err;
  // ASTM D5585-11e1, Table 1: size 12 has a bust of 38 3/4 in, 98.4 cm.
  EXPECT_TRUE(says(sized.out, "bust 98.4 cm")) << sized.out;
  EXPECT_TRUE(says(sized.out, "across from underarm to underarm")) << sized.out;
  EXPECT_TRUE(fs::exists(folder / "s/hang.svg"));
  const Ran body = run("--body bust=101cm,neck=38cm,ease=0 --drape 480 --out b");
  ASSERT_EQ(body.code, 0) << body.err;
  EXPECT_TRUE(says(body.out, "50.5 cm (19.9 in) across")) << body.out;
  EXPECT_EQ(run("--size 9 --drape 480 --out t").code, 2);
  EXPECT_EQ(run("--body neck=38cm --drape 480 --out t").code, 2);
  EXPECT_EQ(run("--base demo --size 8 --drape 480 --out t").code, 2);
  const Ran absurd = run("--body bust=92 --drape 480 --out t");
  EXPECT_EQ(absurd.code, 3);
  EXPECT_TRUE(says(absurd.err, "bust girth of 92 mm cannot be right")) << absurd.err;
  EXPECT_FALSE(fs::exists(folder / "t"));
}

TEST_F(TopProgram, ShowsHowFarEachSlashLineOpens) {
  const Ran ran = run("--base demo --ranges --drape 480");
  ASSERT_EQ(ran.code, 0) << ran.err;
  double drafted = 0, least = 0, most = 0;
  const size_t at = ran.out.find("degrees: ");
  ASSERT_NE(at, std::string::npos) << ran.out;
  ASSERT_EQ(std::sscanf(ran.out.c_str() + at, "degrees: %lf (%lf to %lf)", &drafted, &least, &most), 3);
  EXPECT_LT(least, drafted);
  EXPECT_GT(most, drafted);
}

TEST_F(TopProgram, TakesFinishesCornersAndNotchesAndSaysWhatIsLeftOver) {
  ASSERT_EQ(run("--base demo --drape 480 --separate-facing --out t").code, 0);
  const Ran ran =
      run("--base demo --drape 480 --inner-panel 13cm --inner-panel-finish elastic --arm-finish binding "
          "--notch vee "
          "--corner shoulder/armhole=mirrored --corner side-seam/armhole=squared --out t");
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_TRUE(says(ran.err, "not of this top")) << ran.err;
  EXPECT_TRUE(says(ran.err, "cowl-facing.json")) << ran.err;
  EXPECT_FALSE(says(ran.err, "cowl-front.json")) << ran.err;
  EXPECT_TRUE(says(text_of(folder / "t/record.txt"), "elastic to cut"));
  EXPECT_TRUE(says(text_of(folder / "t/record.txt"), "binding to cut"));
  const Piece front = piece("t/cowl-front.json");
  EXPECT_TRUE(front.points.contains("drill-panel-hem"));
  EXPECT_TRUE(std::any_of(front.notches.begin(), front.notches.end(),
                          [](const auto& notch) { return notch.form == drafting::NotchForm::vee; }));
  EXPECT_EQ(run("--base demo --drape 480 --corner shoulder/sleeve=mitred --out u").code, 2);
  EXPECT_EQ(run("--base demo --drape 480 --corner camisole-hem/side-seam=mitred --out u").code, 3);
}

TEST_F(TopProgram, TakesDrillMarksAndSlashLinesFromTheMaker) {
  ASSERT_EQ(run("--base demo --drape 480 --drill pocket,80,20cm --drill pocket,60,180 --out t").code, 0);
  const Piece front = piece("t/cowl-front.json");
  EXPECT_TRUE(front.points.contains("drill-pocket") && front.points.contains("drill-pocket-2"));
  EXPECT_TRUE(says(text_of(folder / "t/cowl-front.svg"), "pocket"));
  EXPECT_EQ(run("--base demo --drape 480 --drill pocket,80 --out u").code, 2);
  const Ran outside = run("--base demo --drape 480 --drill pocket,80cm,100 --out u");
  EXPECT_EQ(outside.code, 3);
  EXPECT_TRUE(says(outside.err, "outside the base front, 800 mm out")) << outside.err;

  std::string svg = text_of(fs::path(COWLCAST_DATA_DIR) / "demo-base.svg");
  svg.replace(svg.find("<circle"), 0, "<path id=\"slash-1\" d=\"M 20 300 L 182.024 162.254\"/>");
  std::ofstream(folder / "mine.svg") << svg;
  const Ran drawn = run("--base mine.svg --back demo --drape 400 --out v");
  ASSERT_EQ(drawn.code, 0) << drawn.err;
  EXPECT_TRUE(says(drawn.out, "1, as drawn in mine.svg")) << drawn.out;
  EXPECT_EQ(piece("v/cowl-front.json").cowl->slash_lines.size(), 1u);
  ASSERT_EQ(run("--base mine.svg --back demo --drape 400 --slashes 4 --out w").code, 0);
  EXPECT_EQ(piece("w/cowl-front.json").cowl->slash_lines.size(), 4u);
}

TEST_F(TopProgram, DraftRefusesAnAllowanceThatNoEdgeCanHave) {
  const auto draft = [&](const std::string& arguments) {
    return testing::run_cowlcast(folder, "draft --base demo --drape 480 --out d " + arguments);
  };
  const Ran absent = draft("--allowance neckline=10");  // faced in one, the front has no neckline
  EXPECT_EQ(absent.code, 3);
  EXPECT_TRUE(says(absent.err, "hem, side-seam, armhole, shoulder, facing-shoulder, facing-edge"))
      << absent.err;
  for (const char* wrong : {"hemline=10", "hem=-3", "hem=101", "hem", "cowl-edge=5"})
    EXPECT_EQ(draft("--allowance " + std::string(wrong)).code, 2) << wrong;
  EXPECT_TRUE(says(draft("--allowance hem=-3").err, "0 or more"));
  const Ran wide = draft("--allowance armhole=90");
  EXPECT_EQ(wide.code, 3);
  EXPECT_TRUE(says(wide.err, "curves too tightly")) << wide.err;
  EXPECT_FALSE(fs::exists(folder / "d"));
  for (const char* never :
       {"--facing 300", "--max-swing 61", "--slashes 7", "--cloth-width 100", "--notch hole"})
    EXPECT_EQ(draft(never).code, 2) << never;
  const Ran good = draft("--allowance shoulder=15");
  ASSERT_EQ(good.code, 0) << good.err;
  EXPECT_TRUE(says(good.out, "front.json, base.json and front.svg in d")) << good.out;
  const Piece front = piece("d/front.json");
  for (const char* role : {"shoulder", "facing-shoulder"}) {  // caught in one seam
    const auto& line = drafting::edge_of(front, role).points;
    const auto middle = drafting::point_at(line, 0.5 * drafting::length(line));
    EXPECT_NEAR(drafting::distance_to_outline(front.cut_line, middle), 15.0, 0.05) << role;
  }
}

TEST_F(TopProgram, SaysWhatAFileIsThatIsNoBase) {
  const auto refused = [&](const std::string& name, const std::string& bytes, const char* words) {
    std::ofstream(folder / name, std::ios::binary) << bytes;
    const Ran ran = testing::run_cowlcast(folder, "draft --base " + name + " --drape 480 --out d");
    EXPECT_EQ(ran.code, 3) << name;
    EXPECT_TRUE(says(ran.err, words)) << ran.err;
  };
  refused("photo.svg", "\x89PNG\r\n", "is a picture");
  refused("page.svg", "%PDF-1.5", "is a PDF");
  refused("table.json", "{\"format\":\"cowlcast table map\"}", "is a calibrated table");
  refused("back.json", drafting::piece_to_json(drafting::block_back(drafting::demo_measures())),
          "has no centre-front edge");
  Piece half = drafting::block_front(drafting::demo_measures());
  for (auto& edge : half.edges)
    for (auto& point : edge.points) point *= 0.5;
  for (auto& point : half.seam_line) point *= 0.5;
  for (auto& [name, point] : half.points) point *= 0.5;
  std::ofstream(folder / "half.json") << drafting::piece_to_json(half);
  const Ran ran =
      testing::run_cowlcast(folder, "draft --base half.json --drape 240 --neckline-drop 30 --out d");
  EXPECT_TRUE(says(ran.err, "Caution: ")) << ran.err;
  EXPECT_TRUE(says(ran.err, "fits hardly any body")) << ran.err;
}

TEST_F(TopProgram, TeachWritesEachStepAsAPicture) {
  const Ran ran =
      testing::run_cowlcast(folder, "teach --base demo --drape 480 --picture-size 640x400 --pictures lesson");
  ASSERT_EQ(ran.code, 0) << ran.err;
  std::set<std::string> different;
  for (const char* name : {"step-1", "step-2", "step-3", "step-4", "step-5", "step-6", "step-7", "step-8",
                           "opening-00", "opening-25", "opening-50", "opening-75"}) {
    const std::string bytes = text_of(folder / "lesson" / (std::string(name) + ".png"));
    EXPECT_TRUE(bytes.starts_with("\x89PNG")) << name;
    different.insert(bytes);
  }
  EXPECT_EQ(different.size(), 12u);
  EXPECT_EQ(testing::run_cowlcast(folder, "teach --base demo --picture-size 10x10 --pictures p").code, 2);
  EXPECT_EQ(testing::run_cowlcast(folder, "teach --base demo --table none.json --pictures p").code, 1);
}

}  // namespace
}  // namespace cowlcast::projector
