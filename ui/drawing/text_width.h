#pragma once
/// How wide texts are. Shaping one costs tens of microseconds, and a frame asks for hundreds that are the same as in
/// the last: what was measured lately is looked up.

#include <QFont>
#include <QString>

namespace burrow {

class TextWidths {
 public:
  explicit TextWidths(const QFont& font);
  [[nodiscard]] double of(const QString& text) const;
  /// As it is where it fits, else shortened.
  [[nodiscard]] QString elided(const QString& text, Qt::TextElideMode mode, double room) const;
  [[nodiscard]] double height() const;

 private:
  QFont font_;
  QString key_;
};

}  // namespace burrow
