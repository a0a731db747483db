#include "drafting/intake/svg_lines.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "drafting/geometry/polyline.h"
#include "drafting/intake/svg_base.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

std::string demo_text() {
  std::ifstream file(std::filesystem::path(COWLCAST_DATA_DIR) / "demo-base.svg");
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// The demo base with every edge's id replaced, or taken away.
std::string renamed(const std::string& to) {
  std::string text = demo_text();
  int count = 0;
  for (const char* role : {"centre-front", "neckline", "shoulder", "armhole", "side-seam", "hem"}) {
    const std::string id = std::string("id=\"") + role + "\"";
    const size_t at = text.find(id);
    text.replace(at, id.size(), to.empty() ? "" : "id=\"" + to + std::to_string(++count) + "\"");
  }
  return text;
}

const std::map<std::string, std::string> by_number{{"line 1", "centre-front"}, {"line 2", "neckline"},
                                                   {"line 3", "shoulder"},     {"line 4", "armhole"},
                                                   {"line 5", "side-seam"},    {"line 6", "hem"}};

TEST(SvgLines, HaveTheirRealSizeYUp) {
  const std::vector<SvgLine> lines = lines_of_svg(demo_text());
  ASSERT_EQ(lines.size(), 6u);
  EXPECT_EQ(lines[0].id, "centre-front");
  EXPECT_NEAR(length(lines[0].points), 552.599, 1e-6);  // as drawn: from y 100.401 to 653
  EXPECT_GT(lines[0].points.front().y(), lines[0].points.back().y());
  EXPECT_NEAR(lines[5].points.front().y(), 0.0, 1e-9);
  for (const SvgLine& line : lines) EXPECT_TRUE(line.in_one_run) << line.id;
}

TEST(SvgLines, WithoutIdsAreNumberedAndGivenRolesReadAsTheSameBase) {
  const Piece straight = base_front_from_svg(demo_text());
  EXPECT_THROW(base_front_from_svg(renamed("")), Refusal);
  const Piece by_hand = base_front_from_svg(with_roles(renamed(""), by_number));
  ASSERT_EQ(by_hand.seam_line.size(), straight.seam_line.size());
  for (size_t i = 0; i < straight.seam_line.size(); ++i)
    EXPECT_LT((by_hand.seam_line[i] - straight.seam_line[i]).norm(), 1e-9);
  std::map<std::string, std::string> by_id;
  for (const auto& [number, role] : by_number) by_id["path" + number.substr(5)] = role;
  EXPECT_EQ(base_front_from_svg(with_roles(renamed("path"), by_id)).seam_line.size(),
            straight.seam_line.size());
}

TEST(SvgLines, ARoleGivenByHandTakesItFromTheLineThatHadItsName) {
  // Hem and side seam are drawn with each other's names.
  std::string text = demo_text();
  text.replace(text.find("id=\"hem\""), 8, "id=\"xxx\"");
  text.replace(text.find("id=\"side-seam\""), 14, "id=\"hem\"");
  text.replace(text.find("id=\"xxx\""), 8, "id=\"side-seam\"");
  EXPECT_THROW(base_front_from_svg(text), Refusal);
  EXPECT_NO_THROW(base_front_from_svg(with_roles(text, {{"hem", "side-seam"}, {"side-seam", "hem"}})));
  const std::string taken = with_roles(demo_text(), {{"side-seam", "hem"}});
  EXPECT_THROW(base_front_from_svg(taken), Refusal);  // no side seam any more
  const auto lines = lines_of_svg(taken);
  EXPECT_EQ(std::count_if(lines.begin(), lines.end(), [](const SvgLine& l) { return l.id == "hem"; }), 1);
}

TEST(SvgLines, RefuseWhatIsNoDrawing) {
  EXPECT_THROW(lines_of_svg("{}"), Refusal);
  EXPECT_THROW(lines_of_svg("<html/>"), Refusal);
  EXPECT_THROW(lines_of_svg("<svg width=\"10mm\" height=\"10mm\" viewBox=\"0 0 10 10\"/>"), Refusal);
  const std::string closed =
      "<svg width=\"90mm\" height=\"90mm\" viewBox=\"0 0 90 90\"><path d=\"M0 0H9V9Z\"/></svg>";
  EXPECT_FALSE(lines_of_svg(closed).at(0).in_one_run);
}

}  // namespace
}  // namespace cowlcast::drafting
