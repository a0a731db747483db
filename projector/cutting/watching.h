// Watching: the frames of one fixed camera, handed to all who look at them while she cuts.
//
//   Watching watching(TableWatch(map, camera));
//   watching.add(std::make_unique<SomebodyWhoLooks>(...));
//   for (;;) {
//     watching.look(window.view(), window.frame(), frame, feed.complaint(), now);
//     CuttingView view = window.view();
//     if (watching.said(view)) window.set_view(view, watching.map());
//   }
//
// Looking takes its time, seconds when the table is learnt, and can be done beside the window; saying takes
// none, and is of the view as it is by then.
//
// First comes `TableWatch`: whether the table stands where it was. The others are asked only while it does,
// since a place in millimetres of the mat means nothing else. Each tells by the view: a block, or a notice.
#pragma once

#include <QImage>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "calibration/camera/frame_source.h"
#include "projector/cutting/table_watch.h"

namespace cowlcast::projector {

/// What there is to look at in a moment.
struct Glimpse {
  cv::Mat picture;                   ///< as the camera sends it, 8-bit BGR or grey; empty: none has come
  cv::Mat grey;                      ///< the same in grey
  std::string complaint;             ///< why none has come; empty: it is only a moment
  double seconds = 0.0;              ///< on a clock that does not go back
  const CuttingView& view;           ///< what is done on the table
  const QImage& shown;               ///< the projector's picture
  const calibration::TableMap& map;  ///< as they hold now
  const calibration::FixedCamera& camera;
};

/// Somebody who looks.
class Watcher {
 public:
  virtual ~Watcher() = default;
  /// Called after a frame that came while the table is learnt; `taken` are the frames that count so far.
  virtual void learn(const Glimpse& glimpse, const calibration::StillFrames& taken);
  /// Called for every frame while the table stands, and now and then when none has come.
  virtual void look(const Glimpse& glimpse) = 0;
  /// The view with what it has to say: `blocked`, or more in `notice`. Called after `look`.
  virtual CuttingView said(CuttingView view) const = 0;
};

class Watching {
 public:
  explicit Watching(TableWatch table);

  void add(std::unique_ptr<Watcher> watcher);

  /// One frame, or none, while `view` is shown as `shown`.
  void look(const CuttingView& view, const QImage& shown,
            const std::optional<calibration::CameraFrame>& frame, const std::string& complaint,
            double seconds);

  /// The view with what is to be shown or said since the last look; hears what it asks of the camera. True
  /// when it has become another one, to be shown by `map()`.
  bool said(CuttingView& view);

  const TableWatch& table() const { return table_; }
  const calibration::TableMap& map() const { return table_.map(); }

 private:
  TableWatch table_;
  std::vector<std::unique_ptr<Watcher>> others_;
  bool asked_ = false;   // she wants the camera to learn, or to find the table again
  int found_again_ = 0;  // as last said
};

}  // namespace cowlcast::projector
