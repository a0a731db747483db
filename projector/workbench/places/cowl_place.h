// The place where the cowl is shaped: it opens as its neck point is dragged.
#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QStackedWidget>
#include <optional>

#include "projector/workbench/canvas/canvas.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/cowl_handles.h"
#include "projector/workbench/places/hang_picture.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

class CowlPlace : public Workplace {
  Q_OBJECT

 public:
  CowlPlace(Document& document, Settings& settings, CurrentGarment& garment);
  void show_project() override;

 private:
  QWidget* make_panel();
  void add_drape(Panel& panel);
  void add_slashes(Panel& panel);
  void add_pieces(Panel& panel);
  void take(const std::string& id);
  void drag(const std::string& id, const Point& place);
  void step(const std::string& id, int across, int up);
  void try_wishes(const std::string& id, const drafting::CowlWishes& wishes, const std::string& merge_key);
  void mend(const WayOut& out);
  void show_fields(const Project& project);
  void show_results();
  void show_refusal();
  QString mended_words(const WayOut& out) const;

  Canvas* canvas_ = nullptr;
  QStackedWidget* middle_ = nullptr;
  NoteBox* refusal_ = nullptr;
  LengthBox *drape_ = nullptr, *hang_ = nullptr, *neckline_ = nullptr, *facing_ = nullptr,
            *panel_depth_ = nullptr;
  HangPicture* picture_ = nullptr;
  OneOf *count_ = nullptr, *weight_ = nullptr;
  QPushButton* by_default_ = nullptr;
  QCheckBox *own_facing_ = nullptr, *back_ = nullptr, *inner_panel_ = nullptr;
  QLabel *hang_words_ = nullptr, *results_ = nullptr;
  std::optional<drafting::DrapeRange> range_;  // while the drape is dragged
  QString held_back_;                          // why a drag goes no further
};

}  // namespace cowlcast::projector
