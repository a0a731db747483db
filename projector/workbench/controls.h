// The controls that the places are built from: large, named, with a key each.
//
//   Panel panel;
//   auto* drape = panel.add_length(settings, tr("&Drape"), tr("From shoulder seam to shoulder seam ..."),
//   100, 2000); connect(drape, &LengthBox::edited, this, [](double mm) { ... });
//
// Every control says its name to a screen reader, explains the trade's term in its
// tool tip, and is reached by the underlined letter of its label.
#pragma once

#include <QDoubleSpinBox>
#include <QFrame>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <functional>

#include "projector/workbench/look/icons.h"
#include "projector/workbench/settings.h"

namespace cowlcast::projector {

/// `name` may have an ampersand, which is left out.
void describe(QWidget& widget, QString name, const QString& tip);

/// A button with its key in the text, or in `shortcut` where the text has none.
QPushButton* make_button(const QString& text, const QString& tip, const QKeySequence& shortcut = {});

/// A length in the units the person has chosen; arrow keys and wheel go by an eighth of an inch or 5 mm.
class LengthBox : public QDoubleSpinBox {
  Q_OBJECT

 public:
  LengthBox(Settings& settings, double least, double most);
  void show_mm(double mm);  ///< nothing is emitted
  double mm() const { return value(); }
  void stepBy(int steps) override;
  bool event(QEvent* event) override;

 signals:
  void edited(double mm);
  /// What was typed is more or less than can be, and the nearest was taken: says so. Empty: it was not.
  void held_back(const QString& words);

 protected:
  QString textFromValue(double mm) const override;
  double valueFromText(const QString& text) const override;
  QValidator::State validate(QString& text, int& place) const override;
  void fixup(QString& text) const override;
  void wheelEvent(QWheelEvent* event) override;

 private:
  QString limit_of(const QString& typed) const;

  Settings& settings_;
  QString typed_;  // since it was last left
};

/// A label for below the box that shows what it says when it holds something back.
QLabel* make_limit_words(const LengthBox& box);

/// Keys of a note's two buttons. Notes that may be in sight together have keys of their own.
struct NoteKeys {
  QKeySequence way_out{QStringLiteral("Ctrl+Return")}, put_away{QStringLiteral("Ctrl+Backspace")};
};

/// Words where something is amiss or on offer, with a button that takes it up and one that puts it away.
class NoteBox : public QFrame {
  Q_OBJECT

 public:
  explicit NoteBox(NoteKeys keys = {}, QWidget* parent = nullptr);
  /// Something is amiss.
  void say(const QString& words);
  /// `action` empty: no button.
  void say(const QString& words, const QString& action, std::function<void()> way_out);
  /// The same without alarm, for what may be taken up or left.
  void offer(const QString& words, const QString& action, std::function<void()> taken_up);
  /// Puts it away.
  void clear();
  QString words() const { return words_->text(); }
  QPushButton* button() const { return button_; }
  QPushButton* put_away() const { return put_away_; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void show_words(const QString& english, const QString& action, std::function<void()> way_out, bool calm);

  NoteKeys keys_;
  QLabel* words_;
  QPushButton *button_, *put_away_;
  bool calm_ = false;
  std::function<void()> way_out_;
};

/// A page of a drawing and, at its right, the panel that goes with it.
QWidget* side_by_side(QWidget* drawing, QWidget* panel);

/// A page with a widget of fixed width in its middle, a little above.
QWidget* centred(QWidget* inside);

/// Several buttons of which one is down.
class OneOf : public QWidget {
  Q_OBJECT

 public:
  struct Choice {
    QString text, tip;
  };
  explicit OneOf(const QString& name, const std::vector<Choice>& choices, bool in_column = false);
  void show_chosen(int which);  ///< -1: none
  QPushButton* button(int which) const;

 signals:
  void chosen(int which);

 private:
  std::vector<QPushButton*> buttons_;
};

/// A column of controls that scrolls when it is too long.
class Panel : public QScrollArea {
  Q_OBJECT

 public:
  explicit Panel(QWidget* parent = nullptr);
  QLabel* add_heading(const QString& words);
  QLabel* add_words(const QString& words);  ///< rich text is understood
  void add(QWidget* widget);
  QLabel* add_labelled(const QString& label, const QString& tip, QWidget* widget);
  LengthBox* add_length(Settings& settings, const QString& label, const QString& tip, double least,
                        double most);
  void add_gap();
  void end() { column_->addStretch(1); }

 private:
  QVBoxLayout* column_;
};

}  // namespace cowlcast::projector
