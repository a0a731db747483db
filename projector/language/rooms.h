// What the rooms say, in the person's language.
//
//   rooms.add("Sheet %1 moved between photographs: ...", "Blatt %1 ist ...");
//   rooms.said("Sheet 2 moved between photographs: ... Lay it flat.")   // German, sentence by sentence
//
// Calibration and drafting know nothing of languages: they say finished English sentences, numbers and
// names filled in. Each is found here by the pattern it was made from, and what is filled in is looked up
// in turn. A sentence that no pattern fits stays as it is, so a refusal is never lost.
#pragma once

#include <QHash>
#include <QMutex>
#include <QRegularExpression>
#include <QString>
#include <vector>

namespace cowlcast::projector {

class RoomSentences {
 public:
  void clear();
  /// A pattern is a whole sentence, a line, or a name, with %1 to %9 where something is filled in.
  void add(const QString& pattern, const QString& translation);
  bool empty() const { return exact_.isEmpty() && patterns_.empty(); }

  /// Line by line and sentence by sentence. From any thread.
  QString said(const QString& words) const;

 private:
  struct Pattern {
    QRegularExpression fits;
    std::vector<int> places;   ///< the number of each gap, as they follow one another
    std::vector<bool> quoted;  ///< gaps in quotation marks hold a name of the maker's own, and keep it
    QString translation;
    qsizetype letters = 0;  ///< of the pattern without its gaps
  };

  QString line_said(const QString& line) const;
  QString one_said(const QString& sentence, int depth) const;
  QString filled(const Pattern& pattern, const QRegularExpressionMatch& match, int depth) const;

  QHash<QString, QString> exact_;
  std::vector<Pattern> patterns_;  ///< the most particular first
  mutable QMutex mutex_;
  mutable QHash<QString, QString> known_;
};

}  // namespace cowlcast::projector
