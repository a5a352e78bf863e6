// The only undo command: one delta. Redo applies it, undo applies its inverse; nothing else changes a design.
#pragma once

#include "core/model/delta.h"

#include <QUndoCommand>

#include <functional>

namespace streamwright::app {

class EditCommand final : public QUndoCommand {
public:
    using Apply = std::function<void(const model::Delta&)>;
    EditCommand(model::Delta delta, const QString& words, Apply apply);

    void redo() override;
    void undo() override;

private:
    model::Delta delta_;
    Apply apply_;
};

}  // namespace streamwright::app
