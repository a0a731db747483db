// How right a piece is found again, part by part: marks chalked and clicked on with random errors, against
// the error that is stated. Cloth is moved to where a person may lay it: off by some centimetres and turned
// by some degrees.
//
//   find_again [--rounds N] [--miss MM]    MM: how wrong a mark is in all, root mean square; 1 when left out
//   find_again --pictures OUT              frames to look at: to chalk, to find, pointed out, found
#include <QGuiApplication>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <numbers>
#include <random>
#include <string>
#include <vector>

#include "drafting/geometry/polyline.h"
#include "projector/blade/order.h"
#include "projector/cutting/parts.h"
#include "projector/cutting/view_marks.h"
#include "tests/projector/test_map.h"
#include "tests/projector/true_table.h"

using namespace cowlcast;
using namespace cowlcast::projector;

namespace {

struct Dice {
  std::mt19937 engine{1};
  double normal(double sigma) { return std::normal_distribution<double>(0.0, sigma)(engine); }
  double uniform(double most) { return std::uniform_real_distribution<double>(-most, most)(engine); }
};

// Of all findings of one kind.
struct Told {
  int tried = 0, refused = 0, inside = 0;
  double beyond = 0.0;                 // the most that an error was of the stated one
  std::vector<double> errors, stated;  // mm, at the worst place of the cut line in the light

  void print(const std::string& name) {
    const auto part = [](std::vector<double>& values, double share) {
      if (values.empty()) return 0.0;
      std::sort(values.begin(), values.end());
      return values[static_cast<size_t>(share * static_cast<double>(values.size() - 1))];
    };
    const int found = tried - refused;
    std::printf(
        "%-34s %5d tried, %5.1f %% refused; of the rest error at the worst end: median %.2f, 95 %% %.2f, "
        "most "
        "%.2f mm; stated: median %.2f, 95 %% %.2f mm; within it %.1f %%, most %.2f times it\n",
        name.c_str(), tried, 100.0 * refused / std::max(1, tried), part(errors, 0.5), part(errors, 0.95),
        part(errors, 1.0), part(stated, 0.5), part(stated, 0.95), 100.0 * inside / std::max(1, found),
        beyond);
  }
};

drafting::Piece long_piece(double length, double depth) {
  drafting::Piece piece;
  piece.name = "panel";
  piece.cut_line = {{0, 0}, {length, 0}, {length, 0.6 * depth}, {0.5 * length, depth}, {0, 0.6 * depth}};
  piece.seam_line = piece.cut_line;
  return piece;
}

// The cut line's point that is farthest from the truth, and whether all errors are within what is stated
// there.
void judge(Told& told, const CuttingView& view, const Laying& truth) {
  double error = 0.0, share = 0.0;
  for (const Point& point : view.parts[view.part].shown) {
    const double here = (mat_from_piece(view.laying, point) - mat_from_piece(truth, point)).norm();
    error = std::max(error, here);
    share = std::max(share, here / view.doubt->at(point));
  }
  told.errors.push_back(error);
  told.stated.push_back(part_error(view).value_or(0.0));
  told.inside += error <= told.stated.back();
  told.beyond = std::max(told.beyond, error / told.stated.back());
}

// Through the whole piece; marks are chalked where the light says, so an error goes on from part to part.
void find(std::vector<Told>& told, const CuttingView& start, const calibration::TableMap& map, size_t marks,
          double miss, Dice& dice) {
  CuttingView view = start;
  // Where the cloth, and with it what was cut of the piece, really lies.
  Laying cloth = view.laying;
  while (view.part + 1 < view.parts.size()) {
    std::vector<Point> chalk;  // on the cloth: in the frame of the true piece
    for (const Point& cross : view.parts[view.part].chalk)
      chalk.push_back(piece_from_mat(cloth, mat_from_piece(view.laying, cross)));
    view = after(std::move(view), Act::part, Pace::normal);
    cloth = view.laying;
    cloth.x += dice.uniform(25.0);
    cloth.y += dice.uniform(25.0);
    cloth = turned_about(cloth, {0, 0}, dice.uniform(3.0 * std::numbers::pi / 180.0));
    std::vector<size_t> which(chalk.size());
    for (size_t i = 0; i < which.size(); ++i) which[i] = i;
    if (marks == 2) which = {0, chalk.size() - 1};
    Told& here = told[view.part - 1];
    ++here.tried;
    for (const size_t i : which) {
      // A click is a whole pixel.
      const Eigen::Vector2d pixel =
          map.projector_from_mat(mat_from_piece(cloth, chalk[i]) + Point(dice.normal(miss / std::sqrt(2.0)),
                                                                         dice.normal(miss / std::sqrt(2.0))));
      view = after_pointing(std::move(view),
                            map.mat_from_projector({std::round(pixel.x()), std::round(pixel.y())}));
    }
    if (view.to_find) view = after(std::move(view), Act::next, Pace::normal);
    if (view.to_find) {
      ++here.refused;
      return;
    }
    judge(here, view, cloth);
  }
}

void measure(int rounds, double miss) {
  testing::Optics optics;
  const calibration::TableMap map = testing::map_of(optics);
  const Polyline lit = lit_outline(map, 0.0);
  const drafting::Box box = drafting::box_of(lit);
  std::printf(
      "light about %.0f x %.0f mm, %d x %d pixels; marks wrong by %.2f mm (root mean square) and clicked "
      "on at whole pixels\n",
      box.width(), box.height(), map.width, map.height, miss);
  Dice dice;
  for (const auto& [length, depth] :
       {std::pair{1400.0, 300.0}, {1400.0, 500.0}, {1800.0, 300.0}, {2500.0, 500.0}}) {
    const drafting::Piece piece = long_piece(length, depth);
    const CuttingView start = in_parts(new_view(piece, {}, {}, FrameStyle{}), lit);
    for (const size_t marks : {size_t{4}, size_t{2}}) {
      std::vector<Told> told(start.parts.size() - 1);
      for (int i = 0; i < rounds; ++i) find(told, start, map, marks, miss, dice);
      for (size_t i = 0; i < told.size(); ++i)
        told[i].print(std::to_string(static_cast<int>(length)) + " x " +
                      std::to_string(static_cast<int>(depth)) + ", part " + std::to_string(i + 2) + " of " +
                      std::to_string(start.parts.size()) + (marks == 2 ? ", two marks" : ", all marks"));
    }
  }
}

void draw(const std::string& out) {
  std::filesystem::create_directories(out);
  testing::TrueTable table = testing::true_table(5, {1920, 1080}, 0.3);
  drafting::Piece piece = testing::cowl_front();
  // As for a dress: 1.8 times as long.
  const auto longer = [](Polyline& line) {
    for (Point& point : line) point.y() *= 1.8;
  };
  longer(piece.cut_line);
  longer(piece.seam_line);
  for (drafting::Edge& edge : piece.edges) longer(edge.points);
  piece.notches.clear();
  piece.points.clear();
  const Polyline lit = lit_outline(table.map, 1.0);
  for (const auto& [name, colours] : {std::pair<std::string, std::vector<QRgb>>{"navy", {0xff1c284c}},
                                      {"pattern", {0xff1c284c, 0xfff0f0ec}}}) {
    CuttingView view = new_view(piece, cuts_of(cut_runs(piece), Blade{}, {}), in_the_middle(lit, piece, 1.0),
                                style_for_cloth(colours));
    view = in_parts(std::move(view), lit);
    view.person = standing_before(lit, Hand::right);
    int number = 0;
    const std::string begins = out + "/" + name + "-";
    const auto save = [&](const CuttingView& shown) {
      ViewPainter painter;
      painter.draw(table.map, shown).save(QString::fromStdString(begins + std::to_string(++number) + ".png"));
    };
    save(view);
    view = after(std::move(view), Act::part, Pace::normal);
    save(view);
    const Laying cloth = turned_about(
        {view.laying.x + 12, view.laying.y - 15, view.laying.angle, view.laying.mirrored, 1.0}, {0, 0}, 0.03);
    const std::vector<Point> crosses = view.crosses;
    for (size_t i = 0; i < crosses.size(); ++i) {
      view = after_pointing(std::move(view),
                            mat_from_piece(cloth, crosses[i]) + Point(0.3, -0.2 * static_cast<double>(i)));
      if (i == 1) save(view);
    }
    save(view);
    save(after(after(view, Act::next, Pace::normal), Act::grain, Pace::normal));
  }
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication application(argc, argv);
  int rounds = 2000;
  double miss = 1.0;
  for (int i = 1; i + 1 < argc; i += 2) {
    if (std::strcmp(argv[i], "--pictures") == 0) {
      draw(argv[i + 1]);
      return 0;
    }
    if (std::strcmp(argv[i], "--rounds") == 0) rounds = std::atoi(argv[i + 1]);
    if (std::strcmp(argv[i], "--miss") == 0) miss = std::atof(argv[i + 1]);
  }
  measure(rounds, miss);
  return 0;
}
