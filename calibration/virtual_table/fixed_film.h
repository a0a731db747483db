// FixedFilm: the frames of a camera that stays over the table, many and cheap.
//
//   FixedFilm film({.dark = dark, .lit = lit}, camera, places);
//   for (int i = 0; i < 36000; ++i) watch.look(film.frame(0.1 * i, i), 0.1 * i);
//
// A scene that stands still differs from frame to frame by its noise, the flicker of
// lamps and projector, and whoever reaches over the table. The light of the scene
// is rendered once, without and with the projector's picture; only the places that are
// looked at are made anew in each frame, the rest is a still.
#pragma once

#include <cstdint>
#include <opencv2/core.hpp>
#include <optional>
#include <vector>

#include "calibration/virtual_table/room.h"

namespace cowlcast::calibration::virtual_table {

/// Linear light of a scene as the camera sees it, from `linear_photograph`.
struct FilmLight {
  cv::Mat dark;  ///< the projector shows black
  cv::Mat lit;   ///< it shows its picture
};

/// How the light wavers. Heights are relative.
struct FilmFlicker {
  double lamps = 0.0, lamp_rows = 400.0;           ///< bands of a rolling shutter under mains lamps
  double projector = 0.0, projector_rows = 300.0;  ///< the same of the projector's colours
  double exposure = 0.0;                           ///< slow wandering of the camera's exposure
};

/// An arm in the frame: from beyond its edge to the hand, pixels. It hides what is under it and shades what
/// is beside it.
struct FilmArm {
  Eigen::Vector2d elbow{0.0, 0.0}, hand{0.0, 0.0};
  double radius = 40.0;                ///< half its width, pixels
  float tone = 0.3f;                   ///< light it sends back, of a white sheet in its place
  Eigen::Vector2d shadow{25.0, 12.0};  ///< by how far its shadow falls beside it, pixels
};

class FixedFilm {
 public:
  /// The exposure is set once, for `light.lit` of the first scene, and stays.
  FixedFilm(const FilmLight& light, const RoomCamera& camera, const std::vector<cv::Rect>& places,
            const FilmFlicker& flicker = {});

  /// Another scene from now on: something moved. Images of the same size.
  void change(const FilmLight& light);

  /// Only these places are made anew from now on.
  void look_at(const std::vector<cv::Rect>& places);

  /// The 8 bit grey frame at `seconds`; the same arguments give the same frame. It is overwritten by the
  /// next.
  const cv::Mat& frame(double seconds, std::uint64_t seed, const std::optional<FilmArm>& arm = {});

 private:
  void still();

  RoomCamera camera_;
  std::vector<cv::Rect> places_;
  FilmFlicker flicker_;
  double white_ = 1.0;
  cv::Mat dark_,
      beam_;  // luminance as the sensor counts it, white is 1: without the picture; the picture's part
  cv::Mat frame_;
};

/// Frames to learn from: `count` frames of a scene, copies of their own.
std::vector<cv::Mat> film_frames(FixedFilm& film, int count, double seconds, std::uint64_t seed);

}  // namespace cowlcast::calibration::virtual_table
