#include <algorithm>
#include <cstdio>

#include "drafting/cowl/opening.h"
#include "drafting/export/pdf_page.h"
#include "drafting/geometry/polyline.h"
#include "drafting/teaching/steps.h"

namespace cowlcast::drafting {
namespace {

constexpr double margin = 20.0;   // mm
constexpr double caption = 30.0;  // mm below each picture

Box box_of_steps(const std::vector<Step>& steps) {
  Polyline all;
  for (const Step& step : steps) {
    for (const StepLine& line : step.lines) all.insert(all.end(), line.points.begin(), line.points.end());
  }
  return box_of(all);
}

double line_width(const StepLine& line) {
  return line.earlier ? 0.3 : line.kind == StepLine::Kind::cut_line ? 1.4 : 1.0;
}
const char* colour(const StepLine& line) {
  return line.earlier ? "#888888" : "#000000";
}

std::string path_data(const StepLine& line, const Box& box, const Point& at) {
  std::string data;
  char text[64];
  for (size_t i = 0; i < line.points.size(); ++i) {
    const Point p = line.points[i];
    std::snprintf(text, sizeof text, "%s%.3f %.3f", i == 0 ? "M" : " L", at.x() + p.x() - box.low.x(),
                  at.y() + box.high.y() - p.y());
    data += text;
  }
  return data + (line.closed ? " Z" : "");
}

std::string head(double width, double height, const char* title) {
  char text[300];
  std::snprintf(text, sizeof text,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.2fmm\" height=\"%.2fmm\" viewBox=\"0 0 "
                "%.2f %.2f\">\n"
                "<title>%s, true size in millimetres</title>\n",
                width, height, width, height, title);
  return text;
}

std::string drawn(const StepLine& line, const Box& box, const Point& at) {
  char style[120];
  std::snprintf(style, sizeof style, "<path fill=\"none\" stroke=\"%s\" stroke-width=\"%.1f\" d=\"",
                colour(line), line_width(line));
  return style + path_data(line, box, at) + "\"/>\n";
}

std::vector<std::string> wrapped(const std::string& text, size_t width) {
  std::vector<std::string> lines{""};
  std::string word;
  for (const char c : text + " ") {
    if (c != ' ') {
      word += c;
      continue;
    }
    if (lines.back().size() + word.size() + 1 > width && !lines.back().empty()) lines.emplace_back();
    lines.back() += (lines.back().empty() ? "" : " ") + word;
    word.clear();
  }
  return lines;
}

}  // namespace

std::string steps_to_svg(const CowlDraft& draft) {
  const std::vector<Step> steps = teaching_steps(draft);
  const Box box = box_of_steps(steps);
  const double cell = box.width() + 2.0 * margin;
  const double height = box.height() + 2.0 * margin + caption;
  std::string svg = head(cell * static_cast<double>(steps.size()), height, "The draft step by step");
  for (size_t i = 0; i < steps.size(); ++i) {
    const Point at(static_cast<double>(i) * cell + margin, margin);
    svg += "<g id=\"step-" + std::to_string(i + 1) + "\">\n";
    for (const StepLine& line : steps[i].lines) svg += drawn(line, box, at);
    double y = at.y() + box.height() + 12.0;
    std::vector<std::string> words{std::to_string(i + 1) + ". " + steps[i].title};
    for (const std::string& line : wrapped(steps[i].rule, static_cast<size_t>(cell / 3.2)))
      words.push_back(line);
    for (const std::string& line : words) {
      char text[80];
      std::snprintf(text, sizeof text,
                    "<text x=\"%.2f\" y=\"%.2f\" font-family=\"sans-serif\" font-size=\"6\">", at.x(), y);
      svg += text + line + "</text>\n";
      y += 8.0;
    }
    svg += "</g>\n";
  }
  return svg + "</svg>\n";
}

std::string opening_to_animated_svg(const CowlDraft& draft) {
  constexpr int frames = 24;
  std::vector<Step> steps;
  for (int i = 0; i <= frames; ++i)
    steps.push_back(teaching_step(draft, opening_step_number, static_cast<double>(i) / frames));
  const Box box = box_of_steps(steps);
  const Point at(margin, margin);
  std::string svg = head(box.width() + 2.0 * margin, box.height() + 2.0 * margin, "The parts open");
  for (size_t part = 0; part < steps[0].lines.size(); ++part) {
    svg += "<path fill=\"none\" stroke=\"#000000\" stroke-width=\"1\" d=\"" +
           path_data(steps[0].lines[part], box, at) +
           "\">\n<animate attributeName=\"d\" dur=\"5s\" repeatCount=\"indefinite\" keyTimes=\"";
    char text[24];
    for (int i = 0; i <= frames; ++i) {
      std::snprintf(text, sizeof text, "%.4f;", 0.8 * i / frames);
      svg += text;
    }
    svg += "1\" values=\"";
    for (const Step& step : steps) svg += path_data(step.lines[part], box, at) + ";";
    svg += path_data(steps.back().lines[part], box, at) + "\"/>\n</path>\n";
  }
  return svg + "</svg>\n";
}

std::string steps_to_pdf(const CowlDraft& draft) {
  const std::vector<Step> steps = teaching_steps(draft);
  const Box box = box_of_steps(steps);
  constexpr double width = 210.0, height = 297.0;  // A4, ISO 216
  const double scale = std::min((width - 2.0 * margin) / box.width(), (height - 90.0) / box.height());
  PdfSheet sheet(width, height);
  for (size_t i = 0; i < steps.size(); ++i) {
    if (i > 0) sheet.next_page(width, height);
    sheet.text({margin, 25.0}, std::to_string(i + 1) + ". " + steps[i].title, 7.0);
    double y = 34.0;
    for (const std::string& line : wrapped(steps[i].rule, 85)) {
      sheet.text({margin, y}, line, 4.0);
      y += 6.0;
    }
    for (const StepLine& line : steps[i].lines) {
      Polyline placed;
      for (const Point& p : line.points) {
        placed.push_back({margin + scale * (p.x() - box.low.x()), 60.0 + scale * (box.high.y() - p.y())});
      }
      sheet.line(placed, line.closed, 0.5 * line_width(line));
    }
    char words[60];
    std::snprintf(words, sizeof words, "drawn at 1 : %.2f", 1.0 / scale);
    sheet.text({margin, height - 12.0}, words, 3.5);
  }
  return sheet.finish();
}

}  // namespace cowlcast::drafting
