#include "drafting/intake/svg_base.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <pugixml.hpp>
#include <sstream>

#include "drafting/geometry/motion.h"
#include "drafting/geometry/polyline.h"
#include "drafting/intake/svg_node.h"
#include "drafting/intake/svg_path.h"
#include "drafting/intake/svg_size.h"
#include "drafting/piece/assemble.h"
#include "drafting/piece/marks.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

using Roles = std::array<std::string, 6>;

/// In outline order, counter-clockwise from the top of the centre.
Roles roles_with(const std::string& centre) {
  return {centre, "hem", "side-seam", "armhole", "shoulder", "neckline"};
}
const std::string notch_id = "armhole-notch";

constexpr double joined = 0.5;    // mm: ends this near are one point
constexpr double straight = 0.2;  // mm: how far a centre front may stray from straight

struct Drawing {
  Roles roles;
  std::map<std::string, Polyline> edges;  // mm, y down
  std::optional<Point> notch;
  std::map<std::string, Point> drills;  // by id
  std::map<int, Polyline> slash_lines;  // by number
  std::vector<std::string> other_ids;
};

/// The number of a path called "slash-1", "slash-2" ...; nothing for other names.
std::optional<int> slash_number(const std::string& id) {
  if (!id.starts_with("slash-") || id.size() != 7 || id[6] < '1' || id[6] > '9') return std::nullopt;
  return id[6] - '0';
}

void check_reach(const Polyline& line, const std::string& id) {
  for (const Point& p : line) {
    if (!p.allFinite() || p.cwiseAbs().maxCoeff() > 20000.0) {
      throw Refusal("The edge \"" + id +
                    "\" reaches further than 20 m, so the drawing's size is not real. "
                    "Set its width and height in millimetres and check its viewBox.");
    }
  }
}

/// The open line of an element, mm, without points on each other.
Polyline line_of(const pugi::xml_node& node, const std::string& id, const std::string& kind,
                 const Eigen::Affine2d& mm_from_user) {
  if (!is_line(kind)) {
    throw Refusal("The id \"" + id + "\" is on a <" + kind +
                  ">, not on a path. Give the id to the path that draws that edge.");
  }
  std::vector<Polyline> lines;
  try {
    lines = polylines_from_path(path_data(node), mm_from_user);
  } catch (const Refusal& reason) {
    throw Refusal("In the edge \"" + id + "\" " + reason.what() +
                  ". Draw that edge again and save as plain SVG.");
  }
  if (lines.empty()) throw Refusal("The edge \"" + id + "\" is empty. Draw it as one path from end to end.");
  if (lines.size() > 1) {
    throw Refusal("The edge \"" + id + "\" is in " + std::to_string(lines.size()) +
                  " separate pieces. Join them into one path.");
  }
  check_reach(lines[0], id);
  Polyline clean{lines[0].front()};
  for (const Point& p : lines[0]) {
    if ((p - clean.back()).norm() > 1e-6) clean.push_back(p);
  }
  if (clean.size() < 2) throw Refusal("The edge \"" + id + "\" has no length. Draw it from end to end.");
  if ((clean.front() - clean.back()).norm() < joined) {
    throw Refusal("The edge \"" + id +
                  "\" ends where it starts. An edge is an open line: "
                  "split the outline at its corners into six paths.");
  }
  return clean;
}

[[noreturn]] void refuse_twice(const std::string& what, const std::string& id) {
  throw Refusal("Two " + what + " have the id \"" + id + "\". Keep one, or give the other an id of its own.");
}

/// A circle that stands for a place: the armhole notch or a drill mark.
void read_place(Drawing& drawing, const pugi::xml_node& node, const std::string& id,
                const Eigen::Affine2d& mm_from_user) {
  const Point place =
      mm_from_user * Point(node.attribute("cx").as_double(0.0), node.attribute("cy").as_double(0.0));
  check_reach({place}, id);
  const bool taken = id == notch_id ? drawing.notch.has_value() : drawing.drills.contains(id);
  if (taken) refuse_twice("circles", id);
  if (id == notch_id)
    drawing.notch = place;
  else
    drawing.drills[id] = place;
}

/// An element with an id that means something to a base; false for any other.
bool read_named(Drawing& drawing, const pugi::xml_node& node, const std::string& id, const std::string& kind,
                const Eigen::Affine2d& mm_from_node) {
  if (std::find(drawing.roles.begin(), drawing.roles.end(), id) != drawing.roles.end()) {
    if (drawing.edges.contains(id)) refuse_twice("paths", id);
    drawing.edges[id] = line_of(node, id, kind, mm_from_node);
  } else if (const auto number = slash_number(id)) {
    if (drawing.slash_lines.contains(*number)) refuse_twice("paths", id);
    drawing.slash_lines[*number] = line_of(node, id, kind, mm_from_node);
  } else if ((id == notch_id || is_drill_mark(id)) && (kind == "circle" || kind == "ellipse")) {
    read_place(drawing, node, id, mm_from_node);
  } else {
    return false;
  }
  return true;
}

void walk(Drawing& drawing, const pugi::xml_node& parent, const Eigen::Affine2d& mm_from_parent, int depth) {
  if (depth > 100) throw Refusal("The drawing's groups are nested too deeply. Ungroup them and save again.");
  for (const pugi::xml_node& node : parent.children()) {
    if (node.type() != pugi::node_element) continue;
    const std::string kind = local_name(node), id = node.attribute("id").value();
    if (kind == "defs" || kind == "symbol" || kind == "clipPath" || kind == "mask" || kind == "pattern" ||
        kind == "marker" || kind == "metadata") {
      continue;
    }
    const Eigen::Affine2d mm_from_node = mm_from_parent * transform_of(node);
    if (!id.empty()) drawing.other_ids.push_back(id);
    if (!read_named(drawing, node, id, kind, mm_from_node) && is_group(kind))
      walk(drawing, node, mm_from_node, depth + 1);
  }
}

/// How many letters must be changed, added or left out to make `a` into `b`.
size_t letters_apart(const std::string& a, const std::string& b) {
  std::vector<size_t> row(b.size() + 1);
  for (size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (size_t i = 1; i <= a.size(); ++i) {
    size_t corner = row[0];
    row[0] = i;
    for (size_t j = 1; j <= b.size(); ++j) {
      const size_t kept = corner + (a[i - 1] == b[j - 1] ? 0 : 1);
      corner = row[j];
      row[j] = std::min({kept, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row[b.size()];
}

/// An id of the drawing that was likely meant for `role`: other capitals, other
/// marks between the words, a letter or two wrong.
std::optional<std::string> id_like(const std::string& role, const std::vector<std::string>& ids) {
  std::optional<std::string> best;
  size_t least = 3;
  for (const std::string& id : ids) {
    if (id.size() > 40) continue;
    std::string plain;
    for (const char c : id) {
      if (c == '_' || c == ' ' || c == '.') {
        plain += '-';
      } else {
        plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
      }
    }
    const size_t apart = letters_apart(plain, role);
    if (apart < least && 3 * apart < role.size() + 1) {
      least = apart;
      best = id;
    }
  }
  return best;
}

Drawing read_drawing(const std::string& text, const Roles& roles, std::vector<std::string>& cautions) {
  pugi::xml_document document;
  const pugi::xml_parse_result read = document.load_buffer(text.data(), text.size());
  if (!read) {
    throw Refusal(std::string("This is not a readable SVG file (") + read.description() + " at character " +
                  std::to_string(read.offset) + "). Save the pattern as plain SVG and try again.");
  }
  const pugi::xml_node root = document.document_element();
  if (local_name(root) != "svg") {
    throw Refusal("This file is XML but no SVG drawing. Save the pattern as plain SVG and try again.");
  }
  Drawing drawing;
  drawing.roles = roles;
  walk(drawing, root, mm_from_user_units(root, cautions), 0);
  std::string missing, hint;
  for (const std::string& role : roles) {
    if (drawing.edges.count(role) > 0) continue;
    missing.append(missing.empty() ? "" : ", ").append(role);
    if (const auto like = id_like(role, drawing.other_ids))
      hint += " Its id \"" + *like + "\" is perhaps meant to be " + role + ".";
  }
  if (!missing.empty()) {
    throw Refusal("The drawing has no path with the id " + missing +
                  ". Give each edge's path its role as id: " + roles[0] +
                  ", neckline, shoulder, armhole, side-seam, hem." + hint);
  }
  return drawing;
}

/// Turns the edges so that each ends nearest to where the next starts.
std::array<Polyline, 6> in_outline_order(const Drawing& drawing) {
  const Roles& roles = drawing.roles;
  std::array<Polyline, 6> lines;
  for (size_t i = 0; i < 6; ++i) lines[i] = drawing.edges.at(roles[i]);
  const auto end = [&](size_t i, unsigned turned, bool first) {
    return first == ((turned >> i & 1u) == 0u) ? lines[i].front() : lines[i].back();
  };
  unsigned best = 0;
  double least = 1e300;
  for (unsigned turned = 0; turned < 64; ++turned) {
    double sum = 0.0;
    for (size_t i = 0; i < 6; ++i) sum += (end(i, turned, false) - end((i + 1) % 6, turned, true)).norm();
    if (sum < least) {
      least = sum;
      best = turned;
    }
  }
  for (size_t i = 0; i < 6; ++i) {
    if (best >> i & 1u) std::reverse(lines[i].begin(), lines[i].end());
  }
  for (size_t i = 0; i < 6; ++i) {
    Point &a = lines[i].back(), &b = lines[(i + 1) % 6].front();
    const double gap = (a - b).norm();
    if (gap > joined) {
      std::ostringstream at;
      at << "near " << mm_in_words(a.x()) << " across and " << mm_in_words(a.y()) << " down the drawing";
      throw Refusal("The " + roles[i] + " and the " + roles[(i + 1) % 6] + " do not meet: their ends are " +
                    mm_in_words(gap) + " apart " + at.str() + ". Bring the two ends together.");
    }
    a = b = 0.5 * (a + b);
  }
  return lines;
}

void check_size(const std::array<Polyline, 6>& lines) {
  Polyline all;
  for (const Polyline& line : lines) all.insert(all.end(), line.begin(), line.end());
  const Box box = box_of(all);
  if (box.height() < 150.0 || box.height() > 1800.0 || box.width() < 80.0 || box.width() > 1000.0) {
    throw Refusal("This base would be " + mm_in_words(box.width()) + " wide and " +
                  mm_in_words(box.height()) +
                  " long, which is no half front of a top. Check the drawing's width, height and viewBox "
                  "against the printed pattern.");
  }
}

struct BaseDrawn {
  Piece piece;
  std::vector<Polyline> slash_lines;
};

/// The drawing's marks in the piece frame: drill marks into the piece, slash lines beside it.
void add_marks(BaseDrawn& base, const Drawing& drawing, const Eigen::Affine2d& piece_from_drawing) {
  for (const auto& [id, place] : drawing.drills) {
    const Point at = piece_from_drawing * place;
    if (!contains(base.piece.seam_line, at))
      throw Refusal("The drill mark \"" + id + "\" lies outside the piece, " + place_in_words(at) +
                    ". Move its circle inside the seam lines.");
    base.piece.points[id] = at;
  }
  for (const auto& [number, drawn] : drawing.slash_lines) {
    Polyline line;
    for (const Point& p : drawn) line.push_back(piece_from_drawing * p);
    if (line.front().x() > line.back().x()) std::reverse(line.begin(), line.end());
    base.slash_lines.push_back(line);
  }
}

BaseDrawn base_from_svg(const std::string& svg_text, const std::string& name, const Roles& roles,
                        std::vector<std::string>* cautions) {
  std::vector<std::string> found;
  const Drawing drawing = read_drawing(svg_text, roles, found);
  if (cautions != nullptr) *cautions = found;
  std::array<Polyline, 6> lines = in_outline_order(drawing);

  // The centre front: straight, turned upright, its hem end at the origin.
  const Segment centre{lines[0].front(), lines[0].back()};
  const Point down = (centre.to - centre.from).normalized();
  double stray = 0.0;
  for (const Point& p : lines[0]) {
    const Point offset = p - centre.from;
    stray = std::max(stray, std::abs(down.x() * offset.y() - down.y() * offset.x()));
  }
  if (stray > straight) {
    throw Refusal("The centre front is not straight: it strays " + mm_in_words(stray) +
                  ". A front cut on the fold needs a straight centre front; draw it as one straight line.");
  }
  Eigen::Affine2d piece_from_drawing = Eigen::Affine2d::Identity();
  piece_from_drawing.linear() << down.y(), -down.x(), -down.x(), -down.y();  // y down to y up, centre upright
  piece_from_drawing = piece_from_drawing * Eigen::Translation2d(-centre.to);
  const Point side = piece_from_drawing * lines[2].front();
  if (side.x() < 0.0) piece_from_drawing = Eigen::Scaling(-1.0, 1.0) * piece_from_drawing;
  std::vector<Edge> edges;
  for (size_t i = 0; i < 6; ++i) {
    for (Point& p : lines[i]) p = piece_from_drawing * p;
  }
  lines[0] = {{0.0, (centre.to - centre.from).norm()}, {0.0, 0.0}};
  lines[1].front() = lines[0].back();
  lines[5].back() = lines[0].front();
  check_size(lines);
  for (size_t i = 0; i < 6; ++i) {
    for (Point& p : lines[i]) {
      if (p.x() < -0.05) {
        throw Refusal("The " + roles[i] + " crosses the centre front by " + mm_in_words(-p.x()) +
                      ". Draw the half front on one side of its centre front.");
      }
      p.x() = std::max(p.x(), 0.0);
    }
    edges.push_back({roles[i], lines[i]});
  }
  std::optional<Point> notch;
  if (drawing.notch) {
    notch = piece_from_drawing * *drawing.notch;
    const Foot foot = nearest(lines[3], *notch);
    if (foot.distance > 5.0) {
      throw Refusal("The armhole-notch lies " + mm_in_words(foot.distance) +
                    " from the armhole. Move the circle onto the armhole line.");
    }
  }
  Piece piece = assemble_base(name, std::move(edges), notch);
  if (signed_area(piece.seam_line) <= 0.0) {
    throw Refusal(
        "The edges do not run around the front in order: centre front, hem, side seam, armhole, "
        "shoulder, neckline. Check which path has which id.");
  }
  const double neck = piece.points["neck-point"].y(), shoulder = piece.points["shoulder-point"].y();
  const double underarm = lines[3].front().y();
  if (!(neck > underarm && shoulder > underarm && neck > lines[0].front().y() - 1e-6)) {
    throw Refusal(
        "The neck point should be the highest end of the front and the shoulder above the underarm. "
        "Check that neckline, shoulder and armhole have the right ids.");
  }
  BaseDrawn base{std::move(piece), {}};
  add_marks(base, drawing, piece_from_drawing);
  return base;
}

}  // namespace

Piece base_front_from_svg(const std::string& svg_text, std::vector<std::string>* cautions) {
  return base_from_svg(svg_text, "base front", roles_with("centre-front"), cautions).piece;
}

Piece base_back_from_svg(const std::string& svg_text, std::vector<std::string>* cautions) {
  return base_from_svg(svg_text, "base back", roles_with("centre-back"), cautions).piece;
}

std::vector<Polyline> slash_lines_from_svg(const std::string& svg_text) {
  return base_from_svg(svg_text, "base front", roles_with("centre-front"), nullptr).slash_lines;
}

}  // namespace cowlcast::drafting
