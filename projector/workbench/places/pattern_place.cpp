#include "projector/workbench/places/pattern_place.h"

#include <QDragEnterEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QMimeData>

#include "drafting/block/sizes.h"
#include "drafting/piece/base_size.h"
#include "drafting/refusal.h"
#include "projector/project/drawn_slashes.h"
#include "projector/project/project_file.h"
#include "projector/workbench/places/scenes.h"

namespace cowlcast::projector {
namespace {

QString dropped_drawing(const QMimeData& data) {
  for (const QUrl& url : data.urls())
    if (url.isLocalFile() && url.toLocalFile().endsWith(QLatin1String(".svg"), Qt::CaseInsensitive))
      return url.toLocalFile();
  return {};
}

}  // namespace

PatternPlace::PatternPlace(Document& document, Settings& settings, CurrentGarment& garment)
    : Workplace(Place::pattern, document, settings, garment),
      canvas_(new Canvas(settings)),
      middle_(new QStackedWidget) {
  setAcceptDrops(true);
  middle_->addWidget(make_welcome());
  middle_->addWidget(side_by_side(canvas_, make_panel()));
  body()->addWidget(middle_, 1);
  describe(*canvas_, tr("Drawing of the base"), tr("Half front and half back, seam lines, true to scale"));
  connect(canvas_, &Canvas::line_clicked, this, &PatternPlace::name_line);
  connect(source_, &OneOf::chosen, this,
          [this](int which) { choose(static_cast<PatternSource>(which + 1)); });
}

QWidget* PatternPlace::make_welcome() {
  auto* inside = new QWidget;
  inside->setFixedWidth(grown(620));
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(grown(6));
  const auto add_words = [column](const QString& text, TextSize size) {
    auto* words = new QLabel(text);
    words->setFont(letters(size));
    words->setWordWrap(true);
    column->addWidget(words);
  };
  add_words(
      tr("A cowl front is drafted from a plain front that fits. Where shall that plain front come from?"),
      TextSize::large);
  auto* size = make_button(tr("Draft it in a standard &size"),
                           tr("The quickest way to try: a block in a size from 00 to 20, front and back."));
  auto* body_measures = make_button(tr("Draft it to body &measures"),
                                    tr("Eight lengths off a tape; the block follows as you type."));
  auto* own = make_button(tr("Open my own &drawing"),
                          tr("An SVG file in real size. Its edges can be named by hand. Or drop it here."));
  size->setProperty("primary", true);
  connect(size, &QPushButton::clicked, this, [this] { choose(PatternSource::size); });
  connect(body_measures, &QPushButton::clicked, this, [this] { choose(PatternSource::body); });
  connect(own, &QPushButton::clicked, this, [this] { ask_for_drawing(true); });
  for (QPushButton* button : {size, body_measures, own}) {
    button->setFont(letters(TextSize::large, true));
    button->setFixedHeight(grown(64));
    column->addSpacing(grown(14));
    column->addWidget(button);
    add_words(button->toolTip(), TextSize::plain);
  }
  return centred(inside);
}

QWidget* PatternPlace::make_panel() {
  auto* panel = new Panel;
  panel->add_heading(tr("The base comes from"));
  source_ =
      new OneOf(tr("The base comes from"),
                {{tr("Standard &size"), tr("The built-in block, drafted for a size of the ASTM D5585 table")},
                 {tr("Body &measures"), tr("The built-in block, drafted for the measures of one body")},
                 {tr("My own &drawing"),
                  tr("A base of your own: an SVG drawing in real size, seam lines without allowance")}},
                true);
  panel->add(source_);
  panel->add_gap();
  notice_ = new NoteBox;
  panel->add(notice_);
  pages_ = new QStackedWidget;
  pages_->addWidget(new QWidget);
  pages_->addWidget(make_size_page());
  pages_->addWidget(make_measures_page());
  pages_->addWidget(make_drawing_page());
  panel->add(pages_);
  panel->add_gap();
  cautions_ = panel->add_words({});
  size_words_ = panel->add_words({});
  panel->end();
  return panel;
}

QWidget* PatternPlace::make_size_page() {
  auto* page = new QWidget;
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(0, 0, 0, 0);
  size_ = new QComboBox;
  size_->setFont(letters(TextSize::large));
  auto* label = new QLabel(tr("Si&ze"));
  label->setBuddy(size_);
  describe(*size_, label->text(), tr("Bust girths by ASTM D5585; measure your own and take the nearest"));
  column->addWidget(label);
  column->addWidget(size_);
  column->addStretch(1);
  for (const drafting::StandardSize& size : drafting::standard_sizes())
    size_->addItem(QString(), QString::fromStdString(size.name));
  connect(size_, &QComboBox::activated, this, [this](int which) {
    const QString name = size_->itemData(which).toString();
    document().change(tr("Size %1").arg(name).toStdString(), [&](Project& project) {
      project.pattern.source = PatternSource::size;
      project.pattern.size = name.toStdString();
    });
  });
  return page;
}

QWidget* PatternPlace::make_measures_page() {
  auto* page = new QWidget;
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(grown(5));
  using Body = drafting::BodyMeasures;
  struct Row {
    double Body::*member;
    QString label, tip;
    double least, most;
  };
  const std::vector<Row> rows{
      {&Body::bust_girth, tr("&Bust girth"), tr("Around the fullest part of the bust, the tape level"), 500,
       2000},
      {&Body::waist_girth, tr("&Waist girth"), tr("Around the narrowest part of the trunk"), 400, 2000},
      {&Body::hip_girth, tr("Hip &girth"), tr("Around the hips, where the top's hem will be"), 500, 2200},
      {&Body::neck_girth, tr("&Neck girth"), tr("Around the base of the neck"), 250, 700},
      {&Body::shoulder_length, tr("Sh&oulder"),
       tr("From the neck point, at the neck's side, to the shoulder point at the arm"), 60, 250},
      {&Body::back_waist_length, tr("Back &length"), tr("From the bone at the nape down to the waist"), 250,
       650},
      {&Body::waist_to_hem, tr("Waist &to hem"), tr("From the waist down to where the top ends"), 20, 800},
      {&Body::ease, tr("Ease (&U)"), tr("Added to all girths; below zero for a close fit in stretchy cloth"),
       -200, 500}};
  sample_words_ = new QLabel;
  sample_words_->setWordWrap(true);
  body_is_own_ = make_button(tr("They are all m&ine"), tr("These lengths are the wearer's, even where they "
                                                          "happen to be the sample's"));
  connect(body_is_own_, &QPushButton::clicked, this, [this] {
    document().change(tr("The measures are the wearer's").toStdString(),
                      [](Project& project) { project.pattern.body_is_own = true; });
  });
  column->addSpacing(grown(6));
  column->addWidget(sample_words_);
  column->addWidget(body_is_own_);
  for (const Row& row : rows) {
    auto* box = new LengthBox(settings(), row.least, row.most);
    auto* label = new QLabel(row.label);
    label->setBuddy(box);
    label->setWordWrap(true);
    label->setToolTip(row.tip);
    describe(*box, row.label, row.tip);
    box->setFixedWidth(grown(196));
    auto* line = new QHBoxLayout;
    line->addWidget(label, 1);
    line->addWidget(box);
    column->addLayout(line);
    column->addWidget(make_limit_words(*box));
    measures_.emplace_back(row.member, box);
    let_edit(*box, [member = row.member](Project& project, double mm) { project.pattern.body.*member = mm; });
  }
  return page;
}

void PatternPlace::show_sample() {
  QStringList left;
  for (const auto member : sample_measures(document().project().pattern))
    for (const auto& [own, box] : measures_)
      if (own == member) left << box->accessibleName().toLower();
  sample_words_->setText(left.size() == 7
                             ? tr("These are a sample body's. Type the wearer's own.")
                             : tr("Still the sample body's: %1.").arg(left.join(QStringLiteral(", "))));
  sample_words_->setVisible(!left.empty());
  body_is_own_->setVisible(!left.empty());
}

QWidget* PatternPlace::make_drawing_page() {
  auto* page = new QWidget;
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(grown(7));
  auto* front =
      make_button(tr("Open the f&ront …"), tr("An SVG file with the half front's seam lines, real size"));
  auto* back =
      make_button(tr("Open the bac&k …"), tr("An SVG file with the half back's seam lines, real size"));
  front_name_ = new QLabel;
  back_name_ = new QLabel;
  connect(front, &QPushButton::clicked, this, [this] { ask_for_drawing(true); });
  connect(back, &QPushButton::clicked, this, [this] { ask_for_drawing(false); });
  for (QWidget* widget : std::initializer_list<QWidget*>{front, front_name_, back, back_name_})
    column->addWidget(widget);
  by_hand_button_ =
      make_button(tr("&Name the edges by hand"),
                  tr("Say which line is the centre front, the neckline and so on, by clicking them"));
  by_hand_button_->setCheckable(true);
  connect(by_hand_button_, &QPushButton::clicked, this, &PatternPlace::name_by_hand);
  column->addWidget(by_hand_button_);
  names_ = new EdgeNames;
  connect(names_, &EdgeNames::changed, this, [this] { show_project(); });
  column->addWidget(names_);
  return page;
}

void PatternPlace::choose(PatternSource source) {
  if (source == PatternSource::drawing && document().project().pattern.front.svg.empty()) {
    show_project();  // the buttons back as they were
    ask_for_drawing(true);
    return;
  }
  file_refusal_.clear();
  document().change(tr("Another base").toStdString(), [&](Project& project) {
    project.pattern.source = source;
    if (source == PatternSource::size && project.pattern.size.empty()) project.pattern.size = "10";
  });
  canvas_->show_all();
}

void PatternPlace::ask_for_drawing(bool front) {
  const QString file = QFileDialog::getOpenFileName(
      this, front ? tr("Open the base front") : tr("Open the base back"), {}, tr("SVG drawings (*.svg)"));
  if (!file.isEmpty()) open_drawing(file, front);
}

void PatternPlace::open_drawing(const QString& file, bool front) {
  PatternDrawing drawing;
  drawing.name = QFileInfo(file).fileName().toStdString();
  file_refusal_.clear();
  try {
    drawing.svg = read_whole(file);
    drafting::lines_of_svg(drawing.svg);
  } catch (const drafting::Refusal& reason) {
    file_refusal_ = QString::fromStdString(drawing.name + ": " + reason.what());
    show_project();
    return;
  }
  names_->set_front(front);
  document().change((front ? tr("Open the base front") : tr("Open the base back")).toStdString(),
                    [&](Project& project) {
                      (front ? project.pattern.front : project.pattern.back) = drawing;
                      project.pattern.source = PatternSource::drawing;
                      if (front) take_drawn_slashes(project);
                    });
  const Bases& bases = garment().now().bases;
  name_by_hand(!(front ? bases.front_refusal : bases.back_refusal).empty());
}

void PatternPlace::dragEnterEvent(QDragEnterEvent* event) {
  if (!dropped_drawing(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void PatternPlace::dropEvent(QDropEvent* event) {
  const QString file = dropped_drawing(*event->mimeData());
  if (!file.isEmpty()) open_drawing(file, document().project().pattern.front.svg.empty() || names_->front());
}

const PatternDrawing& PatternPlace::drawing() const {
  const PatternChoice& pattern = document().project().pattern;
  return names_->front() ? pattern.front : pattern.back;
}

bool PatternPlace::naming() const {
  return by_hand_ && document().project().pattern.source == PatternSource::drawing && !drawing().svg.empty();
}

void PatternPlace::name_by_hand(bool on) {
  by_hand_ = on;
  show_project();
  canvas_->show_all();
}

void PatternPlace::name_line(const std::string& key) {
  if (!naming()) return;
  const std::string role = names_->role();
  const bool front = names_->front();
  document().change(tr("Name the %1").arg(role_in_words(role)).toStdString(), [&](Project& project) {
    auto& roles = (front ? project.pattern.front : project.pattern.back).roles;
    std::erase_if(roles, [&](const auto& one) { return one.second == role; });
    roles[key] = role;
    if (front) take_drawn_slashes(project);
  });
  names_->go_on(drawing().roles);
  const Bases& bases = garment().now().bases;
  if ((front ? bases.front : bases.back).has_value()) {
    name_by_hand(false);  // all edges have their lines and the base can be read
  } else {
    show_project();
  }
}

void PatternPlace::show_pages(const PatternChoice& pattern) {
  const auto name = [](const PatternDrawing& one) {
    return one.svg.empty() ? tr("none opened yet") : QString::fromStdString(one.name);
  };
  source_->show_chosen(static_cast<int>(pattern.source) - 1);
  pages_->setCurrentIndex(static_cast<int>(pattern.source));
  for (int i = 0; i < pages_->count(); ++i)  // only the page in sight counts for the height
    pages_->widget(i)->setSizePolicy(
        QSizePolicy::Preferred, i == pages_->currentIndex() ? QSizePolicy::Preferred : QSizePolicy::Ignored);
  const auto& sizes = drafting::standard_sizes();
  for (int i = 0; i < size_->count(); ++i) {
    const drafting::StandardSize& size = sizes[static_cast<size_t>(i)];
    size_->setItemText(i, tr("%1, bust %2").arg(QString::fromStdString(size.name), length_words(size.bust)));
    if (size.name == pattern.size) size_->setCurrentIndex(i);
  }
  for (const auto& [member, box] : measures_) box->show_mm(pattern.body.*member);
  show_sample();
  front_name_->setText(name(pattern.front));
  back_name_->setText(name(pattern.back));
  by_hand_button_->setEnabled(!pattern.front.svg.empty() || !pattern.back.svg.empty());
  by_hand_button_->setChecked(by_hand_);
  names_->setVisible(naming());
  names_->show_named(drawing().roles, !pattern.front.svg.empty() && !pattern.back.svg.empty());
}

void PatternPlace::show_canvas() {
  if (!naming()) {
    set_lead(tr("The plain knit top that fits: its half front and its half back."));
    canvas_->show_scene(base_scene(garment().now().bases));
    return;
  }
  set_lead(tr("Which line is the <b>%1</b>? Click it in the drawing.").arg(role_in_words(names_->role())));
  try {
    canvas_->show_scene(drawing_scene(drafting::lines_of_svg(drawing().svg), drawing().roles));
  } catch (const drafting::Refusal&) {  // the base says the same; it stands in the notice
    canvas_->show_scene({});
  }
}

void PatternPlace::show_notice() {
  const Bases& bases = garment().now().bases;
  const std::string& reason = !bases.front_refusal.empty() ? bases.front_refusal : bases.back_refusal;
  const PatternSource source = document().project().pattern.source;
  notice_->clear();
  if (!file_refusal_.isEmpty()) {
    notice_->say(in_own_words(file_refusal_.toStdString()), tr("Open another file …"),
                 [this] { ask_for_drawing(names_->front()); });
  } else if (!reason.empty() && source == PatternSource::drawing && !by_hand_) {
    notice_->say(in_own_words(reason), tr("Name the edges by hand"), [this] {
      names_->set_front(!garment().now().bases.front_refusal.empty());
      name_by_hand(true);
    });
  } else if (!reason.empty() && source == PatternSource::body) {
    notice_->say(in_own_words(reason), tr("Undo the last change"), [this] { document().undo(); });
  } else if (!reason.empty() && !naming()) {
    notice_->say(in_own_words(reason));
  }
  QStringList cautions;
  for (const std::string& caution : bases.cautions) cautions.append(in_own_words(caution));
  cautions_->setText(cautions.join(QStringLiteral("\n\n")));
  cautions_->setVisible(!cautions.isEmpty());
}

void PatternPlace::begin_anew() {
  file_refusal_.clear();
  by_hand_ = false;
  names_->set_front(true);
}

void PatternPlace::show_project() {
  const PatternChoice& pattern = document().project().pattern;
  const bool empty = pattern.source == PatternSource::none && file_refusal_.isEmpty();
  middle_->setCurrentIndex(empty ? 0 : 1);
  show_pages(pattern);
  show_notice();
  show_canvas();
  QString words;
  if (const auto& front = garment().now().bases.front) {
    const drafting::BaseSize size = drafting::size_of_base(*front);
    words = tr("Half front <b>%1</b> wide and <b>%2</b> long; the whole front <b>%3</b> from underarm to "
               "underarm.")
                .arg(length_words(size.width), length_words(size.length), length_words(size.chest));
    if (const int drawn = drawn_slashes(document().project()); drawn > 0)
      words +=
          QStringLiteral("<br>") + tr("The cowl is slashed along the lines of the drawing: %1.").arg(drawn);
  }
  size_words_->setText(words);
}

}  // namespace cowlcast::projector
