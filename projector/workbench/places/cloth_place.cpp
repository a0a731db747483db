#include "projector/workbench/places/cloth_place.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QPixmap>
#include <algorithm>
#include <cmath>

#include "projector/frame/style.h"
#include "projector/language/said.h"
#include "projector/workbench/places/scenes.h"

namespace cowlcast::projector {
namespace {

struct NamedColour {
  const char* name;
  unsigned value;
};

/// Colours that cloth is sold in; near enough to choose the lines by.
constexpr std::array<NamedColour, 15> named{{{QT_TRANSLATE_NOOP("ClothPlace", "white"), 0xfff4f4f0},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "cream"), 0xffe9dec5},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "yellow"), 0xffe8c83c},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "orange"), 0xffd9772b},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "red"), 0xffb01828},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "wine"), 0xff8a3a4c},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "rose"), 0xffd992a2},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "violet"), 0xff6a4a86},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "light blue"), 0xff8db4d2},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "navy"), 0xff18244c},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "green"), 0xff2c6b3c},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "brown"), 0xff5f4030},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "grey"), 0xff808080},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "dark grey"), 0xff3c3c3e},
                                             {QT_TRANSLATE_NOOP("ClothPlace", "black"), 0xff101010}}};

/// The name that comes nearest to a colour that has none.
QString nearest_name(unsigned colour) {
  const auto apart = [colour](const NamedColour& one) {
    const QColor a(colour), b(one.value);
    return std::hypot(a.redF() - b.redF(), a.greenF() - b.greenF(), a.blueF() - b.blueF());
  };
  return ClothPlace::tr(std::min_element(named.begin(), named.end(), [&](const auto& a, const auto& b) {
                          return apart(a) < apart(b);
                        })->name);
}

QIcon swatch(unsigned colour) {
  QPixmap picture(44, 44);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(theme().quiet, 2));
  painter.setBrush(QColor(colour));
  painter.drawRoundedRect(3, 3, 38, 38, 6, 6);
  return picture;
}

/// Light as the cloth sends it back, in a dimmed room.
QColor seen(QRgb light, unsigned cloth) {
  const auto part = [](int l, int c) { return std::min(255, (l + 60) * c / 255); };
  return QColor(part(qRed(light), qRed(cloth)), part(qGreen(light), qGreen(cloth)),
                part(qBlue(light), qBlue(cloth)));
}

}  // namespace

ClothPatch::ClothPatch() {
  setFixedHeight(grown(120));
  setAccessibleName(tr("How the lines will be seen on the cloth"));
  setToolTip(tr("The cut line, the seam line and the marks in light on this cloth, the room dimmed"));
}

void ClothPatch::show_cloth(const std::vector<unsigned>& colours) {
  colours_ = colours;
  update();
}

void ClothPatch::paintEvent(QPaintEvent*) {
  if (colours_.empty()) return;
  const FrameStyle style = style_for_cloth(std::vector<QRgb>(colours_.begin(), colours_.end()));
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double across = static_cast<double>(width()) / static_cast<double>(colours_.size());
  for (size_t i = 0; i < colours_.size(); ++i) {  // stripes of a patterned cloth
    const QRectF stripe(across * static_cast<double>(i), 0, across + 1, height());
    painter.fillRect(stripe, seen(0xff000000 | 0x282828, colours_[i]));
    painter.setClipRect(stripe);
    const auto line = [&](double y, QRgb light, double thick, Qt::PenStyle pen) {
      painter.setPen(QPen(seen(light, colours_[i]), thick, pen));
      painter.drawLine(QPointF(0, y), QPointF(width(), y));
    };
    line(0.28 * height(), style.cut, 4.0, Qt::SolidLine);
    line(0.52 * height(), style.seam, 3.4, Qt::DashLine);
    line(0.76 * height(), style.guide, 3.4, Qt::DotLine);
  }
}

ClothPlace::ClothPlace(Document& document, Settings& settings, CurrentGarment& garment)
    : Workplace(Place::cloth, document, settings, garment),
      canvas_(new Canvas(settings)),
      middle_(new QStackedWidget) {
  set_lead(
      tr("What the top is cut from. Its width decides whether the pieces fit, its colour which lines are "
         "seen."));
  describe(*canvas_, tr("Drawing of the cloth"), tr("Every piece laid open between the selvedges"));
  middle_->addWidget(make_waiting(
      tr("The pieces are laid on the cloth here, once there is a base front to draft them from.")));
  middle_->addWidget(canvas_);
  body()->addWidget(middle_, 1);
  body()->addWidget(make_panel());
}

QWidget* ClothPlace::make_panel() {
  auto* panel = new Panel;
  refusal_ = new NoteBox;
  panel->add(refusal_);
  width_ = panel->add_length(settings(), tr("&Width"), tr("From selvedge to selvedge, as the cloth is sold"),
                             300, 5000);
  let_edit(*width_, [](Project& project, double mm) { project.cloth.width = mm; });
  panel->add_gap();
  kind_ = new OneOf(
      tr("Kind"), {{tr("&Knit"), tr("Stretches and drapes of itself; the grain runs with the centre front")},
                   {tr("W&oven"), tr("Hangs in a cowl best on the true bias: the grain runs at 45°, and the "
                                     "front is cut in one layer")}});
  panel->add_heading(tr("Kind"));
  panel->add(kind_);
  connect(kind_, &OneOf::chosen, this, [this](int which) {
    document().change(tr("Kind of cloth").toStdString(),
                      [&](Project& project) { project.cloth.kind = static_cast<ClothKind>(which); });
  });
  thickness_ = new QDoubleSpinBox;
  thickness_->setRange(0.1, 10.0);
  thickness_->setDecimals(1);
  thickness_->setSingleStep(0.1);
  thickness_->setSuffix(tr(" mm"));
  thickness_->setKeyboardTracking(false);
  thickness_->setFont(letters(TextSize::large));
  panel->add_labelled(tr("Thickness of one &layer"),
                      tr("The lines are drawn for the cloth's upper face: press it lightly and measure"),
                      thickness_);
  connect(thickness_, &QDoubleSpinBox::valueChanged, this, [this](double mm) {
    document().change(
        tr("Thickness").toStdString(), [&](Project& project) { project.cloth.thickness = mm; },
        "field thickness");
  });
  connect(thickness_, &QDoubleSpinBox::editingFinished, this, [this] { document().settle(); });
  add_colours(*panel);
  panel->add_gap();
  panel->add_heading(tr("Does it fit?"));
  fit_ = panel->add_words({});
  panel->end();
  return panel;
}

void ClothPlace::add_colours(Panel& panel) {
  panel.add_gap();
  const std::array<QString, 3> labels{tr("&Colour"), tr("&Second colour"), tr("&Third colour")};
  for (size_t i = 0; i < colours_.size(); ++i) {
    auto* box = new QComboBox;
    if (i > 0) box->addItem(tr("none"), 0u);
    for (const NamedColour& colour : named) box->addItem(swatch(colour.value), tr(colour.name), colour.value);
    panel.add_labelled(labels[i],
                       i == 0 ? tr("The cloth's colour, or the main one of a pattern")
                              : tr("Of a pattern: the lines must be seen on each of its colours"),
                       box);
    connect(box, &QComboBox::activated, this,
            [this, i, box](int which) { set_colour(i, box->itemData(which).toUInt()); });
    colours_[i] = box;
  }
  patch_ = new ClothPatch;
  panel.add(patch_);
  advice_ = panel.add_words({});
}

void ClothPlace::set_colour(size_t which, unsigned colour) {
  document().change(tr("Colour of the cloth").toStdString(), [&](Project& project) {
    std::vector<unsigned>& colours = project.cloth.colours;
    if (colour == 0u) {
      if (which < colours.size()) colours.resize(which);
    } else if (which < colours.size()) {
      colours[which] = colour;
    } else {
      colours.push_back(colour);
    }
  });
}

void ClothPlace::show_colours(const std::vector<unsigned>& colours) {
  for (size_t i = 0; i < colours_.size(); ++i) {
    QComboBox& box = *colours_[i];
    const unsigned colour = i < colours.size() ? colours[i] : 0u;
    int at = box.findData(colour);
    if (at < 0) {  // one that has no name here, from a file
      box.addItem(swatch(colour), tr("near to %1").arg(nearest_name(colour)), colour);
      at = box.count() - 1;
    }
    box.setCurrentIndex(at);
    box.setEnabled(i <= colours.size());
  }
  patch_->show_cloth(colours);
  const std::vector<QRgb> cloth(colours.begin(), colours.end());
  advice_->setText(wants_dim_room(style_for_cloth(cloth), cloth)
                       ? tr("Dim the room to cut this cloth: in full light some lines would hardly be seen.")
                       : tr("The lines are seen on this cloth in a lit room."));
}

ClothUse ClothPlace::use() const {
  const Garment& now = garment().now();
  const double width = document().project().cloth.width;
  if (!now.pieces.empty() || !garment().last_cowl()) return on_cloth(now.pieces, width);
  return on_cloth({garment().last_cowl()->front}, width);
}

void ClothPlace::show_fit(const ClothUse& use) {
  const Garment& now = garment().now();
  refusal_->clear();
  const std::string wide = too_wide_for_cloth(document().project(), now);
  if (!wide.empty()) {
    refusal_->say(in_own_words(wide), tr("To the cowl"), [this] { emit wanted(Place::cowl); });
  } else if (!now.refusal.empty()) {
    refusal_->say(in_own_words(now.refusal), tr("To the cowl"), [this] { emit wanted(Place::cowl); });
  }
  if (now.pieces.empty()) {
    fit_->setText(now.bases.front ? tr("There is no front to lay on it.") : tr("There is no front yet."));
    return;
  }
  QString words =
      QStringLiteral("<p>") +
      (wide.empty() ? tr("Yes, every piece fits between the selvedges.") : tr("No, not every piece fits.")) +
      QStringLiteral("</p>");
  for (const LaidOut& one : use.pieces)
    words +=
        QStringLiteral("<p>") +
        tr("<b>%1</b>: %2 across, %3 along")
            .arg(said(QString::fromStdString(one.name)), length_words(one.width), length_words(one.length)) +
        QStringLiteral("</p>");
  if (wide.empty())
    words += QStringLiteral("<p>") +
             tr("Laid as drawn they take <b>%1</b> of cloth; closer laying may save some.")
                 .arg(length_words(use.length)) +
             QStringLiteral("</p>");
  fit_->setText(words);
}

void ClothPlace::show_project() {
  const ClothChoice& cloth = document().project().cloth;
  width_->show_mm(cloth.width);
  kind_->show_chosen(static_cast<int>(cloth.kind));
  const QSignalBlocker quiet(thickness_);
  thickness_->setValue(cloth.thickness);
  show_colours(cloth.colours);
  const ClothUse laid_out = use();
  show_fit(laid_out);
  const bool any = !laid_out.pieces.empty();
  middle_->setCurrentIndex(any ? 1 : 0);
  if (any) canvas_->show_scene(cloth_scene(laid_out, cloth, settings().preferences().units));
}

}  // namespace cowlcast::projector
