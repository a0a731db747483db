#include <cstdio>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "drafting/block/block.h"
#include "drafting/cowl/cowl_front.h"
#include "drafting/export/piece_svg.h"
#include "drafting/export/summary.h"
#include "drafting/geometry/polyline.h"
#include "projector/blade/blade_marks.h"
#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/commands/headless.h"
#include "projector/frame/piece_marks.h"
#include "projector/frame/png.h"
#include "projector/table/calibration_job.h"
#include "projector/table/simulated_table.h"

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

// Takes the table's photographs into a folder; each is what the phone would have saved.
std::vector<std::string> photograph_table(const SimulatedTable& table, const path& out) {
  make_folder(out);
  std::vector<std::string> files;
  for (int i = 0; i < photograph_count(table); ++i) {
    const std::vector<unsigned char> bytes = photograph_file(table, i);
    const path file = out / ("photo-" + std::to_string(i + 1) + ".jpg");
    write_file(file, std::string_view(reinterpret_cast<const char*>(bytes.data()), bytes.size()));
    files.push_back(file.string());
  }
  return files;
}

void run(const path& out) {
  std::cout << "An invented scenario on a simulated table: every number in it is made up.\n";
  const Headless qt;
  make_folder(out);
  const std::vector<cv::Mat> pages = make_sheets(out / "sheets");

  const SimulatedTable table = simulated_table(pages);
  CalibrationJob job;
  job.files = photograph_table(table, out / "photos");
  std::cout << job.files.size() << " photographs of the table taken, in " << (out / "photos").string()
            << ".\n";
  job.request = request_for(table);
  const calibration::CalibrationRequest& request = job.request;
  const calibration::Rulers rulers = *request.rulers;
  const calibration::CalibrationReport report = calibrated(job).report;
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

  SimulatedCloth cloth = cloth_for(draft.front, laying, 80.0);
  cloth.colour = kClothColour;
  write_file(out / "table-with-lines.png", png_bytes(seen_from_above(table, map, frame, cloth, 1.5)));

  Polyline outline = laid(laying, draft.front.cut_line);
  outline.push_back(outline.front());
  const Reach reach = reach_of(map, {outline}, kCloth);
  if (reach.outside > 0.0)
    std::cout << "Caution: the piece reaches " << decimal(reach.outside, 0) << " mm beyond the light.\n";

  const room_model::ReadBack lines =
      room_model::joined({line_on_cloth(table, map, laid(laying, draft.front.cut_line), true, kCloth),
                          line_on_cloth(table, map, laid(laying, draft.front.seam_line), true, kCloth)});
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
