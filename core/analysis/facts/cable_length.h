// Prompt. The length of each cable and run: typed by hand, or made (leads). The installed part of a run is its
// permanent link; the whole is the channel.
#pragma once

#include "core/base/units.h"
#include "core/graph/runs.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

enum class LengthFrom { unknown, typed, made };

struct CableLength {
    std::optional<base::Length> length;
    LengthFrom from = LengthFrom::unknown;
    friend bool operator==(const CableLength&, const CableLength&) = default;
};

struct RunLength {
    std::optional<base::Length> channel;    // none if any part is unknown
    std::optional<base::Length> permanent;  // installed cables only; none if there are none or one is unknown
    std::optional<base::Length> leads;
    friend bool operator==(const RunLength&, const RunLength&) = default;
};

struct CableLengths {
    std::vector<CableLength> cables;  // per cable
    std::vector<RunLength> runs;      // per run
    friend bool operator==(const CableLengths&, const CableLengths&) = default;
};

CableLengths find_cable_lengths(const graph::Wiring&, const graph::Runs&);

}  // namespace streamwright::analysis
