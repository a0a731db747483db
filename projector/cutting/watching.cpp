#include "projector/cutting/watching.h"

#include <algorithm>
#include <utility>

namespace cowlcast::projector {
namespace {

bool same(const Mark& a, const Mark& b) {
  return a.lines == b.lines && a.closed == b.closed && a.width == b.width && a.colour == b.colour;
}

// What watchers may change of a view.
bool same(const CuttingView& a, const CuttingView& b) {
  const auto& marks = a.notice.marks;
  return a.camera_asked == b.camera_asked && a.light == b.light && a.border_marks == b.border_marks &&
         a.block == b.block && a.way_out == b.way_out && a.camera == b.camera &&
         a.notice.dim == b.notice.dim && a.notice.words == b.notice.words &&
         std::equal(marks.begin(), marks.end(), b.notice.marks.begin(), b.notice.marks.end(),
                    [](const Mark& one, const Mark& other) { return same(one, other); });
}

}  // namespace

void Watcher::learn(const Glimpse&, const calibration::StillFrames&) {}

Watching::Watching(TableWatch table) : table_(std::move(table)) {}

void Watching::add(std::unique_ptr<Watcher> watcher) {
  others_.push_back(std::move(watcher));
}

void Watching::look(const CuttingView& view, const QImage& shown,
                    const std::optional<calibration::CameraFrame>& frame, const std::string& complaint,
                    double seconds) {
  if (std::exchange(asked_, false)) table_.ask(seconds);
  Glimpse glimpse{{}, {}, complaint, seconds, view, shown, table_.map(), table_.camera()};
  if (frame) {
    glimpse.picture = frame->picture;
    glimpse.grey = calibration::grey_of(frame->picture);
    table_.look(glimpse.grey, seconds);
  } else {
    table_.without_picture(complaint, seconds);
  }
  if (table_.learning() != nullptr && frame)
    for (const auto& watcher : others_) watcher->learn(glimpse, *table_.learning());
  if (table_.steady())
    for (const auto& watcher : others_) watcher->look(glimpse);
}

bool Watching::said(CuttingView& view) {
  asked_ = asked_ || view.camera_asked;
  CuttingView now = table_.said(view);
  if (table_.steady())
    for (const auto& watcher : others_) now = watcher->said(std::move(now));
  // Said anew it is the same block, and what was asked about it holds.
  if (now.block == view.block) now.asked = view.asked;
  const int found = table_.found_again();
  const bool changed = !same(now, view) || found != std::exchange(found_again_, found);
  view = std::move(now);
  return changed;
}

}  // namespace cowlcast::projector
