#include "calibration/solve/calibrate.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <ctime>

#include "calibration/detect/paper.h"
#include "calibration/detect/quality.h"
#include "calibration/refusal.h"
#include "calibration/solve/finish.h"
#include "calibration/solve/fit.h"
#include "calibration/solve/light.h"
#include "calibration/solve/projector_fit.h"
#include "calibration/solve/raised.h"
#include "calibration/solve/scene.h"
#include "calibration/solve/start.h"
#include "calibration/verdict/findings.h"
#include "calibration/verdict/odd_sheet.h"
#include "calibration/verdict/stated_error.h"
#include "calibration/verdict/verdict.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kRulerSigma = 0.07;  // mm: a steel rule read to a tenth, and a little for the eye's slant
constexpr double kLampSigma = 15.0;   // mm: a tape from the mat up to the middle of a lens
constexpr double kRulersAgree = 0.4;  // mm: beyond this a reading or a sheet is wrong
constexpr double kLampAgrees = 5.0;   // standard deviations between the tape and the photographs
constexpr int kFewestLightCorners = 60;
constexpr double kTapeSigma = 0.5;     // mm: a tape between two crosses
constexpr double kSpanAgrees = 4.0;    // standard deviations between a tape and paper alone
constexpr double kSpanSlack = 5.0;     // mm: smaller slips are told when all is fitted
constexpr double kPaperAlone = 0.005;  // relative: lengths by paper alone, lenses not known yet
constexpr double kUsualPrint = 0.012;  // relative
constexpr double kPageSigma = 0.006;   // of a printer nobody has measured: half a percent and a little

ScaleReading scale_reading(const CalibrationRequest& request) {
  ScaleReading reading;
  reading.sigma_across = reading.sigma_down = kPageSigma;
  if (!request.rulers) return reading;
  reading.across = request.rulers->across / kRulerAcross;
  reading.down = request.rulers->down / kRulerDown;
  for (const double scale : {reading.across, reading.down})
    if (!(scale > 0.8 && scale < 1.25))
      throw Refusal(
          "The rulers are given as " + fixed(request.rulers->across, 1) + " and " +
          fixed(request.rulers->down, 1) +
          " mm, but they are about 240 and 180 mm long. Measure both from end tick to end tick, the long "
          "one first.");
  reading.sigma_across = kRulerSigma / kRulerAcross;
  reading.sigma_down = kRulerSigma / kRulerDown;
  return reading;
}

std::optional<LampReading> lamp_reading(const CalibrationRequest& request) {
  if (!request.lamp_height) return std::nullopt;
  if (!(*request.lamp_height > 200.0 && *request.lamp_height < 6000.0))
    throw Refusal("The projector's lens is said to be " + fixed(*request.lamp_height, 0) +
                  " mm above the mat. Measure straight up from the mat to the middle of the lens.");
  return LampReading{*request.lamp_height, kLampSigma};
}

// A tape is held against paper alone before it is heard: one that is far off would bend the whole fit, and
// something else would be blamed.
void check_span(const Scene& scene, const SceneSpan& span, bool rulers) {
  const double seen =
      (scene.mat_from_sheet(span.from, {0, 0}) - scene.mat_from_sheet(span.to, {0, 0})).norm();
  const double scale = std::max(scene.reading.sigma_across, scene.reading.sigma_down);
  if (std::abs(span.length - seen) < kSpanSlack + kSpanAgrees * std::hypot(scale, kPaperAlone) * seen) return;
  const auto off_by = [&](double unit) { return std::abs(span.length * unit / seen - 1.0) < 0.1; };
  const auto number = [&](int sheet) {
    return std::to_string(scene.sheets[static_cast<size_t>(sheet)].number);
  };
  std::string cure = "Measure again between the centre crosses, and check the sheets' numbers.";
  if (off_by(10.0)) cure = "It looks like centimetres: give it in mm, or with cm behind it.";
  if (off_by(25.4)) cure = "It looks like inches: give it in mm, or with in behind it.";
  if (cure.starts_with("Measure") && !rulers)
    cure += " If it stays so, the sheets are printed at another scale: measure both their rulers as well.";
  throw CertainRefusal("The tape from sheet " + number(span.from) + " to sheet " + number(span.to) +
                       " is given as " + fixed(span.length, 1) + " mm, but the photographs say about " +
                       fixed(seen, 0) + " mm. " + cure);
}

void add_spans(Scene& scene, const CalibrationRequest& request) {
  for (const Span& span : request.spans) {
    SceneSpan out;
    const auto index = [&](int number) {
      for (size_t i = 0; i < scene.sheets.size(); ++i)
        if (scene.sheets[i].number == number) return static_cast<int>(i);
      throw Refusal("A tape was laid from sheet " + std::to_string(number) +
                    ", but that sheet is not seen in the photographs. Check the number printed at its top.");
    };
    out.from = index(span.from);
    out.to = index(span.to);
    out.length = span.length;
    out.sigma = kTapeSigma;
    if (out.from == out.to || !(span.length > 0.0))
      throw Refusal("A tape must join two different sheets and be longer than nothing. Give it as A,B,MM.");
    check_span(scene, out, request.rulers.has_value());
    scene.spans.push_back(out);
  }
}

// Printers are off by a few tenths of a percent, or make a page smaller to fit it in: common practice, no
// source.
std::string ruler_doubt(const Rulers& rulers) {
  const double scale = 0.5 * (rulers.across / kRulerAcross + rulers.down / kRulerDown);
  if (std::abs(scale - 1.0) < kUsualPrint) return {};
  return "By the rulers the sheets are printed at " + fixed(100.0 * scale, 1) +
         " %. Printers are off by a few tenths of a percent, or by 3 to 7 % less where a page is fitted to "
         "the paper. All lines hang on these two lengths: measure both rulers once more, end tick to end "
         "tick, and check the light by a tape before cutting.";
}

// The same photograph once more is no second witness.
std::vector<Photograph> each_once(const std::vector<Photograph>& photographs,
                                  std::vector<std::string>& warnings) {
  std::vector<Photograph> out;
  for (const Photograph& photograph : photographs) {
    const auto same = std::find_if(out.begin(), out.end(), [&](const Photograph& kept) {
      return !kept.grey.empty() && kept.grey.size() == photograph.grey.size() &&
             cv::norm(kept.grey, photograph.grey, cv::NORM_INF) == 0.0;
    });
    if (same == out.end())
      out.push_back(photograph);
    else
      warnings.push_back("The photograph " + photograph.name + " is the same as " + same->name +
                         " and was left out: it is no second look at the table.");
  }
  return out;
}

std::vector<PhotoSheets> look_for_sheets(const std::vector<Photograph>& photographs) {
  std::vector<PhotoSheets> seen(photographs.size());
  cv::parallel_for_({0, static_cast<int>(photographs.size())}, [&](const cv::Range& range) {
    for (int n = range.start; n < range.end; ++n) {
      const auto i = static_cast<size_t>(n);
      const Photograph& photo = photographs[i];
      seen[i] = {photo.name, Eigen::Vector2d(photo.grey.cols, photo.grey.rows), photo.focal,
                 find_sheets(photo.grey)};
    }
  });
  return seen;
}

std::string now_utc() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  char text[32];
  std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", std::gmtime(&now));
  return text;
}

std::string source_of(const CalibrationRequest& request) {
  if (request.rulers && !request.spans.empty()) return "rulers and span";
  if (request.rulers) return "rulers";
  return request.spans.empty() ? "page" : "span";
}

// Too few corners in light say nothing of a lens.
void check_light(const Scene& scene, const TargetLayout& layout) {
  if (static_cast<int>(scene.lights.size()) >= std::min(kFewestLightCorners, layout.corner_count() / 4))
    return;
  throw Refusal("Too little of the projected target can be read (" + std::to_string(scene.lights.size()) +
                " of " + std::to_string(layout.corner_count()) +
                " corners). Dim the room, keep the whole lit area in view, and photograph again.");
}

// The fit with everything, strays thrown out and the noise of each kind measured; at last with the company
// that misses keep, lest hundreds of them that all say the same drown what is known of any lens.
FitNoise settle(Scene& scene) {
  FitNoise noise;
  for (int round = 0; round < 3; ++round) {
    fit_scene(scene, {FitPart::everything, noise, true, round == 0 ? 40 : 12});
    noise.paper = std::max(0.3, reject_stray_paper(scene));
    noise.light = std::max(0.3, reject_stray_light(scene));
  }
  fit_scene(scene, {FitPart::everything, noise, false, 12});
  noise = with_company(scene, noise);
  fit_scene(scene, {FitPart::everything, noise, false, 12});
  return noise;
}

std::string complaint(const Photograph& photograph) {
  const PictureQuality quality = picture_quality(photograph.grey);
  if (quality.dark())
    return "The photograph " + photograph.name + " is too dark: give it more light or a longer exposure. ";
  if (quality.blurred())
    return "The photograph " + photograph.name + " is blurred: hold the camera still and let it focus. ";
  return {};
}

// A sheet that moved or curls is left out and said so; a sheet of another scale is refused,
// since nobody can tell which of the sheets the rulers were measured on.
void mend_sheet(Scene& scene, const Finding& finding, std::vector<std::string>& warnings) {
  if (finding.oddity == Oddity::sheet_scale)
    throw CertainRefusal(words(scene, finding) +
                         " Print all sheets in one go at 100 %, and photograph again.");
  warnings.push_back(words(scene, finding) + " That was left out.");
  leave_out(scene, finding);
  if (scene.paper.empty())
    throw CertainRefusal(warnings.back() + " Nothing is left: lay the sheets flat and photograph again.");
}

// The sheet that bends the whole fit while nothing is known of the lens.
void mend_start(Scene& scene, std::vector<std::string>& warnings) {
  for (int round = 0; round < 2; ++round) {
    const std::optional<Finding> odd = find_odd_sheet(scene);
    if (!odd) return;
    mend_sheet(scene, *odd, warnings);
    settle_paper(scene);
    settle_paper(scene);
  }
}

template <typename Refit>
void mend_sheets(Scene& scene, double least, std::vector<std::string>& warnings, const Refit& refit) {
  for (int round = 0; round < 2; ++round) {
    std::vector<Finding> findings = find_sheet_oddities(scene, least);
    // One sheet of another scale bends the fit of the others: the worst is the one.
    std::sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
      const auto weight = [](const Finding& f) {
        return f.oddity == Oddity::sheet_scale ? std::abs(f.size) : -1.0;
      };
      return weight(a) > weight(b);
    });
    for (const Finding& finding : findings) mend_sheet(scene, finding, warnings);
    if (findings.empty()) return;
    refit(scene);
  }
}

// What was measured by hand must agree with what the photographs say.
void check_readings(const Scene& scene, const CalibrationRequest& request) {
  if (request.rulers) {
    const double across = kRulerAcross * std::exp(scene.print_scale[0]),
                 down = kRulerDown * std::exp(scene.print_scale[1]);
    if (std::hypot(across - request.rulers->across, down - request.rulers->down) > kRulersAgree)
      throw CertainRefusal(
          "The rulers are given as " + fixed(request.rulers->across, 1) + " and " +
          fixed(request.rulers->down, 1) +
          " mm, but the sheets in the photographs say that their lengths go together otherwise, for "
          "example " +
          fixed(across, 1) + " and " + fixed(down, 1) +
          " mm. Measure both again, end tick to end tick, on a sheet that lay on the table.");
  }
  for (const SceneSpan& span : scene.spans) {
    const Eigen::Vector2d way =
        scene.mat_from_sheet(span.from, {0, 0}) - scene.mat_from_sheet(span.to, {0, 0});
    if (std::abs(way.norm() - span.length) > 5.0 * span.sigma)
      throw CertainRefusal("The tape from one sheet to another is given as " + fixed(span.length, 1) +
                           " mm, but all else says " + fixed(way.norm(), 1) +
                           " mm. Measure again between the centre crosses, and check the sheets' numbers.");
  }
}

// A projector that squares its picture electronically bends it about another point than the picture's own:
// its four numbers are set free when light fits clearly better with them, by Schwarz's criterion
// (G. Schwarz, "Estimating the dimension of a model", 1978).
void heed_keystone(Scene& scene, const FitNoise& noise) {
  Scene square = scene;
  square.keystone_free = true;
  const double better = 0.5 * 4.0 * std::log(static_cast<double>(scene.lights.size()));
  const double before = fit_scene(scene, {FitPart::everything, noise, true, 12}),
               after = fit_projector(square, noise)
                           ? fit_scene(square, {FitPart::everything, noise, true, 12})
                           : -1.0;
  if (before >= 0.0 && after >= 0.0 && before - after > better) scene = std::move(square);
}

// The tape to the lens joins the fit, unless the photographs alone rule it out: they fit much worse with it.
void heed_lamp(Scene& scene, const FitNoise& noise, const LampReading& lamp) {
  Scene taped = scene;
  taped.lamp_height = lamp;
  fit_projector(taped, noise);
  const double with = fit_scene(taped, {FitPart::everything, noise, true, 12}),
               alone = fit_scene(scene, {FitPart::everything, noise, true, 4});
  if (!(with >= 0.0 && with - alone < 0.5 * kLampAgrees * kLampAgrees))
    throw CertainRefusal("The lens is given as " + fixed(lamp.height, 0) +
                         " mm above the mat, but the photographs say about " +
                         fixed(finish_map(scene).lamp().z(), 0) +
                         " mm and do not go together with the other. Measure straight up from the mat to the "
                         "middle of the lens, or leave it out.");
  scene = std::move(taped);
}

void check_picture(const Scene& scene, const std::vector<cv::Mat>& pictures) {
  const std::vector<Finding> findings = find_picture_oddities(scene, pictures);
  if (!findings.empty())
    throw CertainRefusal(words(scene, findings.front()) +
                         " Let projector, table and cloth stand still, and take all photographs again.");
}

// The camera of each lens, where its photographs tell one and the same.
std::vector<std::string> cameras_of(const Scene& scene, const std::vector<Photograph>& photographs) {
  std::vector<std::optional<std::string>> named(scene.lenses.size());
  for (const ScenePhoto& photo : scene.photos)
    for (const Photograph& photograph : photographs) {
      if (photograph.name != photo.name) continue;
      auto& name = named[static_cast<size_t>(photo.lens)];
      name = !name || *name == photograph.camera ? photograph.camera : std::string();
    }
  std::vector<std::string> out;
  for (const auto& name : named) out.push_back(name.value_or(""));
  return out;
}

// A remembered lens does not help here: what bends a single sheet bends everything, and nothing shows it.
std::string one_sheet(const std::vector<Photograph>& photographs, const CalibrationRequest& request) {
  const bool known = std::any_of(photographs.begin(), photographs.end(), [&](const Photograph& p) {
    return believed_lens(request.known_lenses, p.camera, p.grey.cols, p.grey.rows).has_value();
  });
  return std::string("Only one sheet is seen") +
         (known
              ? ". The camera's lens is remembered, but one sheet alone does not show whether it is bent or "
                "was moved. "
              : ", and the camera's lens is not known. ") +
         "Lay three more sheets spread over the light and photograph again.";
}

CalibrationReport attempt(const std::vector<Photograph>& all, const CalibrationRequest& request) {
  const TargetLayout layout = target_layout(request.width, request.height);
  CalibrationReport report;
  const std::vector<Photograph> photographs = each_once(all, report.warnings);
  std::vector<std::string> left_out;
  std::vector<PhotoSheets> sheets = look_for_sheets(photographs), raised;
  if (request.raised) raised = take_raised(sheets, *request.raised);
  Scene scene = start_scene(sheets, scale_reading(request), left_out);
  // A fit to one sheet looks well and says little of the far end of the table.
  if (scene.sheets.size() < 2) throw Refusal(one_sheet(photographs, request));
  scene.projector_size = Eigen::Vector2d(request.width, request.height);
  add_spans(scene, request);
  const std::optional<LampReading> lamp = lamp_reading(request);
  std::vector<cv::Mat> pictures;
  for (const ScenePhoto& photo : scene.photos)
    pictures.push_back(std::find_if(photographs.begin(), photographs.end(), [&](const Photograph& p) {
                         return p.name == photo.name;
                       })->grey);
  for (const Photograph& photograph : photographs)
    if (std::find(left_out.begin(), left_out.end(), photograph.name) != left_out.end())
      report.warnings.push_back(complaint(photograph) + photograph.name +
                                " was left out: it shows no sheet that the others show.");

  // Gross faults first: they would bend the poses that the light is looked for with.
  mend_start(scene, report.warnings);
  mend_sheets(scene, 4.0, report.warnings, settle_paper);
  if (request.raised) {
    add_raised(scene, raised, *request.raised);
    settle_paper(scene);
  }
  start_projector(scene, pictures, layout);
  drop_crossed_paper(scene, layout);
  find_light(scene, pictures, layout);
  check_light(scene, layout);
  const FitNoise first = settle(scene);
  check_picture(scene, pictures);  // before light that moved is laid to the paper
  mend_sheets(scene, 1.0, report.warnings, settle);
  if (request.raised && std::none_of(scene.lights.begin(), scene.lights.end(),
                                     [](const LightPoint& point) { return point.sheet >= 0; }))
    report.warnings.push_back(
        "Of the target on the raised sheet nothing could be read, so it says nothing of how the light "
        "slants. "
        "Lay it where the light is sharp, or give --lamp-height.");
  heed_keystone(scene, first);
  find_light(scene, pictures, layout);  // again from where the lens now says the corners are
  check_light(scene, layout);
  FitNoise noise = settle(scene);
  if (lamp) {
    heed_lamp(scene, noise, *lamp);
    noise = settle(scene);
  }
  const std::vector<std::string> cameras = cameras_of(scene, photographs);
  for (const std::string& dropped : heed_known_lenses(scene, noise, cameras, request.known_lenses))
    report.warnings.push_back(dropped);
  check_sides(scene, pictures, layout);
  check_readings(scene, request);
  if (const std::string doubt = request.rulers ? ruler_doubt(*request.rulers) : ""; !doubt.empty())
    report.warnings.push_back(doubt);

  report.map = finish_map(scene);
  report.map.made_at = now_utc();
  report.map.scale.source = source_of(request);
  const ErrorEstimate error = estimate_error(scene, noise, report.map);
  report.map.error = error.grid;
  report.map.scale.relative_sigma = error.scale_sigma;
  report.map.lamp_sigma = error.lamp_sigma;
  judge(scene, error, report);
  report.lenses = lenses_worth_keeping(scene, noise, cameras);
  return report;
}

}  // namespace

CalibrationReport calibrate(const std::vector<Photograph>& photographs, const CalibrationRequest& request) {
  if (photographs.empty())
    throw Refusal(
        "There are no photographs. Take one to five of the table under the target and under plain light.");
  try {
    return attempt(photographs, request);
  } catch (const CertainRefusal&) {
    throw;
  } catch (const Refusal& refusal) {
    std::string why;
    for (const Photograph& photograph : photographs)
      if (why.empty()) why = complaint(photograph);
    throw Refusal(why + refusal.what());
  }
}

}  // namespace cowlcast::calibration
