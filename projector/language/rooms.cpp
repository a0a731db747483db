#include "projector/language/rooms.h"

#include <QMutexLocker>
#include <QStringList>
#include <algorithm>

namespace cowlcast::projector {
namespace {

constexpr int kDeepest = 4;             // sentences within sentences
constexpr qsizetype kMostKnown = 4000;  // sentences remembered; numbers in them change

const QRegularExpression& gap() {
  static const QRegularExpression one(QStringLiteral("%([1-9])"));
  return one;
}

bool is_shouted(const QString& words) {
  return words == words.toUpper() && words != words.toLower();
}

/// Parted after full stops, each with the space that follows it.
QStringList sentences_of(const QString& line) {
  static const QRegularExpression end(QStringLiteral("(?<=[.!?:])\\s+(?=[\\p{Lu}\"`])"));
  QStringList parts;
  qsizetype from = 0;
  for (auto ends = end.globalMatch(line); ends.hasNext();) {
    const auto one = ends.next();
    parts += line.mid(from, one.capturedEnd() - from);
    from = one.capturedEnd();
  }
  parts += line.mid(from);
  return parts;
}

}  // namespace

void RoomSentences::clear() {
  exact_.clear();
  patterns_.clear();
  known_.clear();
}

void RoomSentences::add(const QString& pattern, const QString& translation) {
  Pattern one{{}, {}, {}, translation, 0};
  QString fits;
  qsizetype from = 0;
  for (auto gaps = gap().globalMatch(pattern); gaps.hasNext();) {
    const auto here = gaps.next();
    fits +=
        QRegularExpression::escape(pattern.mid(from, here.capturedStart() - from)) + QStringLiteral("(.+?)");
    one.letters += here.capturedStart() - from;
    one.places.push_back(here.captured(1).toInt());
    one.quoted.push_back(here.capturedStart() > 0 && pattern[here.capturedStart() - 1] == QLatin1Char('"'));
    from = here.capturedEnd();
  }
  if (one.places.empty()) {
    exact_.insert(pattern, translation);
    return;
  }
  one.letters += pattern.size() - from;
  one.fits.setPattern(QStringLiteral("^%1%2$").arg(fits, QRegularExpression::escape(pattern.mid(from))));
  const auto after = std::find_if(patterns_.begin(), patterns_.end(),
                                  [&](const Pattern& other) { return other.letters < one.letters; });
  patterns_.insert(after, std::move(one));
}

QString RoomSentences::said(const QString& words) const {
  if (empty()) return words;
  const QMutexLocker lock(&mutex_);
  if (const auto known = known_.constFind(words); known != known_.constEnd()) return *known;
  QStringList lines = words.split(QLatin1Char('\n'));
  for (QString& line : lines) line = line_said(line);
  if (known_.size() > kMostKnown) known_.clear();
  return *known_.insert(words, lines.join(QLatin1Char('\n')));
}

QString RoomSentences::line_said(const QString& line) const {
  QString out;
  bool all = true;
  for (const QString& part : sentences_of(line)) {
    const QString sentence = part.trimmed(), there = one_said(sentence, 0);
    all = all && (there != sentence || sentence.isEmpty());
    out += QString(part).replace(sentence, there);
  }
  if (all) return out;
  const QString whole = one_said(line.trimmed(), 0);  // what is filled in may hold a full stop
  return whole != line.trimmed() ? whole : out;
}

QString RoomSentences::one_said(const QString& sentence, int depth) const {
  if (const auto exact = exact_.constFind(sentence); exact != exact_.constEnd()) return *exact;
  if (depth > kDeepest) return sentence;
  for (const Pattern& pattern : patterns_)
    if (const auto match = pattern.fits.match(sentence); match.hasMatch())
      return filled(pattern, match, depth);
  if (is_shouted(sentence)) {
    const QString quietly = one_said(sentence.toLower(), kDeepest);
    if (quietly != sentence.toLower()) return quietly.toUpper();
  }
  return sentence;
}

QString RoomSentences::filled(const Pattern& pattern, const QRegularExpressionMatch& match, int depth) const {
  QString out;
  qsizetype from = 0;
  for (auto gaps = gap().globalMatch(pattern.translation); gaps.hasNext();) {
    const auto here = gaps.next();
    const auto which = std::find(pattern.places.begin(), pattern.places.end(), here.captured(1).toInt());
    out += pattern.translation.mid(from, here.capturedStart() - from);
    if (which != pattern.places.end()) {
      const auto place = which - pattern.places.begin();
      const QString filling = match.captured(static_cast<int>(place) + 1);
      out += pattern.quoted[static_cast<size_t>(place)] ? filling : one_said(filling, depth + 1);
    }
    from = here.capturedEnd();
  }
  return out + pattern.translation.mid(from);
}

}  // namespace cowlcast::projector
