// Workplace: one of the six places where a person stays and works.
//
//   class ClothPlace : public Workplace {
//    public:
//     ClothPlace(Document& document, Settings& settings, CurrentGarment& garment);
//     void show_project() override;       // the project has changed and the place is in sight
//   };
//
// The window builds the rail from its workplaces; what each still lacks comes from
// `missing_in`. A workplace reads and changes the project through the document alone.
#pragma once

#include <QString>
#include <QWidget>

#include "projector/project/derive.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/current_garment.h"
#include "projector/workbench/document.h"
#include "projector/workbench/look/icons.h"
#include "projector/workbench/settings.h"

class QHBoxLayout;
class QLabel;

namespace cowlcast::projector {

/// "Pattern".
QString title_of(Place place);
Icon icon_of(Place place);

class Workplace : public QWidget {
  Q_OBJECT

 public:
  Workplace(Place place, Document& document, Settings& settings, CurrentGarment& garment);

  Place place() const { return place_; }

  /// Shows the project as it is now. Called when the place comes into sight and after every change while
  /// it is.
  virtual void show_project() = 0;

  /// Another project is there: what was said of the last one, and what is still at work for it, is over.
  virtual void begin_anew() {}

 signals:
  /// Another place is where the way out is.
  void wanted(Place place);

 protected:
  Document& document() const { return document_; }
  Settings& settings() const { return settings_; }
  CurrentGarment& garment() const { return garment_; }
  /// Below the title: the drawing on the left, the panel on the right.
  QHBoxLayout* body() const { return body_; }
  /// What is shown while there is no base front: why, and the way to the pattern.
  QWidget* make_waiting(const QString& why);
  /// The box edits a length of the project: one step that can be undone for each time it is left or Return is
  /// pressed.
  void let_edit(LengthBox& box, const std::function<void(Project&, double mm)>& edit);
  /// One sentence under the title.
  void set_lead(const QString& sentence);
  /// "48.0 cm" or "18⅞ in", as the person has chosen.
  QString length_words(double mm) const;
  /// A sentence of another room in the person's language, the lengths in it ("812.3 mm") in her units.
  QString in_own_words(const std::string& sentence) const;

 private:
  Place place_;
  Document& document_;
  Settings& settings_;
  CurrentGarment& garment_;
  QLabel* lead_;
  QHBoxLayout* body_;
};

}  // namespace cowlcast::projector
