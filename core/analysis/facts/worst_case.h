// Deferred. The greatest load of each arc over every routing that the decoders' inputs allow: the streams there with
// nothing routed, and the heaviest others that inputs can bring there, by the rules of forwarding (stream_walk).
// Where each VLAN's active topology is a tree with a querier that all its bridges hear, all bridges snoop and none
// drops unknown groups, and no two streams share a group, a stream needs any one input beyond the arc (worst_families).
// Everything else is asked hop by hop (crossing) and chosen by flows (routing_choice). Exact but where `at_most` says
// that the figure is a bound: loops that nothing cuts, and choices too many to try.
#pragma once

#include "core/analysis/facts/compatibility.h"
#include "core/analysis/facts/link_load.h"

#include <map>
#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

namespace streamwright::analysis {

/// One (stream, decoder, input) of a routing that attains the worst case.
struct Routed {
    int stream = 0;
    int decoder = 0;  // device index
    int input = 0;    // index into the decoder type's inputs
    friend auto operator<=>(const Routed&, const Routed&) = default;
};

struct ArcWorst {
    base::Rate wire;              // unasked + routed; where `at_most`, not less than any routing brings
    std::vector<int> unasked;     // streams on the arc with nothing routed, but those that the witness keeps away
    std::vector<int> routed;      // streams that routing adds, by falling rate
    std::vector<Routed> witness;  // a routing that attains it; empty: routing nothing does
    int inputs_beyond = 0;        // decoder inputs across the arc
    bool at_most = false;         // the figure is a bound: the witness attains unasked + routed, which may be less
    friend bool operator==(const ArcWorst&, const ArcWorst&) = default;
};

struct WorstCase {
    std::vector<ArcWorst> arcs;      // per arc
    std::map<int, ArcWorst> agreed;  // of arcs with an agreement: the greatest load that keeps to it
    friend bool operator==(const WorstCase&, const WorstCase&) = default;
};

/// As forwarded; or as if each stream went from its source to its receivers only, and nothing unasked anywhere.
enum class WorstFlow { forwarded, paths_only };

/// Prepared once for a network, then asked arc by arc. All that it is made from must outlive it.
class WorstFinder {
public:
    WorstFinder(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, const SpanningTrees&,
                const Forwarding&, const LinkLoads&, const Compatibility&, WorstFlow);
    ~WorstFinder();
    ArcWorst of(int arc);
    /// With so many different pictures at most that routing adds.
    ArcWorst within(int arc, int pictures);

private:
    ArcWorst find(int arc, std::optional<int> pictures);
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

/// Pictures at most that routing may bring over an arc, where that is agreed.
using AgreedPictures = std::map<int, int>;

/// Nothing if stopped.
std::optional<WorstCase> find_worst_case(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                         const SpanningTrees&, const Forwarding&, const LinkLoads&,
                                         const Compatibility&, std::stop_token, WorstFlow = WorstFlow::forwarded,
                                         const AgreedPictures& = {});
/// With the usual compatibility.
std::optional<WorstCase> find_worst_case(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                         const SpanningTrees&, const Forwarding&, const LinkLoads&, std::stop_token,
                                         const AgreedPictures& = {});

}  // namespace streamwright::analysis
