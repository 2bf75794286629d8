#include "burrow/document/figures.h"

namespace burrow {

QString with_noughts(QString text) {
  for (QChar& letter : text)
    if (letter >= u'1' && letter <= u'9') letter = u'0';
  return text;
}

}  // namespace burrow
