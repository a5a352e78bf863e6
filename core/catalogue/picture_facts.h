// What a picture port takes or gives, and what a codec leaves of a picture. A port or codec without such facts is
// silent: nothing is assumed of it, and nothing is claimed.
#pragma once

#include "core/standards/hdcp.h"
#include "core/standards/video_format.h"

#include <optional>
#include <vector>

namespace streamwright::catalogue {

/// Of one picture port. What is left empty within it is no limit: the port passes all that its link carries.
struct PictureFacts {
    /// Raster and rate, most preferred first: what an output can give; what an input takes, as its own EDID says.
    std::vector<standards::VideoFormat> formats;
    std::vector<standards::Sampling> samplings;
    std::optional<int> most_depth;  // bits per component
    std::vector<standards::DynamicRange> ranges;
    std::optional<standards::HdcpVersion> hdcp;  // spoken by the port; none: not stated
    // An output that feeds fewer receivers, or fewer levels of repeaters, than its HDCP version lets it.
    std::optional<int> hdcp_most_devices, hdcp_most_levels;
    bool repeats = false;   // an input whose device passes protected pictures on as an HDCP repeater
    bool captures = false;  // an input whose device records or sends on in the clear: takes no protected picture
    friend bool operator==(const PictureFacts&, const PictureFacts&) = default;
};

/// What a codec carries of a picture from encoder to decoder. What is left empty is no limit.
struct CodecPicture {
    std::optional<standards::VideoFormat> most_format;  // raster and rate; larger or faster ones are not encoded
    std::optional<standards::Sampling> most_sampling;   // fuller ones are thinned out to it
    std::optional<int> most_depth;                      // deeper ones are cut
    bool flattens_hdr = false;                          // HDR leaves as SDR
    std::optional<bool> carries_protection;             // protected pictures pass, under a protection of its own
    friend bool operator==(const CodecPicture&, const CodecPicture&) = default;
};

}  // namespace streamwright::catalogue
