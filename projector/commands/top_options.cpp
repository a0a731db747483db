#include "projector/commands/top_options.h"

#include <algorithm>
#include <numbers>

#include "projector/project/drawn_slashes.h"

namespace cowlcast::projector {
namespace {

using drafting::FinishKind;

[[noreturn]] void wrong(const char* option, const std::string& text, const std::string& wanted) {
  throw CLI::ValidationError(option, "cannot use \"" + text + "\": give " + wanted);
}

std::vector<double> numbers_of(const char* option, const std::string& text, const std::string& wanted) {
  std::vector<double> numbers;
  for (const std::string& part : parts_of(text, ',')) {
    const auto number = plain_number(part);
    if (!number || *number < 0.0) wrong(option, text, wanted);
    numbers.push_back(*number);
  }
  return numbers;
}

/// "70,shoulder,0.4": a slash line set by hand.
drafting::SlashWish slash_of(const std::string& text) {
  const std::vector<std::string> parts = parts_of(text, ',');
  const auto below = parts.size() == 3 ? length_mm(parts[0]) : std::nullopt;
  const auto share = parts.size() == 3 ? plain_number(parts[2]) : std::nullopt;
  if (!below || !share || (parts[1] != "shoulder" && parts[1] != "armhole"))
    wrong("--slash", text, "BELOW,SEAM,SHARE, for example 70,shoulder,0.4");
  if (!(*below > 0.0) || !(*share > 0.0 && *share < 1.0))
    wrong("--slash", text,
          "a start below the neckline and a share between 0 and 1, for example 70,shoulder,0.4");
  return {*below, parts[1], *share, {}};
}

drafting::Finish finish_of(const TopOptions& options, const std::string& name) {
  drafting::Finish finish;
  for (const FinishKind kind :
       {FinishKind::turned, FinishKind::band, FinishKind::binding, FinishKind::elastic})
    if (drafting::finish_name(kind) == name) finish.kind = kind;
  finish.stretch = options.finish_stretch;
  if (finish.kind == FinishKind::elastic) finish.width = 9.525;  // 3/8 in: common practice, no source
  if (options.finish_width > 0.0) finish.width = options.finish_width;
  return finish;
}

}  // namespace

std::vector<double> proportions_of(const std::string& weight, int count) {
  if (weight == "even") return {};
  if (weight != "high" && weight != "low")
    return numbers_of("--weight", weight, "even, high, low or a number for each slash line, as 3,2,1");
  std::vector<double> proportions;
  for (int i = 0; i < count; ++i) {
    const double down = count > 1 ? static_cast<double>(i) / (count - 1) : 0.5;
    proportions.push_back(weight == "high" ? 2.0 - down : 1.0 + down);
  }
  return proportions;
}

std::optional<drafting::HangLevels> levels_of(const TopOptions& options) {
  const auto measures = measures_of(*options.base);
  if (!measures) return std::nullopt;
  return drafting::hang_levels(*measures);
}

drafting::TopWishes wishes_of(const TopOptions& options) {
  drafting::TopWishes wishes = options.top;
  wishes.cowl = wishes_of(*options.cowl);
  wishes.allowances_set = options.cowl->allowances_set;
  drafting::CowlWishes& cowl = wishes.cowl;
  for (const std::string& text : options.slashes) cowl.slashes.push_back(slash_of(text));
  if (cowl.slashes.empty() && !says_slash_lines(*options.cowl))
    cowl.slashes = slashes_along(options.drawn_slashes);
  const int count = cowl.slashes.empty() ? cowl.slash_count : static_cast<int>(cowl.slashes.size());
  cowl.proportions = proportions_of(options.weight, count);
  if (!options.openings.empty()) {
    cowl.set_openings = numbers_of("--openings", options.openings, "degrees for each slash line, as 12,10,8");
    for (double& opening : cowl.set_openings) opening *= std::numbers::pi / 180.0;
  }
  wishes.camisole = options.camisole_depth > 0.0;
  if (wishes.camisole) wishes.camisole_depth = options.camisole_depth;
  wishes.camisole_finish = finish_of(options, options.camisole_finish);
  if (!options.arm_finish.empty()) wishes.arm_finish = finish_of(options, options.arm_finish);
  if (options.back_drape > 0.0) {
    // The same choices for the back, but for what lies on the front alone.
    drafting::CowlWishes back = cowl;
    back.drape = options.back_drape;
    if (options.back_drop >= 0.0) back.neckline_drop = options.back_drop;
    back.slashes.clear();
    back.set_openings.clear();
    back.proportions = proportions_of(cowl.slashes.empty() ? options.weight : "even", back.slash_count);
    back.tacked_length = 0.0;
    wishes.back_cowl = back;
  }
  return wishes;
}

void check(const TopOptions& options) {
  check(*options.base);
  if (options.back.empty() && !has_own_back(*options.base))
    throw CLI::ValidationError("--back", "is missing: give the base back that belongs to this base front");
  if (!options.ranges && options.drape <= 0.0 && options.hang <= 0.0)
    throw CLI::ValidationError("--drape", "is missing: give it, or --hang, or --ranges to see what works");
  if (!options.ranges && options.out.empty())
    throw CLI::ValidationError("--out", "is missing: give a folder");
  wishes_of(options);
}

void add_top_options(CLI::App& command, const std::shared_ptr<TopOptions>& options) {
  TopOptions& o = *options;
  drafting::CowlWishes& cowl = o.cowl->wishes;
  add_base_options(command, o.base);
  command.add_option("--back", o.back, "base back, the same way; demo, a size and a body have their own");
  CLI::Option* drape =
      add_length(command, "--drape", o.drape, "length of the cowl from shoulder seam to shoulder seam", 1.0);
  add_length(command, "--hang", o.hang, "or: how low it hangs below the neck points", 1.0)->excludes(drape);
  add_cowl_options(command, o.cowl);
  command
      .add_option("--slash", o.slashes,
                  "a slash line set by hand, from the top down; may be given again: how far below the\n"
                  "lowered neckline it starts, shoulder or armhole, and the share of that seam from its\n"
                  "upper end, for example 70,shoulder,0.4")
      ->type_name("BELOW,SEAM,SHARE")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  command
      .add_option("--weight", o.weight,
                  "where it opens most: even, high (the topmost twice the lowest), low, or a number for\n"
                  "each slash line from the top down, as 3,2,1")
      ->type_name("WEIGHT")
      ->capture_default_str();
  command.add_option("--openings", o.openings, "openings set one by one from the top down, as 12,10,8")
      ->type_name("DEGREES,...");
  add_length(command, "--swing-centre", cowl.pivot_height,
             "height over the hem, on the centre front, that the front swings about [0]");
  add_length(command, "--crossing", cowl.allowed_crossing,
             "how far parts may lie over the centre front, to be cut away [0]", 0.0, 100.0);
  command.add_flag("--separate-facing", cowl.separate_facing, "the facing as a piece of its own");
  add_length(command, "--tack-up", cowl.tacked_length, "extra front length, tacked up at the side seams", 0.0,
             300.0);
  CLI::Option* bias =
      command.add_flag("--bias", cowl.on_bias, "woven cloth: grain at 45 degrees, cut full in one layer");
  add_length(command, "--trial-hang", cowl.trial_hang,
             "how far the centre dropped in a trial hang on the bias, taken out at the hem", 0.0, 150.0)
      ->needs(bias);
  CLI::Option* back_cowl =
      add_length(command, "--back-cowl", o.back_drape,
                 "a cowl in the back as well: its drape; other choices as in front", 1.0);
  add_length(command, "--back-drop", o.back_drop, "how far the back neckline is lowered [as in front]")
      ->needs(back_cowl);
  CLI::Option* inner_panel = add_length(
      command, "--inner-panel", o.camisole_depth,
      "an inner panel under the cowl: its top edge below the neck point, at the centre front", 1.0);
  add_length(command, "--inner-panel-length", o.top.camisole_length,
             "of the inner panel, along the side seam below the armhole [110]", 20.0)
      ->needs(inner_panel);
  command
      .add_option("--inner-panel-finish", o.camisole_finish,
                  "of the inner panel's top edge: turned, band, binding or elastic")
      ->check(CLI::IsMember({"turned", "band", "binding", "elastic"}))
      ->capture_default_str()
      ->needs(inner_panel);
  command
      .add_option("--arm-finish", o.arm_finish,
                  "of the armholes of a top without sleeves; sets their allowance. Left out, a binding is\n"
                  "reckoned and the allowance stays")
      ->check(CLI::IsMember({"turned", "band", "binding", "elastic"}));
  add_length(command, "--finish-width", o.finish_width,
             "finished width of bands and bindings, or of the elastic [10; elastic 9.525]", 4.0, 60.0);
  command.add_option("--finish-stretch", o.finish_stretch, "an edge over its band, binding or elastic")
      ->check(CLI::Range(1.0, 1.5))
      ->capture_default_str();
  command
      .add_option("--carry", o.carried, "a piece file to carry over unchanged (a sleeve); may be given again")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  add_length(command, "--sleeve-ease", o.top.sleeve_ease,
             "of a sleeve-cap edge, taken up in the armholes [0]", 0.0, 60.0);
  command.add_option("--elastic-stretch", o.top.elastic_stretch, "back neck seam over its elastic")
      ->check(CLI::Range(1.0, 1.5))
      ->capture_default_str();
  add_length(command, "--elastic-tail", o.top.elastic_tail, "of each end of the elastic [13]", 0.0, 60.0);
  command.add_option("--paper", o.paper, "of top.pdf: tiles of a4 or letter, a0 pages, or one large page")
      ->check(CLI::IsMember({"a4", "letter", "a0", "one"}))
      ->capture_default_str();
  command.add_flag("--cut-anyway", o.cut_anyway, "write the pieces even when a seam does not walk");
  command.add_flag("--ranges", o.ranges,
                   "only say which drapes work with 1 to 6 slash lines, and how far each of yours opens\n"
                   "(at --drape, or at the shortest, a middle and the longest); writes nothing");
  command.add_option("--out", o.out, "folder for the files");
}

}  // namespace cowlcast::projector
