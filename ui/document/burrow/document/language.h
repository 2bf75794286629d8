#pragma once
/// The language of the screen: one dictionary for the texts of the core and of the pages.

#include <QString>
#include <QStringList>

namespace burrow {

/// Languages the program speaks, "en" first.
QStringList languages();
/// What it is called by those who speak it, and in its own words if nobody read its texts a second time.
QString language_name(const QString& language);
/// "as-desktop" means German on a German desktop, else English; anything unknown is English.
QString resolve_language(const QString& wanted);

/// From now on texts are made in that language, and Qt's own buttons speak it where Qt's translations are installed.
/// For the start of the program, before tables are loaded and windows made.   Evidence: German.*
void speak_language(const QString& language);

}  // namespace burrow
