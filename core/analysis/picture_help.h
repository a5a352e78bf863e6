// What rules of pictures share: their arithmetic in words, what would fit instead, and the remedies.
#pragma once

#include "core/analysis/finding.h"
#include "core/analysis/picture_way.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// How the link's figures come about, line by line.
std::vector<base::Text> link_terms(const standards::VideoFormat& asked, const standards::LinkFit& fit,
                                   const std::string& link);

/// Where and why a picture goes no further, in one line.
base::Text break_line(const graph::Wiring& wiring, const PictureBreak& broken);

/// What would have to be sent so that the picture arrives: of the raster and rate that is sent the best form, else the
/// best that the whole way allows; none: nothing would.
std::optional<int> fitting(PictureWays& ways, const PictureOrigin& origin, std::size_t arrival, int sent);

/// The first few of these places, by name; how many there are in all goes into the terms of a finding.
base::Value places(const graph::Wiring& wiring, const std::vector<graph::PortAt>& ports);
void say_how_many(const std::vector<graph::PortAt>& ports, Finding& finding);

/// Sets the output to that format.
Remedy set_format(const graph::Wiring& wiring, graph::PortAt out, const standards::VideoFormat& format);
/// Lets the input announce what all places behind it take.
Remedy announce_merged(const graph::Wiring& wiring, graph::PortAt in);

}  // namespace streamwright::analysis
