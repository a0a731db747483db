// What another room says, in the language of the window.
//
//   note.say(QString::fromStdString(said(refusal.what())));
//
// English where no other language was chosen, as on the command line, and where a sentence has no
// translation. What is said already stays as it is. From any thread.
#pragma once

#include <QString>
#include <string>

namespace cowlcast::projector {

std::string said(const std::string& words);
QString said(const QString& words);

}  // namespace cowlcast::projector
