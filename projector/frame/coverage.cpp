#include "projector/frame/coverage.h"

#include <algorithm>
#include <cmath>

namespace cowlcast::projector {

Coverage::Coverage(int width, int height)
    : width_(width), height_(height), top_(height), bottom_(-1), rows_(static_cast<size_t>(height)) {}

void Coverage::add(const drafting::Polyline& ring) {
  // Pixel squares begin at whole numbers here: the one place of the half pixel.
  constexpr double half = 0.5;
  for (size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    add_edge(ring[j].x() + half, ring[j].y() + half, ring[i].x() + half, ring[i].y() + half);
}

void Coverage::add_edge(double x0, double y0, double x1, double y1) {
  if (y0 == y1) return;
  const double sign = y1 > y0 ? 1.0 : -1.0;
  if (y0 > y1) {
    std::swap(x0, x1);
    std::swap(y0, y1);
  }
  if (y1 <= 0.0 || y0 >= height_) return;
  const double slope = (x1 - x0) / (y1 - y0);
  if (y0 < 0.0) {
    x0 -= y0 * slope;
    y0 = 0.0;
  }
  if (y1 > height_) {
    x1 -= (y1 - height_) * slope;
    y1 = height_;
  }
  const int first = static_cast<int>(y0), last = std::min(height_ - 1, static_cast<int>(std::ceil(y1)) - 1);
  top_ = std::min(top_, first);
  bottom_ = std::max(bottom_, last);
  double x = x0, y = y0;
  for (int row = first; row <= last; ++row) {
    const double until = std::min(y1, row + 1.0);
    const double next = row == last ? x1 : x + (until - y) * slope;
    add_in_row(row, x, next, sign * (until - y));
    x = next;
    y = until;
  }
}

// Part of an edge within one row of pixels, from x0 to x1, `height` of it (signed).
void Coverage::add_in_row(int row, double x0, double x1, double height) {
  if (height == 0.0) return;
  std::vector<Cell>& cells = rows_[static_cast<size_t>(row)];
  if (x0 > x1) std::swap(x0, x1);  // area and height do not mind which end comes first
  if (x0 >= width_) return;
  const double per_x = x1 > x0 ? height / (x1 - x0) : 0.0;
  if (x0 < 0.0) {  // left of the picture: covers from its edge on
    const double outside = x1 <= 0.0 ? height : per_x * -x0;
    cells.push_back({0, static_cast<float>(outside), static_cast<float>(outside)});
    if (x1 <= 0.0) return;
    x0 = 0.0;
    height -= outside;
  }
  if (x1 > width_) {
    height -= per_x * (x1 - width_);
    x1 = width_;
  }
  int x = static_cast<int>(x0);
  const int last = std::min(width_ - 1, static_cast<int>(x1));
  if (x >= last) {
    const double mean = std::min(1.0, 0.5 * (x0 + x1) - x);
    cells.push_back({x, static_cast<float>(height), static_cast<float>(height * (1.0 - mean))});
    return;
  }
  double from = x0;
  for (; x <= last; ++x) {
    const double to = x == last ? x1 : x + 1.0;
    const double part = per_x * (to - from), mean = 0.5 * (from + to) - x;
    cells.push_back({x, static_cast<float>(part), static_cast<float>(part * (1.0 - mean))});
    from = to;
  }
}

namespace {

// `share` of 256 parts of `to` over `from`, channel by channel.
QRgb blend(QRgb from, QRgb to, int share) {
  const auto mix = [share](int a, int b) { return a + (((b - a) * share + 128) >> 8); };
  return qRgb(mix(qRed(from), qRed(to)), mix(qGreen(from), qGreen(to)), mix(qBlue(from), qBlue(to)));
}

int parts(float cover) {
  return static_cast<int>(std::min(1.0f, std::abs(cover)) * 256.0f + 0.5f);
}

}  // namespace

void Coverage::paint(QImage& picture, QRgb colour, std::vector<Span>* painted) {
  colour |= 0xff000000u;
  for (int row = top_; row <= bottom_; ++row) {
    std::vector<Cell>& cells = rows_[static_cast<size_t>(row)];
    if (cells.empty()) continue;
    std::sort(cells.begin(), cells.end(), [](const Cell& a, const Cell& b) { return a.x < b.x; });
    auto* line = reinterpret_cast<QRgb*>(picture.scanLine(row));
    const int from = cells.front().x;
    int to = from;
    float cover = 0.0f;
    for (size_t i = 0; i < cells.size();) {
      const int x = cells[i].x;
      float area = cover;
      for (; i < cells.size() && cells[i].x == x; ++i) {
        area += cells[i].area;
        cover += cells[i].cover;
      }
      if (const int share = parts(area)) line[x] = blend(line[x], colour, share);
      to = x + 1;
      const int between = parts(cover), next = i < cells.size() ? cells[i].x : width_;
      if (between == 0) continue;
      if (between == 256)
        std::fill(line + x + 1, line + next, colour);
      else
        for (int u = x + 1; u < next; ++u) line[u] = blend(line[u], colour, between);
      to = next;
    }
    if (painted) {
      Span& span = (*painted)[static_cast<size_t>(row)];
      span = span.from == span.to ? Span{from, to} : Span{std::min(span.from, from), std::max(span.to, to)};
    }
    cells.clear();
  }
  top_ = height_;
  bottom_ = -1;
}

}  // namespace cowlcast::projector
