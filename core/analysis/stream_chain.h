// The chain of numbers by which a stream comes to its rate: what it carries, how that is cut into packets, what each
// packet bears, and what all of them weigh. The properties show it, findings tell it in a few lines.
#pragma once

#include "core/analysis/limit_chain.h"
#include "core/model/rows/stream.h"

#include <string>
#include <vector>

namespace streamwright::analysis {

std::vector<LimitLine> stream_chain(const model::Stream& stream);

/// The same in two or three lines; none where the rate is typed in.
std::vector<base::Text> stream_terms(const model::Stream& stream);

// What documents and panels say of a stream.
/// "1080p59.94 4:2:2 10-bit", "2 channels, 48 kHz"; empty where nothing is stated.
std::string essence_words(const model::Stream& stream);
/// "uncompressed, general packing", "JPEG XS, 4 bits per pixel", "L24, 1 ms"; empty where nothing is stated.
std::string packing_words(const model::Stream& stream);
/// "8 channels, 48 kHz, L24, 1 ms".
std::string flow_words(const standards::AudioStream& flow);
/// On average, at most three decimals: "258941.06"; empty where the rate is typed in and no packet can be counted.
std::string packets_a_second(const model::Stream& stream);

}  // namespace streamwright::analysis
