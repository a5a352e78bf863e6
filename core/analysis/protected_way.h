// Where protected pictures may go: from each source whose content is said to be protected, port by port, to the places
// where the protection ends the picture.
#pragma once

#include "core/analysis/facts/picture_ways.h"
#include "core/analysis/facts/video_chain.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

enum class ProtectionEnd {
    version,     // the port speaks an older version, or none
    captures,    // the input records or sends on in the clear
    codec,       // the codec carries no protected picture
    not_stated,  // the type does not say
};

/// A port at which a protected picture ends, or may end.
struct ProtectionStop {
    graph::PortAt at;
    ProtectionEnd why = ProtectionEnd::version;
    std::vector<graph::PortAt> dark;  // what shows nothing therefore
};

/// HDCP receivers and levels of repeaters below one transmitter.
struct HdcpLoad {
    graph::PortAt from;
    int devices = 0, levels = 0;
};

/// The content that a source plays; nothing where it is not said, or open.
std::optional<standards::HdcpContent> protected_content(const graph::Wiring& wiring, const PictureOrigin& origin);

/// By port; a picture that ends somewhere is not followed beyond. What is not stated is followed.
std::vector<ProtectionStop> protection_stops(PictureWays& ways, const PictureOrigin& origin,
                                             standards::HdcpContent content);

/// The source's output, and the outputs of every decoder that shows its picture. An endpoint whose input is no repeater
/// ends the count; its decoders begin their own.
std::vector<HdcpLoad> hdcp_loads(PictureWays& ways, const PictureOrigin& origin);

}  // namespace streamwright::analysis
