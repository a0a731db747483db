#include "calibration/camera/frame_source.h"

#include <algorithm>
#include <filesystem>
#include <opencv2/core/utils/logger.hpp>
#include <opencv2/imgproc.hpp>
#include <opencv2/videoio.hpp>
#include <string>
#include <system_error>
#include <utility>

namespace cowlcast::calibration {
namespace {

constexpr double kTryAgain = 2.0;  // seconds between tries to open a camera
constexpr double kSilent = 3.0;    // seconds without a picture that are worth a word

// On Linux cameras are asked for through its own interface alone: the others that OpenCV would try besides
// are slow to say no, and some keep memory.
#if defined(__linux__)
constexpr int kCameras = cv::CAP_V4L2;
constexpr double kByHand = 1.0;  // V4L2_EXPOSURE_MANUAL
#else
constexpr int kCameras = cv::CAP_ANY;
constexpr double kByHand = 0.25;  // what OpenCV's other interfaces take (common practice, no source)
#endif

bool is_number(const std::string& text) {
  return !text.empty() && text.size() < 4 &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

class VideoDevice : public CameraDevice {
 public:
  explicit VideoDevice(const CameraRequest& request) {
    const std::string& spec = request.spec;
    const bool camera = is_number(spec) || spec.starts_with("/dev/");
    film_ = !camera && spec.find("://") == std::string::npos;
    std::error_code ignored;
    if (film_ && !std::filesystem::exists(spec, ignored)) return;
    if (is_number(spec))
      capture_.open(std::stoi(spec), kCameras);
    else
      capture_.open(spec, camera ? kCameras : static_cast<int>(cv::CAP_ANY));
    if (!capture_.isOpened()) return;
    if (film_) return;
    if (request.width > 0) capture_.set(cv::CAP_PROP_FRAME_WIDTH, request.width);
    if (request.height > 0) capture_.set(cv::CAP_PROP_FRAME_HEIGHT, request.height);
    capture_.set(cv::CAP_PROP_BUFFERSIZE, 1);  // the newest picture, not one of a second ago
  }
  bool opened() const { return capture_.isOpened(); }
  bool read(cv::Mat& picture) override {
    cv::Mat shared;  // the next read may write over it
    if (!capture_.read(shared) || shared.empty()) return false;
    picture = shared.clone();
    return true;
  }
  bool is_film() const override { return film_; }
  double frames_a_second() const override {
    const double rate = capture_.get(cv::CAP_PROP_FPS);
    return rate > 0.0 && rate < 1000.0 ? rate : 0.0;
  }
  void hold() override {
    if (film_) return;
    const double exposure = capture_.get(cv::CAP_PROP_EXPOSURE);
    capture_.set(cv::CAP_PROP_AUTOFOCUS, 0);
    capture_.set(cv::CAP_PROP_AUTO_WB, 0);
    if (capture_.set(cv::CAP_PROP_AUTO_EXPOSURE, kByHand) && exposure > 0.0)
      capture_.set(cv::CAP_PROP_EXPOSURE, exposure);
  }

 private:
  cv::VideoCapture capture_;
  bool film_ = false;
};

std::string pixels(int width, int height) {
  return std::to_string(width) + " x " + std::to_string(height);
}

}  // namespace

cv::Mat grey_of(const cv::Mat& picture) {
  if (picture.channels() == 1) return picture;
  cv::Mat grey;
  cv::cvtColor(picture, grey, cv::COLOR_BGR2GRAY);
  return grey;
}

std::unique_ptr<CameraDevice> open_camera(const CameraRequest& request) {
  // OpenCV's remarks on cameras are nothing to the person at the table.
  cv::utils::logging::setLogLevel(cv::utils::logging::LOG_LEVEL_SILENT);
  try {
    auto device = std::make_unique<VideoDevice>(request);
    if (device->opened()) return device;
  } catch (const cv::Exception&) {  // as good as not there
  }
  return nullptr;
}

double steady_seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

FrameSource::FrameSource(CameraRequest request, OpenCamera open, Clock clock)
    : request_(std::move(request)), open_(std::move(open)), clock_(std::move(clock)) {
  open_again();
}

void FrameSource::open_again() {
  tried_ = opened_ = clock_();
  held_ = false;
  device_ = open_(request_);
  if (device_) {
    film_ = device_->is_film();
    state_ = SourceState::running;
    complaint_.clear();
    return;
  }
  lose(seen_ ? "The camera \"" + request_.spec + "\" is gone. Plug it in again; it is looked for by itself."
             : "There is no camera or film \"" + request_.spec +
                   "\". Plug the camera in and close other programs that use it, or name another.");
}

void FrameSource::lose(const std::string& complaint) {
  device_.reset();
  state_ = SourceState::lost;
  complaint_ = complaint;
}

std::optional<CameraFrame> FrameSource::read() {
  if (state_ == SourceState::ended) return std::nullopt;
  if (state_ == SourceState::lost) {
    if (clock_() - tried_ < kTryAgain) return std::nullopt;
    open_again();
    if (!device_) return std::nullopt;
  }
  CameraFrame frame;
  bool got = false;
  try {
    got = device_->read(frame.picture);
  } catch (const cv::Exception&) {  // a cable pulled in the middle of a picture
  }
  if (!got) {
    tried_ = clock_();
    if (film_ && seen_) {
      device_.reset();
      state_ = SourceState::ended;
      complaint_ = "The film \"" + request_.spec + "\" has come to its end.";
    } else {
      lose("The camera \"" + request_.spec +
           "\" sends no pictures. Plug it in again; it is looked for by itself.");
    }
    return std::nullopt;
  }
  seen_ = true;
  frame.seconds = clock_();
  if (request_.hold_after > 0.0 && !held_ && frame.seconds - opened_ >= request_.hold_after) {
    device_->hold();
    held_ = true;
  }
  if (frame.picture.size() != size_) {
    size_ = frame.picture.size();
    const bool other = request_.width > 0 && request_.height > 0 &&
                       size_ != cv::Size(request_.width, request_.height) && !film_;
    remark_ = other ? "The camera was asked for " + pixels(request_.width, request_.height) +
                          " pixels and sends " + pixels(size_.width, size_.height) + "."
                    : "";
  }
  return frame;
}

CameraFeed::CameraFeed(CameraRequest request, OpenCamera open)
    : request_(std::move(request)),
      open_(std::move(open)),
      heard_(steady_seconds()),
      thread_([this](const std::stop_token& stop) { run(stop); }) {}

CameraFeed::~CameraFeed() {
  thread_.request_stop();
  wake_.notify_all();
}

void CameraFeed::run(const std::stop_token& stop) {
  FrameSource source(request_, open_);
  double next = steady_seconds();
  while (!stop.stop_requested()) {
    auto frame = source.read();
    double rest = 0.0;
    if (!frame) {
      rest = source.state() == SourceState::ended ? 0.5 : 0.1;
    } else if (source.is_film()) {
      const double rate = source.frames_a_second();
      next = std::max(next + (rate > 0.0 ? 1.0 / rate : 0.04), frame->seconds);
      rest = next - frame->seconds;
    }
    std::unique_lock lock(mutex_);
    if (frame) {
      heard_ = frame->seconds;
      newest_ = std::move(frame);
    }
    state_ = source.state();
    complaint_ = source.complaint();
    remark_ = source.remark();
    if (rest > 0.0)
      wake_.wait_for(lock, stop, std::chrono::duration<double>(rest), [&] { return stop.stop_requested(); });
  }
}

std::optional<CameraFrame> CameraFeed::newest() {
  const std::lock_guard lock(mutex_);
  return std::exchange(newest_, std::nullopt);
}

SourceState CameraFeed::state() const {
  const std::lock_guard lock(mutex_);
  return state_;
}

std::string CameraFeed::complaint() const {
  const std::lock_guard lock(mutex_);
  if (state_ == SourceState::running && steady_seconds() - heard_ > kSilent)
    return "The camera has sent no picture for some seconds. Check its cable.";
  return complaint_;
}

std::string CameraFeed::remark() const {
  const std::lock_guard lock(mutex_);
  return remark_;
}

}  // namespace cowlcast::calibration
