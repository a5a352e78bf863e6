// What must be asked for, and where, so that a stream comes to an arc: the bridges on its way, one after the other, by
// RFC 4541. A bridge hands a stream on always, or when somebody whose report it heard asks (unknown groups dropped,
// toward a router port), or when one beyond asks (toward other ports), or, where unknown groups are flooded, while
// nobody at all is heard.
#pragma once

#include "core/analysis/facts/arc_sides.h"
#include "core/analysis/facts/site_set.h"

#include <vector>

namespace streamwright::analysis {

/// Met by a set of sites that ask: one of each need; and of each flood none of `heard`, or one of `beyond`.
struct Crossing {
    struct Flood {
        SiteSet heard, beyond;
        friend bool operator==(const Flood&, const Flood&) = default;
    };
    std::vector<SiteSet> needs;  // none lies within another
    std::vector<Flood> floods;
    void need(const SiteSet& one_of);
    void flood(SiteSet heard, SiteSet beyond);
    void join(const Crossing& other);
    void keep(const SiteSet& sites);  // only these can ask
    friend bool operator==(const Crossing&, const Crossing&) = default;
};

/// One way to meet a crossing: any one of each of these.
using NeedList = std::vector<SiteSet>;
struct CrossingWays {
    std::vector<NeedList> ways;  // a way without needs: nobody need ask; no way: it cannot be met
    bool complete = true;        // false: there were too many, and some are left out
};
CrossingWays ways_across(const Crossing& crossing);

/// How a class of streams is told apart by bridges: `groups` of one group MAC address, this stream in one of them. A
/// site then stands `groups` times in the sets: asking for the first group, for the second.
struct GroupView {
    int groups = 1, group = 0;
    bool local_mac = false;  // shares its MAC address with 224.0.0.0/24
    friend auto operator<=>(const GroupView&, const GroupView&) = default;
};

/// The sites of one VLAN: bridges where inputs are, and last of all the device at the end of the arc looked at.
class CrossingReader {
public:
    CrossingReader(const graph::NetworkGraph&, const VlanPaths&, const Tree&, const VlanSnooping&, const TreeOrder&,
                   VlanIndex, const std::vector<bool>& bridge_has_inputs);

    /// Whether a loop is in the bridge's part: the crossings there are not told.
    bool is_looped(int bridge) const { return looped_[static_cast<std::size_t>(bridge)]; }
    int site_count() const { return static_cast<int>(bridges_.size()) + 1; }
    int site_of(int bridge) const { return site_of_[static_cast<std::size_t>(bridge)]; }  // -1: none
    int bridge_of(int site) const { return bridges_[static_cast<std::size_t>(site)]; }
    int here() const { return static_cast<int>(bridges_.size()); }

    /// Bridges behind an arc from which streams may come to it, and what that takes; of bridges that are not listed
    /// none ever does. `device_asks`: the device at the end of a leaf's arc has inputs. Not in looped parts.
    struct Behind {
        std::vector<std::pair<int, int>> bridges;  // and the crossing of each
        std::vector<Crossing> crossings;
    };
    Behind behind(int arc, const GroupView& view, bool device_asks) const;
    /// Sites beyond the arc, whoever hears their reports; toward a leaf's device that device alone.
    SiteSet beyond(int arc) const;

private:
    /// The arc looked at: `here_site` is the site at whose bridge its device hangs; -1: it leads to no device.
    struct Look {
        const GroupView& view;
        int here_site = -1;
        bool device_asks = false;
    };
    void hear();
    void look_beyond();
    int here_site_of(int arc) const;
    SiteSet seen(const SiteSet& sites, const Look& look, bool by_mac) const;
    SiteSet members(int bridge, int arc, const Look& look) const;
    bool add_hop(int bridge, int arc, const Look& look, Crossing& crossing) const;

    const graph::NetworkGraph& network_;
    const VlanPaths& paths_;
    const Tree& tree_;
    const VlanSnooping& snooping_;
    const TreeOrder& order_;
    VlanIndex vlan_;
    std::vector<bool> looped_;  // per bridge
    std::vector<int> bridges_, site_of_;
    std::vector<SiteSet> heard_;   // per bridge: sites whose reports it keeps
    std::vector<SiteSet> beyond_;  // per link arc
};

}  // namespace streamwright::analysis
