// Settings: what belongs to the person and the machine, not to a garment.
//
//   Settings settings;
//   settings.set([](Preferences& p) { p.units = Units::inches; });
//   connect(&settings, &Settings::changed, ...);
//
// Kept where the system keeps such things, or in a file of one's own. Nothing
// here changes a pattern.
#pragma once

#include <QObject>
#include <QSettings>
#include <QStringList>
#include <functional>
#include <memory>

#include "projector/workbench/lengths.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {

struct Preferences {
  Units units = Units::centimetres;
  bool letter_paper = false;  ///< else A4
  bool left_handed = false;
  double blade = 45.0;  ///< mm
  ThemeName theme = ThemeName::light;
  bool larger_type = false;
  bool less_motion = false;                 ///< nothing moves by itself
  QString language = QStringLiteral("en");  ///< "en", "de"
};

class Settings : public QObject {
  Q_OBJECT

 public:
  /// `file`: an ini file of one's own; empty: the usual place.
  explicit Settings(const QString& file = {});

  const Preferences& preferences() const { return preferences_; }
  void set(const std::function<void(Preferences&)>& edit);

  /// Files opened or saved last, newest first, at most eight; those that are gone are left out.
  QStringList recent() const;
  void add_recent(const QString& file);

  QByteArray window_place() const;
  void set_window_place(const QByteArray& place);

 signals:
  void changed();

 private:
  void read();
  void write();

  std::unique_ptr<QSettings> store_;
  Preferences preferences_;
};

}  // namespace cowlcast::projector
