#include "projector/workbench/settings.h"

#include <QFileInfo>
#include <QLocale>

#include "projector/blade/blade.h"

namespace cowlcast::projector {
namespace {

constexpr qsizetype most_recent = 8;
const QString group = QStringLiteral("workbench/");

}  // namespace

Settings::Settings(const QString& file)
    : store_(file.isEmpty()
                 ? std::make_unique<QSettings>(QStringLiteral("cowlcast"), QStringLiteral("cowlcast"))
                 : std::make_unique<QSettings>(file, QSettings::IniFormat)) {
  read();
}

void Settings::read() {
  Preferences& p = preferences_;
  const auto text = [this](const char* name, const QString& otherwise) {
    return store_->value(group + QLatin1String(name), otherwise).toString();
  };
  const auto yes = [this](const char* name) {
    return store_->value(group + QLatin1String(name), false).toBool();
  };
  const QLocale here;
  const bool inches = here.measurementSystem() != QLocale::MetricSystem;
  p.units = text("units", inches ? QStringLiteral("in") : QStringLiteral("cm")) == QLatin1String("in")
                ? Units::inches
                : Units::centimetres;
  p.letter_paper = text("paper", here.measurementSystem() == QLocale::ImperialUSSystem
                                     ? QStringLiteral("letter")
                                     : QStringLiteral("a4")) == QLatin1String("letter");
  p.left_handed = yes("left-handed");
  p.larger_type = yes("larger-type");
  p.less_motion = yes("less-motion");
  p.theme =
      text("theme", QStringLiteral("light")) == QLatin1String("dark") ? ThemeName::dark : ThemeName::light;
  p.language =
      text("language", here.language() == QLocale::German ? QStringLiteral("de") : QStringLiteral("en"));
  const double blade = store_->value(group + QLatin1String("blade"), p.blade).toDouble();
  for (const double sold : kBladeSizes)
    if (sold == blade) p.blade = blade;
}

void Settings::write() {
  const Preferences& p = preferences_;
  const auto put = [this](const char* name, const QVariant& value) {
    store_->setValue(group + QLatin1String(name), value);
  };
  put("units", p.units == Units::inches ? QStringLiteral("in") : QStringLiteral("cm"));
  put("paper", p.letter_paper ? QStringLiteral("letter") : QStringLiteral("a4"));
  put("left-handed", p.left_handed);
  put("larger-type", p.larger_type);
  put("less-motion", p.less_motion);
  put("theme", p.theme == ThemeName::dark ? QStringLiteral("dark") : QStringLiteral("light"));
  put("language", p.language);
  put("blade", p.blade);
}

void Settings::set(const std::function<void(Preferences&)>& edit) {
  edit(preferences_);
  write();
  emit changed();
}

QStringList Settings::recent() const {
  QStringList files;
  for (const QString& file : store_->value(group + QLatin1String("recent")).toStringList())
    if (QFileInfo::exists(file)) files.append(file);
  return files;
}

void Settings::add_recent(const QString& file) {
  QStringList files = recent();
  const QString whole = QFileInfo(file).absoluteFilePath();
  files.removeAll(whole);
  files.prepend(whole);
  while (files.size() > most_recent) files.removeLast();
  store_->setValue(group + QLatin1String("recent"), files);
  emit changed();
}

QByteArray Settings::window_place() const {
  return store_->value(group + QLatin1String("window")).toByteArray();
}

void Settings::set_window_place(const QByteArray& place) {
  store_->setValue(group + QLatin1String("window"), place);
}

}  // namespace cowlcast::projector
