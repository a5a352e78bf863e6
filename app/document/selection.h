// What the user has chosen, shared by all views and panels: subjects, and the preset whose loads are shown.
#pragma once

#include "core/analysis/finding.h"
#include "core/model/ids.h"

#include <QObject>

#include <optional>
#include <set>
#include <variant>
#include <vector>

namespace streamwright::app {

using Chosen = std::variant<model::DeviceId, model::CableId, model::PortRef, model::StreamId, model::FrameId,
                            model::NoteId, model::VlanId>;

class Selection final : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    const std::set<Chosen>& all() const { return all_; }
    bool holds(const Chosen& subject) const { return all_.contains(subject); }
    bool empty() const { return all_.empty(); }
    /// The subject, where exactly one is chosen.
    std::optional<Chosen> only() const;
    template <class Id>
    std::vector<Id> of() const {
        std::vector<Id> found;
        for (const auto& each : all_)
            if (const auto* id = std::get_if<Id>(&each)) found.push_back(*id);
        return found;
    }

    void set(std::set<Chosen> subjects);
    void set(const Chosen& subject) { set(std::set<Chosen>{subject}); }
    void toggle(const Chosen& subject);
    void clear() { set(std::set<Chosen>{}); }
    /// Drops what the design no longer has.
    void keep_only_rows_of(const model::Design& design);

    std::optional<model::PresetId> preset() const { return preset_; }
    void set_preset(std::optional<model::PresetId> preset);

Q_SIGNALS:
    void changed();
    void preset_changed();

private:
    std::set<Chosen> all_;
    std::optional<model::PresetId> preset_;
};

/// What to select for the subject of a finding; nothing for rows that no view shows by themselves.
std::optional<Chosen> chosen_for(const model::Design& design, const analysis::Subject& subject);

}  // namespace streamwright::app
