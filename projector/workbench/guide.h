// GuideWindow: the user's guide, a chapter for each place of the workbench.
//
//   guide.open_at(Place::cowl);
//
// The text is Markdown in data/guide, one file for each language, linked into the
// program; its second-level headings are the chapters, and a place's chapter bears
// the place's own title. Pictures are as wide as the page allows, at most their own width.
#pragma once

#include <QDialog>
#include <QListWidget>
#include <QTextBrowser>
#include <QTimer>

#include "projector/project/derive.h"

namespace cowlcast::projector {

/// Markdown pages whose pictures fit the page.
class GuidePage : public QTextBrowser {
  Q_OBJECT

 public:
  using QTextBrowser::QTextBrowser;
  QVariant loadResource(int type, const QUrl& name) override;

 signals:
  void resized();

 protected:
  void resizeEvent(QResizeEvent* event) override;
};

class GuideWindow : public QDialog {
  Q_OBJECT

 public:
  /// In the language of a code such as "en"; one that has no guide gets the English one.
  GuideWindow(const QString& language, QWidget* parent);

  /// Shows the place's chapter, in front of other windows.
  void open_at(Place place);

  QStringList chapters() const;
  /// The chapter that is at the top of what is in sight.
  QString chapter() const;

 private:
  void show_text();
  void go_to(int chapter);
  void follow_page();

  QString text_;
  QTimer fit_;       // pictures to the page once it has its width
  QString reading_;  // the chapter that was gone to, or scrolled to
  QListWidget* list_;
  GuidePage* page_;
};

}  // namespace cowlcast::projector
