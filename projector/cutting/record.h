// The record of a piece being cut: what is done, where it lay, what was waived.
//
//   Record record = record_from_json(text);
//   if (auto block = calibration_block(map, checks, record, now)) show(*block);
//
// Plain values; reading, writing and the clock are the caller's. Times are
// ISO 8601, UTC, to the second: "2000-01-31T09:30:00Z".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calibration/check/hand_check.h"
#include "calibration/table_map/table_map.h"
#include "projector/frame/laying.h"

namespace cowlcast::projector {

/// A block that the operator has waived, with her knowledge: of one table, for as long as a calibration is
/// trusted without.
struct Waiver {
  std::string at;          ///< when
  std::string reason;      ///< what was waived: a sentence, or several
  std::string table = {};  ///< `made_at` of the calibration it was waived for; empty: holds for none
};

/// A stroke, told from the others by where it lies in the piece, mm.
struct StrokePlace {
  std::string seam;                       ///< it runs along, in words
  Point from = {}, middle = {}, to = {};  ///< in the direction it was cut, the middle along it
};

struct Record {
  std::string piece;             ///< the piece's name
  std::string table_made_at;     ///< of the calibration the first stroke was cut by
  Laying laying;                 ///< where it lay last
  int strokes = 0;               ///< of the plan
  int cut = 0;                   ///< how many of them are cut
  double seconds = 0.0;          ///< at the table
  std::string cautions_read_at;  ///< when the cautions were last read to the end; empty: never
  std::vector<Waiver> waivers;
  std::string shape = {};  ///< `shape_of` the piece when it was begun; empty: not known
  /// Those that are cut, in that order; empty though some are: the record counts them alone.
  std::vector<StrokePlace> cut_strokes = {};
};

/// Tells one piece's cut line from another's: figures and letters, the same for lines that are the same
/// within rounding to 0.01 mm.
std::string shape_of(const drafting::Piece& piece);

/// True when all that is cut by the record was cut of this very piece: nothing yet, or of a cut line like its
/// own. A record that does not know its shape belongs to none.
bool belongs_to(const Record& record, const drafting::Piece& piece);

std::string record_to_json(const Record& record);
/// Throws drafting::Refusal for text that is not a complete record.
Record record_from_json(const std::string& text);

/// Seconds from one time to another; none when one of them is no time.
std::optional<double> seconds_between(const std::string& from, const std::string& to);

/// True when the cautions have not been read on the day of `now`.
bool cautions_due(const Record& record, const std::string& now);

/// For how long a calibration is trusted, and a waiver holds, hours.
inline constexpr double kTrusted = 12.0;

/// All that speaks against cutting by the table now, a sentence or more for each reason: calibrated anew
/// since the first stroke of a piece that is half cut; calibrated too long ago, or nobody knows when; a check
/// by hand that did not agree. Without those that are waived; none when nothing is left.
std::optional<std::string> calibration_block(const calibration::TableMap& map,
                                             const std::vector<calibration::CheckedReading>& checks,
                                             const Record& record, const std::string& now);

/// The record with the block waived for the table that was calibrated at `table`; as it is where that waiver
/// holds already.
Record waived(Record record, const std::string& reason, const std::string& table, const std::string& now);

}  // namespace cowlcast::projector
