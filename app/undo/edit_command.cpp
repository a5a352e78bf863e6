#include "app/undo/edit_command.h"

namespace streamwright::app {

EditCommand::EditCommand(model::Delta delta, const QString& words, Apply apply)
    : QUndoCommand(words), delta_(std::move(delta)), apply_(std::move(apply)) {}

void EditCommand::redo() { apply_(delta_); }
void EditCommand::undo() { apply_(delta_.inverse()); }

}  // namespace streamwright::app
