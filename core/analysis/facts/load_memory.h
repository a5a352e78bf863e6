// What every walk of the whole network has asked of which bridge, so that after a failure only those walks are made
// again whose bridges answer otherwise. The outcome is that of all loads worked out anew; a property test holds it.
#pragma once

#include "core/analysis/facts/link_load.h"
#include "core/analysis/facts/lost_state.h"
#include "core/analysis/facts/rate_table.h"
#include "core/analysis/facts/stream_walk.h"

#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace streamwright::analysis {

/// A subscription in its preset.
struct Picture {
    int preset = 0;        // index into LinkLoads::presets
    int subscription = 0;  // index by id
    friend auto operator<=>(const Picture&, const Picture&) = default;
};

/// A picture that comes by another way than before.
struct MovedPicture {
    Picture picture;
    VlanIndex vlan = 0;
    int bridge = 0;                 // that it is received at
    bool waits_for_report = false;  // a bridge that the new way crosses must first learn of the membership
    friend auto operator<=>(const MovedPicture&, const MovedPicture&) = default;
};

struct OverfullArc {
    int preset = 0;  // index into LinkLoads::presets; -1: nothing subscribed, in a design without presets
    int arc = 0;
    base::Rate wire;
    base::BitRate capacity;
    bool already = false;  // overfull in the whole network too
    friend bool operator==(const OverfullArc&, const OverfullArc&) = default;
};

struct LoadChange {
    std::vector<Picture> lost;  // shown before, no longer; sorted
    std::vector<MovedPicture> moved;
    std::vector<OverfullArc> overfull;  // by preset, arc
    friend bool operator==(const LoadChange&, const LoadChange&) = default;
};

class LoadMemory {
public:
    /// Reads the state at each change: it must be at the failure asked about.
    LoadMemory(const WholeNetwork& whole, const LinkLoads& loads, const LostState& state);
    LoadChange change();

private:
    static std::size_t at(int index) { return static_cast<std::size_t>(index); }
    struct Asked {
        int stream = 0, subscription = 0, decoder = -1;
        std::optional<Receiver> receiver;
        bool served = false;
    };
    /// The streams of one group MAC address in one preset, or one stream that nobody wants (preset -1).
    struct Unit {
        int preset = -1;
        std::vector<Asked> asked;
        std::vector<int> streams;
        std::vector<int> starts;  // per stream + 1: ranges of arcs_
    };
    /// A unit walked again.
    struct Walked {
        int unit = 0;
        std::vector<std::vector<int>> arcs;  // per stream
        std::vector<Asked> asked;
    };
    struct Side {  // of the whole network, or of what a failure leaves
        const graph::NetworkGraph& network;
        const VlanPaths& paths;
        const Forwarding& forwarding;
    };
    struct Step {
        int arc = 0, stream = 0;
        friend auto operator<=>(const Step&, const Step&) = default;
    };
    struct Steps {
        std::vector<Step> added, removed;  // sorted
    };

    void make_units();
    int wanted_unit(int preset, int stream, const std::vector<int>& members);
    void remember(int unit);
    void read_overfull();
    Walked walk(const Side& side, StreamWalk& walker, int unit) const;
    bool shows(const Side& side, const StreamWalk& walker, const Asked& asked) const;
    std::span<const int> arcs(int unit, int stream) const;
    int unit_of(int preset, int stream) const;
    const PresetLoad& load(int preset) const;

    void mark_stale(const std::vector<int>& units);
    void mark_changed_bridges(VlanIndex vlan);
    void find_stale();
    void judge_pictures(const Walked& walked, LoadChange& change);
    void judge_picture(int unit, const Asked& before, const Asked& after, std::span<const int> arcs,
                       LoadChange& change);
    std::optional<MovedPicture> moved(int unit, const Asked& before, const Asked& after, std::span<const int> arcs);
    Steps steps_of(int preset, const std::vector<Walked>& walked);
    void judge_arcs(int preset, const Steps& steps, LoadChange& change);
    LoadChange change_worked_out_anew();
    using Served = std::function<bool(int preset, int stream, int subscription)>;
    void settle(LoadChange& change, const Served& served) const;
    bool still_served(const std::vector<Walked>& walked, int preset, int stream, int subscription) const;

    WholeNetwork whole_;
    const LinkLoads& loads_;
    const LostState& state_;
    RateTable rates_;
    StreamWalk walker_, again_;
    std::vector<int> encoders_;   // per stream; -1: none
    std::vector<int> twins_;      // per stream; -1: none
    std::vector<int> stream_of_;  // per subscription; -1: none
    bool has_twins_ = false;
    std::vector<Unit> units_;  // first the idle unit of each stream, then those that are wanted
    std::vector<int> arcs_;
    std::vector<std::vector<int>> wanted_unit_;                 // per preset, stream; -1: nobody wants it
    std::vector<std::vector<int>> units_of_stream_;             // all its units
    std::vector<std::vector<int>> units_of_device_;             // per decoder
    std::vector<std::vector<int>> readers_, flooding_readers_;  // per VLAN and bridge
    std::vector<std::vector<int>> overfull_;                    // per preset, or of idle: arcs
    std::vector<char> stale_;
    std::vector<int> stale_list_;
    std::vector<int> mark_, came_by_;  // scratch: per arc, per bridge
    int round_ = 0;
};

}  // namespace streamwright::analysis
