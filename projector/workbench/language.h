// The language of the window.
//
//   use_language("de");
//
// Sentences are English in the source; another language is a .ts file (Qt's XML of
// translations) in data/languages, read as it is. A sentence means the same
// wherever it stands, so it is looked up without its context.
#pragma once

#include <QByteArray>
#include <QHash>
#include <QString>
#include <QTranslator>

namespace cowlcast::projector {

/// A translator straight from the text of a .ts file. Sentences without a finished translation stay English.
class SourceTranslator : public QTranslator {
 public:
  /// False, and empty, when the text is no .ts file.
  bool read(const QByteArray& ts);
  QString translate(const char* context, const char* source, const char* disambiguation,
                    int n) const override;
  bool isEmpty() const override { return sentences_.isEmpty(); }
  const QHash<QString, QString>& sentences() const { return sentences_; }  ///< by the English one

 private:
  QHash<QString, QString> sentences_;
};

/// "en" or a language that is there; anything else is English.
void use_language(const QString& code);

}  // namespace cowlcast::projector
