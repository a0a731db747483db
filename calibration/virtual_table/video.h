// Video: a simulated table as a fixed camera sees it, frame by frame.
//
//   TableVideo video(room, camera, {.kind = ClothPrint::Kind::stripes});
//   video.show(0, picture);                              // light a projected picture makes
//   cv::Mat frame = video.frame({.picture = 0, .things = {{hand, {{.x = 20, .y = 40}}}}}, seed);
//
// The table at rest is drawn once by the same renderer as photographs; what moves
// is painted over it in linear light: things at their true height, the shadow
// they take from the projector, the softer ones they take from the room, light
// that grows, fades or changes colour, an exposure that follows it, shot and read
// noise, the sRGB curve, sharpening and, if wanted, JPEG.
//
// Not modelled: light bounced off things, cloth that folds over or hides what is
// behind its ripples, rolling shutter, a camera that moves. Things are made of flat parts. It knows
// nothing of whoever watches the video.
#pragma once

#include <cstdint>
#include <map>
#include <opencv2/core.hpp>
#include <optional>
#include <vector>

#include "calibration/virtual_table/room.h"
#include "calibration/virtual_table/video_drag.h"
#include "calibration/virtual_table/video_things.h"

namespace cowlcast::calibration::virtual_table {

/// A second colour woven or printed into the cloth.
struct ClothPrint {
  enum class Kind { none, stripes, checks, dots };
  Kind kind = Kind::none;
  Colour colour{0.6f, 0.6f, 0.6f};
  double step = 24.0;  ///< from one repeat to the next, mm
};

/// A thing on the cloth. Several places: where it was during the exposure, which blurs it.
struct PosedThing {
  Thing thing = {};
  std::vector<Place> places = {};
};

struct Moment {
  int picture = 0;                     ///< which of the pictures shown is in the light
  double ambient = 1.0;                ///< room light over the room's own
  Colour tint{1.0f, 1.0f, 1.0f};       ///< colour of that light over the room's own
  double exposure_stops = 0.0;         ///< away from the exposure of the empty table under picture 0
  std::optional<Shadow> leaning = {};  ///< somebody between lamp and table; its projector_left is not used
  std::optional<Drag> drag = {};
  std::vector<PosedThing> things = {};
};

class TableVideo {
 public:
  /// The room needs a cloth; its sheets, shadows and electronic keystone are left out.
  TableVideo(const Room& room, const RoomCamera& camera, const ClothPrint& print);

  /// The light of a picture, 8 bit, the projector's size, to be used as `Moment::picture` = `number` from now
  /// on.
  void show(int number, const cv::Mat& picture);

  /// Only the part of the frames around these points of the cloth is drawn anew from now on, the rest stays
  /// as it was in the last whole frame. Empty: all of it is.
  void look_only_at(const std::vector<Eigen::Vector2d>& area);

  /// The frame, 8 bit BGR of the camera's size. `jpeg` is a quality, 0 leaves it alone. The returned
  /// picture is drawn over by the next call.
  const cv::Mat& frame(const Moment& moment, std::uint64_t seed, int jpeg = 0);

 private:
  struct Cloth {
    cv::Mat albedo, beam, shade;
  };
  Cloth lying(const Moment& moment) const;
  void expose(const cv::Mat& light, double stops, std::uint64_t seed);
  void darken(const Moment& moment, cv::Mat& room_left, cv::Mat& beam_left) const;
  void paint(const Moment& moment, const PosedThing& posed, cv::Mat& light) const;
  std::vector<cv::Point> outline_at(const Part& part, const Place& place, double height, bool beam) const;

  Room room_;
  RoomCamera camera_;
  double cloth_ = 0.0;                // height, mm
  Eigen::Vector3d lamp_;              // the projector's lens, mm
  cv::Mat albedo_, ambient_, white_;  // towards each pixel: of the cloth, and lux of room and full beam
  cv::Mat picture_from_pixel_;        // where in the picture a pixel's light comes from
  cv::Mat mat_from_pixel_;            // on the cloth, mm
  cv::Mat vignette_;
  std::map<int, cv::Mat> beams_;  // lux
  cv::Mat frame_;
  cv::Rect fresh_;
  double white_level_ = 0.0;
};

}  // namespace cowlcast::calibration::virtual_table
