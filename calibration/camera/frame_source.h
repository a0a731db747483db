// FrameSource: pictures from a camera, one after another, whatever happens to its cable.
//
//   FrameSource source({.spec = "0", .width = 1280, .height = 720});
//   while (working)
//     if (auto frame = source.read()) use(frame->picture, frame->seconds);
//     else if (source.state() == SourceState::lost) tell(source.complaint());
//
// The only place that talks to OpenCV's VideoCapture. A camera that is missing
// or pulled out is no exception but a state with a sentence; `read` then tries
// to open it again now and then. A film ends, and that is a state as well.
// `read` waits for the next picture: windows use `CameraFeed`, which waits in a
// thread of its own.
#pragma once

#include <chrono>
#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <opencv2/core.hpp>
#include <optional>
#include <string>
#include <thread>

namespace cowlcast::calibration {

/// Which camera, and how it should be set. Zero: as the camera likes.
struct CameraRequest {
  std::string spec;           ///< a number, a device such as /dev/video2, a film, or an address with "://"
  int width = 0, height = 0;  ///< pixels asked for
  double hold_after = 0.0;    ///< seconds of pictures after which exposure, colours and focus stay; 0: never
};

struct CameraFrame {
  cv::Mat picture;       ///< 8-bit BGR or grey
  double seconds = 0.0;  ///< on the clock of the source, when it arrived
};

/// A picture as a camera sends it, in grey.
cv::Mat grey_of(const cv::Mat& picture);

enum class SourceState {
  running,
  lost,   ///< not there, or no longer there; it is looked for again
  ended,  ///< a film that has been seen to its end
};

/// One opened camera; destroying it closes it.
class CameraDevice {
 public:
  virtual ~CameraDevice() = default;
  /// The next picture, owned by the caller; false when there is none.
  virtual bool read(cv::Mat& picture) = 0;
  virtual bool is_film() const = 0;
  virtual double frames_a_second() const = 0;  ///< 0: not known
  /// Exposure, colour balance and focus stay as they are from now on, as far as the camera obeys.
  virtual void hold() {}
};

/// Opens through OpenCV; nothing when the camera cannot be opened.
std::unique_ptr<CameraDevice> open_camera(const CameraRequest& request);

using OpenCamera = std::function<std::unique_ptr<CameraDevice>(const CameraRequest&)>;
using Clock = std::function<double()>;  ///< seconds, never going back

/// Seconds of a steady clock.
double steady_seconds();

class FrameSource {
 public:
  /// Opens the camera; what failed is in `state`. `open` and `clock` may be replaced, for cameras of other
  /// kinds.
  explicit FrameSource(CameraRequest request, OpenCamera open = open_camera, Clock clock = steady_seconds);

  /// The next picture. Nothing when there is none: see `state`. While lost, a call looks for the camera
  /// again if the last try is two seconds ago, and returns at once otherwise.
  std::optional<CameraFrame> read();

  SourceState state() const { return state_; }
  /// Why there is no picture, and what to do: a sentence or two; empty while running.
  const std::string& complaint() const { return complaint_; }
  /// A remark when the pictures are not of the size asked for; else empty.
  const std::string& remark() const { return remark_; }
  /// Size of the pictures as they come; 0 x 0 before the first.
  cv::Size size() const { return size_; }
  double frames_a_second() const { return device_ ? device_->frames_a_second() : 0.0; }
  bool is_film() const { return film_; }

 private:
  void open_again();
  void lose(const std::string& complaint);

  CameraRequest request_;
  OpenCamera open_;
  Clock clock_;
  std::unique_ptr<CameraDevice> device_;
  SourceState state_ = SourceState::lost;
  std::string complaint_, remark_;
  cv::Size size_;
  double tried_ = 0.0, opened_ = 0.0;
  bool held_ = false;
  bool film_ = false, seen_ = false;
};

/// A source opened and read by a thread of its own, which keeps the newest picture. A film runs at its own
/// pace. Until it is opened the state is `lost`, without a complaint. Its end waits for the camera.
class CameraFeed {
 public:
  explicit CameraFeed(CameraRequest request, OpenCamera open = open_camera);
  ~CameraFeed();
  CameraFeed(const CameraFeed&) = delete;
  CameraFeed& operator=(const CameraFeed&) = delete;

  /// The newest picture that was not handed out before; nothing when none has come since.
  std::optional<CameraFrame> newest();

  SourceState state() const;
  /// As of the source; also when a camera has been silent for three seconds.
  std::string complaint() const;
  std::string remark() const;

 private:
  void run(const std::stop_token& stop);

  mutable std::mutex mutex_;
  std::condition_variable_any wake_;
  CameraRequest request_;
  OpenCamera open_;
  std::optional<CameraFrame> newest_;
  SourceState state_ = SourceState::lost;
  std::string complaint_, remark_;
  double heard_;
  std::jthread thread_;  // last: it ends before what it uses
};

}  // namespace cowlcast::calibration
