// Prompt. What lies between the two transceivers of a fibre run: glass, mated pairs, splices and the light they cost;
// how often the two strands change places; where grinds do not mate and where kinds of fibre change.
#pragma once

#include "core/analysis/facts/cable_grades.h"
#include "core/base/units.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

/// Where two end faces meet that are ground differently.
struct PolishClash {
    graph::PortAt at;
    catalogue::Polish one, other;
    friend bool operator==(const PolishClash&, const PolishClash&) = default;
};

struct FibreChannel {
    std::optional<standards::FibreGrade> grade;  // the weakest; none: one of the cables does not state it
    std::string grade_name;
    std::optional<base::Length> length;  // none: a part is not known
    int wavelength_nm = 0;               // of the light that loses most; 0: no transceiver
    int joints = 0;                      // mated pairs between the transceivers' own sockets, drawn or stated
    int splices = 0;
    base::Loss joint_loss, splice_loss;     // of one
    std::optional<base::Loss> glass, loss;  // none: length, grade or wavelength is not known
    int strands = 0;                        // the least of its cables
    std::optional<int> swaps;               // none: some part does not state it
    bool swaps_stated = false;              // some part does
    std::vector<PolishClash> clashes;
    bool media_mixed = false;  // multimode and single-mode
    bool cores_mixed = false;  // 62.5 um and 50 um
    friend bool operator==(const FibreChannel&, const FibreChannel&) = default;
};

struct FibreChannels {
    std::vector<std::optional<FibreChannel>> runs;  // per run of graph::Runs; none: not of fibre throughout
    friend bool operator==(const FibreChannels&, const FibreChannels&) = default;
};

FibreChannels find_fibre_channels(const graph::Wiring&, const graph::Runs&);

}  // namespace streamwright::analysis
