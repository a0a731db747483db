// The language of the window.
//
//   use_language("de");
//
// Sentences are English in the source; another language is two .ts files (Qt's XML of
// translations) in data/languages, read as they are: what the window says, and what
// the rooms say (`rooms.h`). A sentence of the window means the same wherever it
// stands, so it is looked up without its context.
#pragma once

#include <QByteArray>
#include <QHash>
#include <QString>
#include <QTranslator>

#include "projector/language/rooms.h"

namespace cowlcast::projector {

/// The context that sentences of the rooms are looked up in.
inline constexpr const char* kRooms = "Rooms";

/// A translator straight from the text of a .ts file. Sentences without a finished translation stay English.
class SourceTranslator : public QTranslator {
 public:
  /// False, and empty, when the text is no .ts file.
  bool read(const QByteArray& ts);
  /// The same for the sentences of the rooms.
  bool read_rooms(const QByteArray& ts);
  QString translate(const char* context, const char* source, const char* disambiguation,
                    int n) const override;
  bool isEmpty() const override { return sentences_.isEmpty() && rooms_.empty(); }
  const QHash<QString, QString>& sentences() const { return sentences_; }  ///< by the English one

 private:
  QHash<QString, QString> sentences_;
  RoomSentences rooms_;
};

/// "en" or a language that is there; anything else is English.
void use_language(const QString& code);

}  // namespace cowlcast::projector
