// SimulatedCamera: the simulated table's own camera, on a stand over it.
//
//   SimulatedCamera camera;
//   calibration::CameraFeed feed(camera.request(), camera.opener());
//   camera.project(target);          // what the projector shows from now on
//   feed.newest();                   // a frame of that, a little later, as from a real camera
//   camera.lay(cloth, map);          // the sheets are put away, cloth lies there
//   camera.knock_projector(6.0);     // and somebody bumps into the projector
//
// It sees the same table that `simulated_table` photographs, with tags glued to the mat's edge, so live
// calibration, a camera that stays, and its watch can be tried without any hardware. Whoever looks through it
// knows nothing of the truth. A changed picture takes some tenths of a second to be seen. May be used from
// several threads.
#pragma once

#include <QImage>
#include <memory>

#include "calibration/camera/frame_source.h"
#include "projector/table/simulated_table.h"

namespace cowlcast::projector {

/// How a project names it among cameras.
inline constexpr auto kSimulatedCamera = "simulated";

class SimulatedCamera {
 public:
  /// The sheets lie on the mat, the projector shows black.
  SimulatedCamera();

  /// What to open, and how: for a CameraFeed.
  calibration::CameraRequest request() const;
  calibration::OpenCamera opener() const;

  /// What the projector shows, in its pixels.
  void project(const QImage& picture);

  /// The sheets are put away and cloth is laid where it belongs by `map`.
  void lay(const SimulatedCloth& cloth, const calibration::TableMap& map);

  /// The projector is bumped sideways, so that light falls about `mm` beside its place.
  void knock_projector(double mm);

  /// The cable is pulled out, or put back.
  void plug(bool in);

  struct Scene;

 private:
  std::shared_ptr<Scene> scene_;
};

}  // namespace cowlcast::projector
