#include "drafting/intake/svg_base.h"

#include <filesystem>
#include <fstream>
#include <sstream>

#include "drafting/block/sizes.h"
#include "drafting/cowl/cowl_front.h"
#include "drafting/piece/base_size.h"
#include "tests/drafting/support.h"

namespace cowlcast::drafting {
namespace {

/// A small base in mm; each edge may be replaced to break it.
struct Sheet {
  std::string size = "width=\"300mm\" height=\"700mm\" viewBox=\"0 0 300 700\"";
  std::string centre = "M20 104V660", neckline = "M86 20C70 60 60 104 20 104", shoulder = "M86 20L196 62",
              armhole = "M196 62C183 95 181 123 181 164S214 232 256 232", side = "M256 232L262 660",
              hem = "M20 660H262", more;
  std::string before = "<g>", after = "</g>";

  std::string text() const {
    const auto path = [](const char* id, const std::string& d) {
      return d.empty() ? std::string() : "<path id=\"" + std::string(id) + "\" d=\"" + d + "\"/>";
    };
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + ">" + before + path("centre-front", centre) +
           path("neckline", neckline) + path("shoulder", shoulder) + path("armhole", armhole) +
           path("side-seam", side) + path("hem", hem) + more + after + "</svg>";
  }
};

std::string demo_text(const char* name = "demo-base.svg") {
  std::ifstream file(std::filesystem::path(COWLCAST_DATA_DIR) / name);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

double worst_difference(const Piece& a, const Piece& b) {
  double worst = 0.0;
  for (const Point& p : a.seam_line) worst = std::max(worst, distance_to_outline(b.seam_line, p));
  for (const Point& p : b.seam_line) worst = std::max(worst, distance_to_outline(a.seam_line, p));
  return worst;
}

TEST(SvgBase, ReadsTheDemoBase) {
  const Piece base = base_front_from_svg(demo_text());
  EXPECT_NE(demo_text().find("invented for this demo"), std::string::npos);
  EXPECT_EQ(edge_of(base, "centre-front").points.back(), Point(0, 0));
  ASSERT_EQ(base.notches.size(), 1u);
  EXPECT_GT(signed_area(base.seam_line), 0.0);
  // The drawings and the program's own demo are one and the same, and walk.
  const Piece own = block_front(demo_measures()), own_back = block_back(demo_measures());
  const Piece back = base_back_from_svg(demo_text("demo-back.svg"));
  EXPECT_LT(worst_difference(base, own), 0.02);
  EXPECT_LT(worst_difference(back, own_back), 0.02);
  EXPECT_LT((base.notches[0].seam - own.notches[0].seam).norm(), 0.02);
  EXPECT_LT((back.notches.at(0).seam - own_back.notches[0].seam).norm(), 0.02);
  for (const char* role : {"shoulder", "side-seam"})
    EXPECT_NEAR(length(edge_of(base, role).points), length(edge_of(back, role).points), 0.01) << role;
  CowlWishes wishes;
  EXPECT_NEAR(draft_cowl_front(base, wishes).front.points.at("neck-point").x(), 240.0, 1e-9);
}

TEST(SvgBase, SizeComesFromWidthHeightAndViewBoxInAnyUnit) {
  const Piece reference = base_front_from_svg(Sheet().text());
  for (const char* size :
       {"width=\"30cm\" height=\"70cm\"", "width=\"11.811023622in\" height=\"27.559055118in\"",
        "width=\"850.39370079pt\" height=\"1984.2519685pt\"",
        "width=\"70.866141732pc\" height=\"165.35433071pc\"",
        "width=\"1133.8582677px\" height=\"2645.6692913px\"",
        "width=\"1133.8582677\" height=\"2645.6692913\"", "width=\"300mm\""}) {
    Sheet sheet;
    sheet.size = std::string(size) + " viewBox=\"0 0 300 700\"";
    EXPECT_LT(worst_difference(base_front_from_svg(sheet.text()), reference), 1e-5) << size;
  }
  Sheet half;  // user units of half a millimetre, origin elsewhere
  half.size = "width=\"300mm\" height=\"700mm\" viewBox=\"-50 -80 600 1400\"";
  half.before = "<g transform=\"scale(2)\">";
  EXPECT_LT(worst_difference(base_front_from_svg(half.text()), reference), 0.02);
  Sheet pixels;  // no viewBox: a user unit is 1/96 in
  pixels.size = "width=\"2000\" height=\"3000\"";
  pixels.before = "<g transform=\"scale(3.779527559055118)\">";
  EXPECT_LT(worst_difference(base_front_from_svg(pixels.text()), reference), 0.02);
}

TEST(SvgBase, SaysWhatItCannotBeSureOf) {
  Sheet pixels;
  pixels.size = "width=\"1133.8582677px\" height=\"2645.6692913px\" viewBox=\"0 0 300 700\"";
  std::vector<std::string> cautions;
  base_front_from_svg(pixels.text(), &cautions);
  ASSERT_EQ(cautions.size(), 1u);
  EXPECT_NE(cautions[0].find("96 to the inch"), std::string::npos);
  base_front_from_svg(Sheet().text(), &cautions);
  EXPECT_TRUE(cautions.empty());
  Sheet squeezed;
  squeezed.size = "width=\"300mm\" height=\"705mm\" viewBox=\"0 0 300 700\"";
  EXPECT_REFUSED(base_front_from_svg(squeezed.text()), "true size is not certain");
  squeezed.size += " preserveAspectRatio=\"none\"";
  EXPECT_REFUSED(base_front_from_svg(squeezed.text()), "true size is not certain");
  squeezed.size =
      "width=\"300mm\" height=\"702mm\" viewBox=\"0 0 300 700\"";  // rounded by the program that wrote it
  EXPECT_NO_THROW(base_front_from_svg(squeezed.text()));
  std::string text = Sheet().text();
  const std::string right = "id=\"side-seam\"", wrong = "id=\"Side_Seam\"";
  text.replace(text.find(right), right.size(), wrong);
  EXPECT_REFUSED(base_front_from_svg(text), "\"Side_Seam\" is perhaps meant to be side-seam");
}

TEST(BaseSize, HalfAndDoubleScaleAreCautionedForEverySize) {
  for (const StandardSize& size : standard_sizes()) {  // ASTM D5585-11e1, Table 1
    const Piece base = block_front(measures_of_size(size.name));
    EXPECT_TRUE(base_size_cautions(base).empty()) << size.name;
    for (const double scale : {0.5, 2.0}) {
      Piece scaled = base;
      for (Edge& edge : scaled.edges)
        for (Point& p : edge.points) p *= scale;
      for (Point& p : scaled.seam_line) p *= scale;
      EXPECT_FALSE(base_size_cautions(scaled).empty()) << size.name << " x " << scale;
    }
  }
  EXPECT_NE(base_size_in_words(block_front(demo_measures())).find("46.6 cm (18.3 in) across"),
            std::string::npos)
      << base_size_in_words(block_front(demo_measures()));
  EXPECT_REFUSED(measures_of_size("9"), "There is no size \"9\"");
}

TEST(SvgBase, TurnedMirroredReversedAndGroupedDrawingsGiveTheSameBase) {
  const Piece reference = base_front_from_svg(Sheet().text());
  for (const char* transform : {"translate(700,20) rotate(90)", "rotate(-17)", "matrix(-1 0 0 1 400 0)",
                                "rotate(180) translate(-3,4)", "matrix(0 1 1 0 0 0)"}) {
    Sheet sheet;
    sheet.before = "<g><g transform=\"" + std::string(transform) + "\"><g>";
    sheet.after = "</g></g></g>";
    EXPECT_LT(worst_difference(base_front_from_svg(sheet.text()), reference), 0.02) << transform;
  }
  Sheet backwards;
  backwards.centre = "M20 660V104";
  backwards.shoulder = "M196 62L86 20";
  backwards.hem = "M262 660H20";
  EXPECT_LT(worst_difference(base_front_from_svg(backwards.text()), reference), 1e-9);
}

TEST(SvgBase, ABackHasItsOwnCentre) {
  std::string text = Sheet().text();
  EXPECT_REFUSED(base_back_from_svg(text), "no path with the id centre-back");
  const std::string front = "centre-front";
  text.replace(text.find(front), front.size(), "centre-back");
  const Piece back = base_back_from_svg(text);
  EXPECT_EQ(back.edges[0].role, "centre-back");
  EXPECT_LT(worst_difference(back, base_front_from_svg(Sheet().text())), 1e-12);
}

TEST(SvgBase, JoinsSmallGapsAndRefusesLargeOnes) {
  Sheet sheet;
  sheet.hem = "M20.3 660H262";
  EXPECT_NO_THROW(base_front_from_svg(sheet.text()));
  sheet.hem = "M20 660H258.6";
  EXPECT_REFUSED(base_front_from_svg(sheet.text()), "hem and the side-seam do not meet");
  EXPECT_REFUSED(base_front_from_svg(sheet.text()), "3.4 mm apart near 258.6 mm across and 660 mm down");
}

TEST(SvgBase, RefusesEachBrokenDrawingInPlainWords) {
  const auto with = [](auto change) {
    Sheet sheet;
    change(sheet);
    return test::refusal_of([&] { base_front_from_svg(sheet.text()); });
  };
  const auto has = [](const std::string& text, const char* words) {
    EXPECT_NE(text.find(words), std::string::npos) << "\"" << text << "\" lacks \"" << words << "\"";
    EXPECT_EQ(text.find('\n'), std::string::npos);
  };
  has(test::refusal_of([] { base_front_from_svg("a base"); }), "not a readable SVG");
  has(test::refusal_of([] { base_front_from_svg(""); }), "not a readable SVG");
  has(test::refusal_of([] { base_front_from_svg("<html/>"); }), "no SVG drawing");
  has(with([](Sheet& s) { s.hem.clear(); }), "no path with the id hem");
  has(with([](Sheet& s) { s.more = "<path id=\"hem\" d=\"M0 0H5\"/>"; }), "Two paths have the id \"hem\"");
  has(with([](Sheet& s) { s.size.clear(); }), "no real size");
  has(with([](Sheet& s) { s.size = "viewBox=\"0 0 300 700\""; }), "no real size");
  has(with([](Sheet& s) { s.size = "width=\"100%\" height=\"100%\" viewBox=\"0 0 300 700\""; }), "per cent");
  has(with([](Sheet& s) { s.size = "width=\"30em\" viewBox=\"0 0 300 700\""; }),
      "unit that is no real length");
  has(with([](Sheet& s) { s.size = "width=\"wide\" viewBox=\"0 0 300 700\""; }), "not a length");
  has(with([](Sheet& s) { s.size = "width=\"0mm\" viewBox=\"0 0 300 700\""; }), "not above zero");
  has(with([](Sheet& s) { s.size = "width=\"300mm\" viewBox=\"0 0 300\""; }), "viewBox");
  has(with([](Sheet& s) { s.size = "width=\"30mm\" height=\"70mm\" viewBox=\"0 0 300 700\""; }),
      "which is no half front");
  has(with([](Sheet& s) { s.size = "width=\"9000m\" viewBox=\"0 0 300 700\""; }), "unit");
  has(with([](Sheet& s) { s.size = "width=\"90000cm\" viewBox=\"0 0 300 700\""; }), "further than 20 m");
  has(with([](Sheet& s) { s.centre = "M20 104Q30 300 20 660"; }),
      "centre front is not straight: it strays 5");
  has(with([](Sheet& s) { s.side = "M256 232L10 400L262 660"; }), "crosses the centre front");
  has(with([](Sheet& s) { s.side = "M256 232L100 700L262 660"; }), "crosses itself");
  has(with([](Sheet& s) { s.neckline = "M86 20L20 104M0 0L5 5"; }), "2 separate pieces");
  has(with([](Sheet& s) { s.neckline = "M86 20L20 NaN"; }),
      "In the edge \"neckline\" the path data goes wrong");
  has(with([](Sheet& s) { s.neckline = "M86 20L20 104Z"; }), "ends where it starts");
  has(with([](Sheet& s) { s.neckline = "M86 20"; }), "is empty");
  has(with([](Sheet& s) { s.more = "<circle id=\"armhole-notch\" cx=\"150\" cy=\"164\" r=\"1\"/>"; }),
      "from the armhole. Move the circle");
  has(with([](Sheet& s) { s.before = "<g transform=\"spin(3)\">"; }), "spin(3)");
  Sheet grouped;
  grouped.hem.clear();
  grouped.more = "<g id=\"hem\"><path d=\"M20 660H262\"/></g>";
  has(test::refusal_of([&] { base_front_from_svg(grouped.text()); }), "is on a <g>, not on a path");
  Sheet swapped;  // shoulder and side seam exchanged
  std::swap(swapped.shoulder, swapped.side);
  has(test::refusal_of([&] { base_front_from_svg(swapped.text()); }), "do not meet");
}

TEST(SvgBase, ReadsSlashLinesAndDrillMarksInThePieceFrame) {
  Sheet sheet;  // the centre front is at 20 across, its hem at 660 down
  sheet.more =
      "<circle id=\"drill-pocket\" cx=\"100\" cy=\"360\" r=\"2\"/>"
      "<path id=\"slash-2\" d=\"M20 300L181 164\"/>"
      "<path id=\"slash-1\" d=\"M141 41C90 130 60 200 20 220\"/>";  // drawn from the shoulder
  const Piece base = base_front_from_svg(sheet.text());
  ASSERT_TRUE(base.points.contains("drill-pocket"));
  EXPECT_LT((base.points.at("drill-pocket") - Point(80, 300)).norm(), 1e-9);
  const auto lines = slash_lines_from_svg(sheet.text());
  ASSERT_EQ(lines.size(), 2u);
  EXPECT_LT((lines[0].front() - Point(0, 440)).norm(), 1e-9);
  EXPECT_LT((lines[0].back() - Point(121, 619)).norm(), 1e-9);
  EXPECT_LT((lines[1].back() - Point(161, 496)).norm(), 1e-9);

  CowlWishes wishes;
  for (const Polyline& line : lines) wishes.slashes.push_back({0.0, "", 0.0, line});
  const CowlDraft draft = draft_cowl_front(base, wishes);
  ASSERT_EQ(draft.front.cowl->slash_lines.size(), 2u);
  EXPECT_LT((draft.front.cowl->slash_lines[1].from - Point(0, 360)).norm(), 1e-9);

  EXPECT_TRUE(slash_lines_from_svg(demo_text()).empty());
  sheet.more += "<path id=\"slash-1\" d=\"M0 0H5\"/>";
  EXPECT_REFUSED(slash_lines_from_svg(sheet.text()), "Two paths have the id \"slash-1\"");
  sheet.more = "<circle id=\"drill-pocket\" cx=\"290\" cy=\"360\" r=\"2\"/>";
  EXPECT_REFUSED(base_front_from_svg(sheet.text()), "drill mark \"drill-pocket\" lies outside the piece");
}

TEST(SvgBase, ShuffledBytesNeverDoMoreThanRefuse) {
  const std::string good = Sheet().text();
  std::mt19937 random(5);
  for (int i = 0; i < 3000; ++i) {
    std::string text = good;
    for (int k = 0; k < 1 + static_cast<int>(random() % 4); ++k) {
      const size_t at = random() % text.size();
      switch (random() % 3) {
        case 0:
          text[at] = static_cast<char>(random() % 127 + 1);
          break;
        case 1:
          text.erase(at, random() % 20);
          break;
        default:
          text.insert(at, text.substr(random() % text.size(), random() % 20));
      }
    }
    try {
      const Piece base = base_front_from_svg(text);
      EXPECT_FALSE(self_crossing(base.seam_line));
      for (const Point& p : base.seam_line) EXPECT_TRUE(p.allFinite());
    } catch (const Refusal&) {
    }
  }
}

}  // namespace
}  // namespace cowlcast::drafting
