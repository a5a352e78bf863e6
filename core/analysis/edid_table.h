// What every cabled picture input announces, by which policy, and what is sent to it therefore: for documents and the
// properties panel.
#pragma once

#include "core/analysis/facts_set.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// Whose EDID an input shows. own: as its type says; passed_on: of what is behind it.
enum class EdidSource { own, passed_on, fixed, copied, merged, not_known };

struct EdidRow {
    graph::PortAt in;
    std::vector<graph::PortAt> fed_by;
    EdidSource by = EdidSource::not_known;
    std::optional<graph::PortAt> from;                         // copied
    std::vector<standards::VideoFormat> rasters;               // best first, each in its best form
    std::optional<std::vector<catalogue::AudioFormat>> audio;  // the audio block; none: not known
    std::vector<standards::VideoFormat> arrives;               // one for each picture known to come, no doubles
};

/// By port.
std::vector<EdidRow> edid_table(const Facts& facts);

}  // namespace streamwright::analysis
