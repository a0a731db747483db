#include "calibration/sheet/sheet.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <set>

#include "calibration/detect/paper.h"
#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

TEST(Sheet, EveryMarkerOfEverySheetAndPaperDiffers) {
  std::set<int> codes;
  for (const Paper paper : {Paper::a4, Paper::letter})
    for (int sheet = 1; sheet <= kMostSheets; ++sheet)
      for (int slot = 0; slot < sheet_layout(paper).marker_count(); ++slot) {
        const int code = marker_code({paper, sheet, slot});
        EXPECT_TRUE(codes.insert(code).second);
        EXPECT_LT(code,
                  587);  // AprilTag 36h11 has 587 codes: E. Olson's reference lists, as shipped with OpenCV
        const auto back = sheet_marker(code);
        ASSERT_TRUE(back);
        EXPECT_EQ(back->paper, paper);
        EXPECT_EQ(back->sheet, sheet);
        EXPECT_EQ(back->slot, slot);
      }
  EXPECT_FALSE(sheet_marker(-1));
  EXPECT_FALSE(sheet_marker(10000));
}

// ISO 216 gives A4 as 210 × 297 mm; ANSI/ASME Y14.1 size A is 8.5 × 11 in.
TEST(Sheet, PagesHaveTheirStandardSizes) {
  EXPECT_EQ(sheet_page(Paper::a4, 1, 254.0).size(), cv::Size(2970, 2100));
  EXPECT_EQ(sheet_page(Paper::letter, 1, 100.0).size(), cv::Size(1100, 850));
}

TEST(Sheet, IsFoundWhereItIsDrawn) {
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const SheetLayout layout = sheet_layout(paper);
    const double per_mm = 150.0 / 25.4;
    cv::Mat page = sheet_page(paper, 5, 150.0);
    cv::GaussianBlur(page, page, {}, 0.8);  // no lens is sharper
    const std::vector<SheetView> views = find_sheets(page);
    ASSERT_EQ(views.size(), 1U);
    EXPECT_EQ(views[0].paper, paper);
    EXPECT_EQ(views[0].number, 5);
    EXPECT_EQ(static_cast<int>(views[0].corners.size()), layout.corner_count());
    for (const SeenCorner& corner : views[0].corners) {
      const Eigen::Vector2d at = layout.corner(corner.index);
      EXPECT_NEAR(corner.pixel.x(), (0.5 * layout.page_width + at.x()) * per_mm - 0.5, 0.05);
      EXPECT_NEAR(corner.pixel.y(), (0.5 * layout.page_height - at.y()) * per_mm - 0.5, 0.05);
    }
  }
}

// A webcam of 1280 x 720 over a table of a metre and a half: a cell of a marker is hardly two pixels.
TEST(Sheet, IsFoundHoweverItLiesInAWebcamsFrame) {
  const cv::Mat page = sheet_page(Paper::a4, 3);
  for (const double per_mm : {0.7, 0.85})
    for (const double turn : {0.0, 17.0, 57.0}) {
      const double scale = per_mm * sheet_layout(Paper::a4).page_width / page.cols;
      cv::Mat small, frame;
      cv::resize(page, small, {}, 2.0 * scale, 2.0 * scale, cv::INTER_AREA);
      cv::GaussianBlur(small, small, {}, 1.2);
      cv::Mat motion = cv::getRotationMatrix2D(
          {0.5F * static_cast<float>(small.cols), 0.5F * static_cast<float>(small.rows)}, turn, 0.5);
      motion.at<double>(0, 2) += 640.0 - 0.5 * small.cols;
      motion.at<double>(1, 2) += 360.0 - 0.5 * small.rows;
      cv::warpAffine(small, frame, motion, {1280, 720}, cv::INTER_LINEAR, cv::BORDER_CONSTANT,
                     cv::Scalar(60));
      const std::vector<SheetView> views = find_sheets(frame);
      ASSERT_EQ(views.size(), 1U) << per_mm << " pixels a mm, turned by " << turn;
      EXPECT_EQ(views[0].number, 3);
      EXPECT_GE(views[0].corners.size(), 30U);
    }
}

// The dark run nearest to `from` along a row or column of pixels: its middle, pixels; -1 without one.
double dark_middle(const cv::Mat& line, int from, int to) {
  double weight = 0.0, sum = 0.0;
  for (int i = from; i < to; ++i) {
    const double ink = 255.0 - line.at<unsigned char>(i);
    if (ink < 20.0) continue;
    weight += ink;
    sum += ink * i;
  }
  return weight > 0.0 ? sum / weight : -1.0;
}

// Measured on a rendering by an outside tool: pdftoppm of Poppler.
TEST(Sheet, RulersOfThePdfAreTrueWithinATwentiethOfAMillimetre) {
  if (std::system("pdftoppm -v > /dev/null 2>&1") != 0) GTEST_SKIP() << "pdftoppm is not installed";
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const std::filesystem::path folder = std::filesystem::temp_directory_path() / "cowlcast-sheet-test";
    std::filesystem::create_directories(folder);
    const std::string pdf = (folder / "sheets.pdf").string(), png = (folder / "page").string();
    std::ofstream(pdf, std::ios::binary) << sheets_pdf(paper, 1);
    ASSERT_EQ(std::system(("pdftoppm -r 600 -gray -singlefile -png '" + pdf + "' '" + png + "'").c_str()), 0);
    const cv::Mat page = cv::imread(png + ".png", cv::IMREAD_GRAYSCALE);
    ASSERT_FALSE(page.empty());
    const double per_mm = 600.0 / 25.4;
    const SheetLayout layout = sheet_layout(paper);
    EXPECT_NEAR(page.cols / per_mm, layout.page_width, 0.1);
    EXPECT_NEAR(page.rows / per_mm, layout.page_height, 0.1);
    const auto pixel = [&](double mm) { return static_cast<int>(std::lround(mm * per_mm)); };
    // A row through the end ticks of the long ruler, above the other ticks; a column likewise.
    const cv::Mat row = page.row(pixel(layout.page_height - 17.5)).t();
    const double left = dark_middle(row, pixel(0.5 * (layout.page_width - 240.0) - 2.0),
                                    pixel(0.5 * (layout.page_width - 240.0) + 2.0));
    const double right = dark_middle(row, pixel(0.5 * (layout.page_width + 240.0) - 2.0),
                                     pixel(0.5 * (layout.page_width + 240.0) + 2.0));
    ASSERT_GT(left, 0.0);
    EXPECT_NEAR((right - left) / per_mm, 240.0, 0.05);
    const cv::Mat column = page.col(pixel(10.5)).clone();
    const double top = dark_middle(column, pixel(0.5 * (layout.page_height - 180.0) - 2.0),
                                   pixel(0.5 * (layout.page_height - 180.0) + 2.0));
    const double foot = dark_middle(column, pixel(0.5 * (layout.page_height + 180.0) - 2.0),
                                    pixel(0.5 * (layout.page_height + 180.0) + 2.0));
    ASSERT_GT(top, 0.0);
    EXPECT_NEAR((foot - top) / per_mm, 180.0, 0.05);
    std::filesystem::remove_all(folder);
  }
}

TEST(Sheet, RefusesNumbersThatAreNotPrinted) {
  EXPECT_THROW(sheet_page(Paper::a4, 0), Refusal);
  EXPECT_THROW(sheets_pdf(Paper::a4, kMostSheets + 1), Refusal);
  EXPECT_EQ(sheets_pdf(Paper::a4, 2).substr(0, 5), "%PDF-");
}

}  // namespace
}  // namespace cowlcast::calibration
