#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>

#include <regex>
#include <sstream>

#include "drafting/export/piece_dxf.h"
#include "drafting/export/piece_svg.h"
#include "drafting/export/pieces_pdf.h"
#include "drafting/piece/marks.h"
#include "drafting/teaching/steps.h"
#include "tests/drafting/support.h"

namespace cowlcast::drafting {
namespace {

Top demo_top() {
  return draft_top(block_front(demo_measures()), block_back(demo_measures()), {});
}

std::vector<std::pair<double, double>> page_sizes_mm(const std::string& pdf) {
  std::vector<std::pair<double, double>> sizes;
  const std::regex box("MediaBox\\s*\\[\\s*0 0 ([0-9.]+) ([0-9.]+)");
  for (auto it = std::sregex_iterator(pdf.begin(), pdf.end(), box); it != std::sregex_iterator(); ++it) {
    sizes.push_back({std::stod((*it)[1]) * 25.4 / 72, std::stod((*it)[2]) * 25.4 / 72});
  }
  return sizes;
}

TEST(Pdf, PagesHaveTheirStandardSizes) {
  const std::vector<Piece> pieces = pieces_of(demo_top());
  // ISO 216: A4 210 by 297 mm, A0 841 by 1189 mm; Letter 8.5 by 11 in.
  const auto a4 = page_sizes_mm(pieces_to_pdf(pieces, Paper::tiled_a4));
  EXPECT_GT(a4.size(), 10u);
  for (const auto& [width, height] : a4) {
    EXPECT_NEAR(width, 210.0, 0.01);
    EXPECT_NEAR(height, 297.0, 0.01);
  }
  EXPECT_NEAR(page_sizes_mm(pieces_to_pdf(pieces, Paper::tiled_letter)).at(0).first, 215.9, 0.01);
  EXPECT_NEAR(page_sizes_mm(pieces_to_pdf(pieces, Paper::a0)).at(0).second, 1189.0, 0.01);
  const auto one = page_sizes_mm(pieces_to_pdf(pieces, Paper::one_page));
  ASSERT_EQ(one.size(), 1u);
  EXPECT_GT(one[0].first, box_of(pieces[0].cut_line).width() + box_of(pieces[1].cut_line).width());
  EXPECT_REFUSED(pieces_to_pdf({}, Paper::a0), "no piece to print");
}

TEST(Pdf, TilesWithNothingOnThemAreLeftOut) {
  Piece square;  // 500 mm each way on tiles of 180 by 267 mm: 3 by 2, and the measuring square's row
  square.name = "square";
  square.seam_line = square.cut_line = {{0, 0}, {500, 0}, {500, 500}, {0, 500}};
  EXPECT_EQ(page_sizes_mm(pieces_to_pdf({square}, Paper::tiled_a4)).size(), 7u);
  Piece low = square;  // a second one, 50 mm tall, needs the upper row alone
  low.seam_line = low.cut_line = {{0, 0}, {500, 0}, {500, 50}, {0, 50}};
  EXPECT_EQ(page_sizes_mm(pieces_to_pdf({square, low}, Paper::tiled_a4)).size(), 7u + 3u);
}

TEST(Pdf, RecordAndHandoutAreWhole) {
  const Top top = demo_top();
  EXPECT_EQ(page_sizes_mm(record_to_pdf(top)).size(), 1u);
  EXPECT_EQ(page_sizes_mm(steps_to_pdf(top.cowl)).size(), 8u);
  const std::string record = record_of(top);
  for (const char* words : {"drape", "slash line 3", "clear elastic", "side seam:", "inner panel"}) {
    EXPECT_NE(record.find(words), std::string::npos) << words;
  }
  EXPECT_EQ(record.find("DOES NOT WALK"), std::string::npos);
  EXPECT_LT(std::count(record.begin(), record.end(), '\n'), 50);  // one page at 5.5 mm a line
}

/// DXF group pairs.
std::vector<std::pair<int, std::string>> groups_of(const std::string& dxf) {
  std::vector<std::pair<int, std::string>> groups;
  std::istringstream lines(dxf);
  for (std::string code, value; std::getline(lines, code) && std::getline(lines, value);) {
    groups.push_back({std::stoi(code), value});
  }
  return groups;
}

TEST(Dxf, PutsEachThingOnItsLayer) {
  const Top top = demo_top();
  const std::vector<Piece> pieces = pieces_of(top);
  const auto groups = groups_of(pieces_to_dxf(pieces));
  EXPECT_EQ(groups.front(), (std::pair<int, std::string>{0, "SECTION"}));
  EXPECT_EQ(groups.back(), (std::pair<int, std::string>{0, "EOF"}));
  std::map<std::string, int> on_layer;  // entity and layer
  size_t boundary_vertices = 0;
  for (size_t i = 0; i + 1 < groups.size(); ++i) {
    if (groups[i].first != 0 || groups[i + 1].first != 8) continue;
    ++on_layer[groups[i].second + " " + groups[i + 1].second];
    if (groups[i].second == "VERTEX" && groups[i + 1].second == "1") ++boundary_vertices;
  }
  size_t cut_points = 0, notches = 0;
  for (const Piece& piece : pieces) {
    cut_points += piece.cut_line.size();
    notches += piece.notches.size();
  }
  const int count = static_cast<int>(pieces.size());
  // Layers by ASTM D6673-10.
  EXPECT_EQ(boundary_vertices, cut_points);
  EXPECT_EQ(on_layer["POLYLINE 1"], count);
  EXPECT_EQ(static_cast<size_t>(on_layer["POINT 2"] + on_layer["POINT 3"]), cut_points);
  EXPECT_EQ(static_cast<size_t>(on_layer["POINT 4"]), notches);
  EXPECT_EQ(on_layer["LINE 6"], count);  // each piece on the fold
  EXPECT_EQ(on_layer["LINE 7"], count);  // each with its grain
  EXPECT_EQ(on_layer["POLYLINE 8"], 1);  // the cowl edge
  EXPECT_GT(on_layer["POLYLINE 14"], 4 * count);
  EXPECT_GT(on_layer["TEXT 15"], 0);
  EXPECT_EQ(on_layer["BLOCK 1"], count);
  EXPECT_EQ(on_layer["INSERT 1"], count);
}

/// What an outside reader of DXF makes of the file.
class Reading : public DL_CreationAdapter {
 public:
  std::map<std::string, std::map<std::string, std::vector<Polyline>>> lines;  // by block and layer
  std::map<std::string, std::map<std::string, Polyline>> points;
  std::map<std::string, std::vector<std::string>> texts;
  int inserts = 0, units = 0;

  void addBlock(const DL_BlockData& data) override { block_ = data.name; }
  void endBlock() override { block_.clear(); }
  void addPolyline(const DL_PolylineData& data) override {
    line_.clear();
    closed_ = (data.flags & 1) != 0;
    layer_ = getAttributes().getLayer();
  }
  void addVertex(const DL_VertexData& data) override { line_.push_back({data.x, data.y}); }
  void endSequence() override {
    if (!line_.empty()) lines[block_][layer_ + (closed_ ? " closed" : "")].push_back(line_);
    line_.clear();
  }
  void addLine(const DL_LineData& data) override {
    lines[block_][getAttributes().getLayer()].push_back({{data.x1, data.y1}, {data.x2, data.y2}});
  }
  void addPoint(const DL_PointData& data) override {
    points[block_][getAttributes().getLayer()].push_back({data.x, data.y});
  }
  void addText(const DL_TextData& data) override { texts[block_].push_back(data.text); }
  void addInsert(const DL_InsertData&) override { ++inserts; }
  void setVariableInt(const std::string& name, int value, int) override {
    if (name == "$INSUNITS") units = value;
  }

 private:
  std::string block_, layer_;
  Polyline line_;
  bool closed_ = false;
};

TEST(Dxf, AnOutsideReaderFindsEveryPieceAtItsSize) {
  // dxflib 3.26 reads what was written; layers by ASTM D6673-10.
  TopWishes wishes;
  wishes.cowl.notch_form = NotchForm::vee;
  wishes.cowl.tacked_length = 40.0;
  const std::vector<Piece> pieces =
      pieces_of(draft_top(block_front(demo_measures()), block_back(demo_measures()), wishes));
  std::istringstream file(pieces_to_dxf(pieces));
  Reading reading;
  DL_Dxf reader;
  ASSERT_TRUE(reader.in(file, &reading));
  EXPECT_EQ(reading.units, 4);  // millimetres
  EXPECT_EQ(reading.inserts, static_cast<int>(pieces.size()));
  ASSERT_EQ(reading.lines.size(), pieces.size());
  size_t at = 0;
  for (auto& [block, layers] : reading.lines) {  // "1-cowl-front", "2-back", ... in order
    const Piece& piece = pieces[at++];
    ASSERT_EQ(layers["1 closed"].size(), 1u) << block;
    const Polyline& boundary = layers["1 closed"][0];
    ASSERT_EQ(boundary.size(), piece.cut_line.size());
    for (size_t i = 0; i < boundary.size(); ++i) EXPECT_LT((boundary[i] - piece.cut_line[i]).norm(), 1e-5);
    size_t vees = 0;
    for (const Notch& notch : piece.notches) vees += notch.form == NotchForm::vee ? notch.ticks : 0;
    EXPECT_EQ(layers["4"].size(), vees) << block;
    EXPECT_EQ(reading.points[block]["4"].size(), piece.notches.size());
    EXPECT_EQ(reading.points[block]["13"].size(), drill_marks(piece).size());
    EXPECT_EQ(layers["6"].size(), 1u);
    EXPECT_EQ(layers["7"].size(), 1u);
    EXPECT_EQ(reading.texts[block].at(0), "Piece Name: " + piece.name);
  }
  EXPECT_EQ(reading.points.begin()->second["13"].size(), 3u);  // both tucks' marks and the panel's hem
}

TEST(Svg, ShowsSquaresToMeasureAndNoInnerNames) {
  CowlWishes wishes;
  const CowlDraft draft = draft_cowl_front(block_front(demo_measures()), wishes);
  const std::string svg = piece_to_svg(draft.front);
  const auto path_of = [&](const std::string& id) {
    const size_t found = svg.find("id=\"" + id + "\""), data = svg.find(" d=\"", found) + 4;
    Polyline line;
    std::string text = svg.substr(data, svg.find('"', data) - data);
    for (char& c : text)
      if (c == 'M' || c == 'L' || c == 'Z') c = ' ';
    std::istringstream numbers(text);
    for (double x = 0, y = 0; numbers >> x >> y;) line.push_back({x, y});
    return line;
  };
  EXPECT_NEAR(box_of(path_of("square-5cm")).width(), 50.0, 1e-9);
  EXPECT_NEAR(box_of(path_of("square-5cm")).height(), 50.0, 1e-9);
  EXPECT_NEAR(box_of(path_of("square-2in")).width(), 2.0 * 25.4, 1e-9);
  // Nothing to cut along the fold.
  const double left = box_of(path_of("fold")).low.x();
  const Polyline cut = path_of("cut-line");
  for (size_t i = 1; i < cut.size(); ++i)
    EXPECT_FALSE(cut[i].x() < left + 1e-6 && cut[i - 1].x() < left + 1e-6);
  EXPECT_NE(svg.find(">neck point<"), std::string::npos);
  EXPECT_EQ(svg.find(">neck-point<"), std::string::npos);
  EXPECT_NE(svg.find(">fold: do not cut<"), std::string::npos);
  // Every label begins within the drawing and ends there, at 0.62 of its height a letter.
  const std::regex label("<text x=\"([0-9.-]+)\" y=\"[0-9.-]+\" font-size=\"([0-9.]+)\">([^<]*)<");
  const double width = std::stod(svg.substr(svg.find("width=\"") + 7));
  int labels = 0;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), label); it != std::sregex_iterator();
       ++it, ++labels) {
    const double x = std::stod((*it)[1]);
    EXPECT_GE(x, 0.0);
    EXPECT_LE(x + 0.62 * std::stod((*it)[2]) * static_cast<double>((*it)[3].length()), width);
  }
  EXPECT_GT(labels, 8);
}

TEST(Teaching, StepsFollowTheHandbooksOrderAndEndInTheCutLine) {
  const CowlDraft draft = demo_top().cowl;
  const std::vector<Step> steps = teaching_steps(draft);
  ASSERT_EQ(steps.size(), 8u);
  for (const Step& step : steps) {
    EXPECT_FALSE(step.lines.empty()) << step.title;
    EXPECT_EQ(step.rule.back(), '.') << step.title;
  }
  EXPECT_EQ(steps.back().lines.back().points, lines_to_cut(draft.front).back());
}

TEST(Teaching, TheSliderRunsFromClosedToOpen) {
  const CowlDraft draft = demo_top().cowl;
  const auto& parts = draft.front.cowl->parts;
  const Step closed = teaching_step(draft, opening_step_number, 0.0),
             open = teaching_step(draft, opening_step_number, 1.0);
  for (size_t k = 0; k < parts.size(); ++k) {
    for (size_t i = 0; i < parts[k].before.size(); ++i) {
      EXPECT_LT((closed.lines[k].points[i] - parts[k].before[i]).norm(), 1e-9);
      EXPECT_LT((open.lines[k].points[i] - parts[k].after[i]).norm(), 1e-9);
    }
  }
  EXPECT_REFUSED(teaching_step(draft, opening_step_number, 1.2), "from 0, closed, to 1");
  EXPECT_REFUSED(teaching_step(draft, step_count, 1.0), "has 8 steps");
  const std::string moving = opening_to_animated_svg(draft);
  size_t animated = 0;
  for (size_t at = moving.find("<animate "); at != std::string::npos; at = moving.find("<animate ", at + 1))
    ++animated;
  EXPECT_EQ(animated, parts.size());
  EXPECT_NE(steps_to_svg(draft).find("id=\"step-8\""), std::string::npos);
}

}  // namespace
}  // namespace cowlcast::drafting
