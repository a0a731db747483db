#include "calibration/check/hand_check.h"

#include <QApplication>
#include <QDateTime>
#include <cmath>
#include <cstdio>
#include <optional>

#include "calibration/refusal.h"
#include "projector/commands/command.h"
#include "projector/commands/display.h"
#include "projector/commands/files.h"
#include "projector/commands/headless.h"
#include "projector/frame/png.h"
#include "projector/showing/picture_window.h"
#include "projector/table/check_light.h"

namespace cowlcast::projector {
namespace {

constexpr double kWorstReading = 3.0;  // mm: beyond it any light would seem to lie right

struct CheckOptions {
  std::string table, out, screen, grid = "none";
  bool show = false, quick = false, refine = false;
  double read_to = 0.5;
  std::vector<calibration::HandReading> readings;
};

struct CrossName {
  char name;
  int figure;
};

// "A" is of the first figure, "A2" of the second.
std::optional<CrossName> cross_from(const std::string& text) {
  if (text.empty()) return std::nullopt;
  const auto number = text.size() > 1 ? plain_number(text.substr(1)) : 1.0;
  if (!number || !(*number >= 1.0 && *number <= 9999.0) || *number != std::floor(*number))
    return std::nullopt;
  return CrossName{static_cast<char>(std::toupper(static_cast<unsigned char>(text[0]))),
                   static_cast<int>(*number)};
}

calibration::HandReading reading_from(const std::string& text) {
  std::vector<std::string> parts = parts_of(text, ',');
  const bool three = parts.size() == 3;
  parts.resize(3);
  const auto from = cross_from(parts[0]), to = cross_from(parts[1]);
  const auto mm = length_mm(parts[2]);
  if (!three || !from || !to || from->figure != to->figure || !mm || *mm <= 0.0)
    throw CLI::ValidationError("--tape", "cannot use \"" + text +
                                             "\": give two crosses and what the tape reads between them, "
                                             "for example A,C,1203.5 or A,C,47.4in");
  return {from->name, to->name, *mm, 0.5, from->figure};
}

CheckGrid grid_of(const CheckOptions& options) {
  return options.grid == "cm"   ? CheckGrid::centimetres
         : options.grid == "in" ? CheckGrid::inches
                                : CheckGrid::none;
}

void say_distances(const calibration::CheckFigure& figure, bool quick) {
  for (const auto& [from, to] : distances_to_measure(quick))
    std::printf("%s to %s: %.1f mm\n", figure.label(from).c_str(), figure.label(to).c_str(),
                (figure.at(from) - figure.at(to)).norm());
}

void mend_scale(const CheckOptions& options, const std::string& text, const calibration::TableMap& map,
                const calibration::CheckFigure& figure, std::vector<calibration::CheckedReading> checked,
                const std::string& now) {
  std::vector<calibration::HandReading> readings;
  for (const calibration::CheckedReading& c : checked) readings.push_back(c.reading);
  calibration::refuse_used(calibration::kept_checks(text), readings);
  const calibration::RefinedScale refined = calibration::refine_scale(map, figure, readings);
  for (calibration::CheckedReading& c : checked) c.used = true;
  write_file(options.table, calibration::with_checks(text, &refined.map, checked, now));
  const calibration::CheckFigure next = check_light_figure(refined.map, grid_of(options));
  std::printf(
      "The table's scale is mended by %+.3f %%; it is now known within %.3f %%. Written to %s.\n"
      "All light lies otherwise now. Light the figure anew and measure it once more: its crosses are called "
      "%s, %s and so on, and readings of the figure before no longer count.\n",
      100.0 * (refined.factor - 1.0), 196.0 * refined.map.scale.relative_sigma, options.table.c_str(),
      next.label('A').c_str(), next.label('B').c_str());
}

void judge_readings(const CheckOptions& options, const std::string& text, const calibration::TableMap& map,
                    const calibration::CheckFigure& figure) {
  const std::string now =
      QDateTime::currentDateTimeUtc().toString(QStringLiteral("yyyy-MM-ddTHH:mm:ssZ")).toStdString();
  std::vector<calibration::HandReading> readings = options.readings;
  for (calibration::HandReading& reading : readings) reading.sigma = options.read_to;
  const auto checked = calibration::judged(map, figure, readings);
  for (const calibration::CheckedReading& c : checked)
    std::printf(
        "%s to %s: drawn %.1f mm, measured %.1f mm: off by %+.1f mm, %s the %.1f mm that tape and map leave "
        "open\n",
        figure.label(c.reading.from).c_str(), figure.label(c.reading.to).c_str(), c.drawn, c.reading.mm,
        c.reading.mm - c.drawn, c.agrees() ? "within" : "beyond", c.allowed);
  std::fflush(stdout);
  if (options.refine) {
    mend_scale(options, text, map, figure, checked, now);
    return;
  }
  write_file(options.table, calibration::with_checks(text, nullptr, checked, now));
  for (const calibration::CheckedReading& c : checked)
    if (!c.agrees())
      throw calibration::Refusal("The light does not lie where the table file says: from " +
                                 figure.label(c.reading.from) + " to " + figure.label(c.reading.to) +
                                 " the tape reads otherwise. Measure again; if it stays so, calibrate again "
                                 "before cutting, or, when "
                                 "only the scale is in doubt, give --refine-scale.");
}

void run(const CheckOptions& options) {
  const std::string text = read_file(options.table, "a table file made by `cowlcast calibrate`");
  const auto map = calibration::TableMap::from_json(text);
  const calibration::CheckFigure figure = check_light_figure(map, grid_of(options));
  if (!options.readings.empty()) {
    judge_readings(options, text, map, figure);
    return;
  }
  if (options.show || !options.screen.empty()) {
    const auto application = open_display();
    PictureWindow window(projector_screen(options.screen, map.width, map.height),
                         check_light(map, figure, {options.quick, grid_of(options)}));
    say_distances(figure, options.quick);
    std::printf("Measure on the bare mat. Escape ends.\n");
    std::fflush(stdout);
    window.open();
    QApplication::exec();
    return;
  }
  const Headless qt;
  write_file(options.out, png_bytes(check_light(map, figure, {options.quick, grid_of(options)})));
  say_distances(figure, options.quick);
}

}  // namespace

void add_check(CLI::App& app, Job& job) {
  const auto options = std::make_shared<CheckOptions>();
  CLI::App* command = app.add_subcommand(
      "check", "project crosses at known distances, and judge what a tape says between them");
  command->add_option("--table", options->table, "table file made by `cowlcast calibrate`")->required();
  auto* out = command->add_option("--out", options->out, "PNG file to draw the figure to");
  command->add_option("--screen", options->screen, "show it there: name or number")->excludes(out);
  command->add_flag("--show", options->show, "show it on the screen used last")->excludes(out);
  command->add_flag("--quick", options->quick, "two crosses alone, for a look before cutting");
  command->add_option("--grid", options->grid, "with a grid of that unit")
      ->check(CLI::IsMember({"none", "cm", "in"}))
      ->capture_default_str();
  auto* tape = command
                   ->add_option_function<std::vector<std::string>>(
                       "--tape",
                       [options](const std::vector<std::string>& texts) {
                         for (const std::string& text : texts)
                           options->readings.push_back(reading_from(text));
                       },
                       "what a tape reads from the middle of one cross to another; may be given again")
                   ->type_name("A,B,LENGTH")
                   ->expected(1)
                   ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  add_length(*command, "--read-to", options->read_to,
             "how well the tape was read [0.5]; a tape read worse than to 3 mm tells nothing of the lines",
             0.05, kWorstReading);
  command->add_flag("--refine-scale", options->refine, "let the tape mend the table's scale")->needs(tape);
  command->footer(
      "Draw or show the figure, measure with a steel tape on the bare mat, and give what it reads. Readings\n"
      "are kept in the table file. The grid in inches has another figure: give --grid in with its readings "
      "too.\n"
      "When the table was mended its next figure has crosses A2, B2 ...: give them as they are called.\n"
      "Example: cowlcast check --table table.json --screen HDMI-1, then\n"
      "cowlcast check --table table.json --tape A,C,1203.5 --tape B,D,1203.0");
  command->callback([options, &job] {
    const bool somewhere = options->show || !options->screen.empty() || !options->out.empty();
    if (!somewhere && options->readings.empty())
      throw CLI::ValidationError("check",
                                 "give --screen or --out to see the figure, or --tape with a reading");
    job = [options] { run(*options); };
  });
}

}  // namespace cowlcast::projector
