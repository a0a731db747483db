#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "calibration/solve/calibrate.h"
#include "calibration/target/target.h"
#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/read_back.h"
#include "calibration/virtual_table/top_view.h"
#include "calibration/virtual_table/truth.h"
#include "drafting/block/block.h"
#include "drafting/cowl/cowl_front.h"
#include "drafting/export/piece_svg.h"
#include "drafting/export/summary.h"
#include "drafting/geometry/polyline.h"
#include "projector/blade/blade_marks.h"
#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/commands/headless.h"
#include "projector/commands/png.h"
#include "projector/frame/piece_marks.h"

namespace cowlcast::projector {
namespace {

namespace room_model = calibration::virtual_table;
using std::filesystem::path;

// The invented scenario: four A4 sheets from an office printer, a phone, a
// full-HD projector over a green mat, a wine-red jersey 1 mm thick.
constexpr int kSheets = 4;
constexpr double kCloth = 1.0;  // mm
constexpr unsigned kClothColour = 0xff8a3a4c;
constexpr double kDrape = 480.0;  // mm

std::string decimal(double value, int digits) {
  char text[40];
  std::snprintf(text, sizeof text, "%.*f", digits, value);
  return text;
}

std::vector<cv::Mat> make_sheets(const path& out) {
  make_folder(out);
  write_file(out / "sheets.pdf", calibration::sheets_pdf(calibration::Paper::a4, kSheets));
  std::vector<cv::Mat> pages;
  for (int number = 1; number <= kSheets; ++number) {
    pages.push_back(calibration::sheet_page(calibration::Paper::a4, number));
    write_file(out / ("sheet-" + std::to_string(number) + ".png"), png_bytes(pages.back(), 300.0));
  }
  return pages;
}

// Takes the session's photographs into a folder; each is what the phone would have saved.
void photograph_table(const room_model::Session& session, const path& out) {
  make_folder(out);
  const int width = session.room.projector.width, height = session.room.projector.height;
  const cv::Mat target = calibration::target_picture(width, height);
  const cv::Mat plain = calibration::plain_picture(width, height);
  int number = 0;
  for (const room_model::Shot& shot : session.shots) {
    const cv::Mat picture =
        room_model::photograph(shot.room, shot.camera, shot.target ? target : plain, shot.seed);
    const std::vector<unsigned char> bytes = room_model::encode_photograph(picture, shot.file);
    write_file(out / ("photo-" + std::to_string(++number) + ".jpg"),
               std::string_view(reinterpret_cast<const char*>(bytes.data()), bytes.size()));
  }
}

// As read off with a ruler: to a tenth of a millimetre.
calibration::Rulers measured_rulers(const room_model::Room& room) {
  const auto read = [](double mm) { return std::round(mm * 10.0) / 10.0; };
  return {read(calibration::kRulerAcross * room.sheets.front().across),
          read(calibration::kRulerDown * room.sheets.front().down)};
}

// The map's mat frame carried to the room's: where cloth lies is hers to say, so only the shape counts.
Eigen::Isometry2d room_from_mat(const calibration::TableMap& map,
                                const room_model::RoomProjector& projector) {
  std::vector<Eigen::Vector2d> from, to;
  for (int i = 0; i <= 12; ++i)
    for (int j = 0; j <= 8; ++j) {
      const Eigen::Vector2d pixel(i * (map.width - 1) / 12.0, j * (map.height - 1) / 8.0);
      if (const auto truth = room_model::mat_from_projector(projector, pixel)) {
        from.push_back(map.mat_from_projector(pixel));
        to.push_back(*truth);
      }
    }
  return room_model::rigid_fit(from, to);
}

struct TrueLine {
  Polyline on_mat;  // mat frame of the map
  bool closed = false;
};

room_model::ReadBack measured(const calibration::TableMap& map, const room_model::RoomProjector& projector,
                              const TrueLine& line) {
  const cv::Mat frame = bgr_from(rendered(map, {{.lines = {line.on_mat}, .closed = line.closed}}, kCloth));
  const Eigen::Isometry2d to_room = room_from_mat(map, projector);
  Polyline truth;
  for (const Point& point : line.on_mat) truth.push_back(to_room * point);
  room_model::ReadBackOptions options;
  options.height = kCloth;
  options.closed = line.closed;
  return room_model::read_back(projector, frame, truth, options);
}

room_model::TopView view_of(const calibration::TableMap& map, const room_model::RoomProjector& projector) {
  Polyline lit = room_model::lit_outline(projector);
  if (lit.empty()) lit = map.lit_area;
  const drafting::Box box = drafting::box_of(lit);
  return {box.low.x() - 40.0, box.low.y() - 40.0, box.width() + 80.0, box.height() + 80.0, 1.5};
}

void run(const path& out) {
  std::cout << "An invented scenario on a simulated table: every number in it is made up.\n";
  const Headless qt;
  make_folder(out);
  const std::vector<cv::Mat> pages = make_sheets(out / "sheets");

  room_model::RoomOptions options{.pages = pages};
  options.hardness = 0.3;
  const room_model::Session session = room_model::random_session(5, options);
  photograph_table(session, out / "photos");
  std::cout << session.shots.size() << " photographs of the table taken, in " << (out / "photos").string()
            << ".\n";

  std::vector<calibration::Photograph> photographs;
  for (const path& file : files_ending(out / "photos", {".jpg"}))
    photographs.push_back(calibration::load_photograph(file.string()));
  calibration::CalibrationRequest request;
  request.width = session.room.projector.width;
  request.height = session.room.projector.height;
  const calibration::Rulers rulers = measured_rulers(session.room);
  request.rulers = rulers;
  const calibration::CalibrationReport report = calibration::calibrate(photographs, request);
  write_file(out / "table.json", report.map.to_json());
  std::cout << "The two rulers of a printed sheet measure " << decimal(rulers.across, 1) << " and "
            << decimal(rulers.down, 1)
            << " mm. To do what follows by hand:\n  cowlcast calibrate --projector " << request.width << 'x'
            << request.height << " --photos \"" << (out / "photos").string() << "\" --ruler "
            << decimal(rulers.across, 1) << ',' << decimal(rulers.down, 1) << " --out \""
            << (out / "table.json").string() << "\"\n";
  std::cout << "\nThe table\n" << report.summary << (report.summary.ends_with('\n') ? "" : "\n");
  for (const std::string& warning : report.warnings) std::cout << "Caution: " << warning << '\n';

  const drafting::Piece base = drafting::block_front(drafting::demo_measures());
  drafting::CowlWishes wishes;
  wishes.drape = kDrape;
  const drafting::CowlDraft draft = drafting::draft_cowl_front(base, wishes);
  write_file(out / "front.json", drafting::piece_to_json(draft.front));
  write_file(out / "base.json", drafting::piece_to_json(draft.base));
  write_file(out / "front.svg", drafting::piece_to_svg(draft.front));
  std::cout << "\nThe front\n" << drafting::summary(draft);

  const calibration::TableMap& map = report.map;
  const Laying laying = in_the_middle(lit_outline(map, kCloth), draft.front, kCloth);
  const FrameStyle style = style_for_cloth(kClothColour);
  std::vector<Mark> marks = piece_marks(draft.front, laying, style, {});
  const QImage frame = rendered(map, marks, kCloth);
  write_file(out / "frame.png", png_bytes(frame));

  room_model::Room table = session.room;
  const Eigen::Isometry2d to_room = room_from_mat(map, table.projector);
  const drafting::Box lain = drafting::box_of(laid(laying, draft.front.cut_line));
  const Point middle = to_room * Point(0.5 * (lain.low + lain.high));
  table.cloth = room_model::Cloth{.size = {lain.width() + 160.0, lain.height() + 120.0},
                                  .place = {middle.x(), middle.y(), 0.02},
                                  .height = kCloth};
  const room_model::TopView view = view_of(map, table.projector);
  write_file(out / "table-with-lines.png", png_bytes(room_model::top_view(table, view, bgr_from(frame))));

  Polyline outline = laid(laying, draft.front.cut_line);
  outline.push_back(outline.front());
  const Reach reach = reach_of(map, {outline}, kCloth);
  if (reach.outside > 0.0)
    std::cout << "Caution: the piece reaches " << decimal(reach.outside, 0) << " mm beyond the light.\n";

  const room_model::ReadBack lines =
      room_model::joined({measured(map, table.projector, {laid(laying, draft.front.cut_line), true}),
                          measured(map, table.projector, {laid(laying, draft.front.seam_line), true})});
  if (lines.measured == 0) throw calibration::Refusal("No drawn line could be read back from the cloth.");
  std::cout << "\nThe lines on the cloth, cut line and seam line, read back at " << lines.measured
            << " places:\n"
            << "drawn lines lie within " << decimal(lines.mm95, 3) << " mm (95 %) and "
            << decimal(lines.worst, 3) << " mm (worst) of true";
  if (lines.missing + lines.unlit > 0)
    std::cout << "; " << lines.missing + lines.unlit << " places are not lit";
  std::cout << ".\n\nSee " << (out / "table-with-lines.png").string() << ", " << (out / "frame.png").string()
            << " and " << (out / "front.svg").string() << ".\n";
}

}  // namespace

void add_demo(CLI::App& app, Job& job) {
  const auto out = std::make_shared<std::string>();
  CLI::App* command =
      app.add_subcommand("demo", "go through everything on a simulated table with an invented garment");
  command->add_option("--out", *out, "folder for all that is made")->required();
  command->footer(
      "Makes sheets, photographs a simulated table, calibrates, drafts a cowl front, draws the frame and\n"
      "reads back from the simulated cloth how far the lines lie from true. Needs no screen.\n"
      "Example: cowlcast demo --out demo");
  command->callback([out, &job] { job = [out] { run(path(*out)); }; });
}

}  // namespace cowlcast::projector
