// Who can show which stream. Where a stream packs what it carries by an open standard and the decoder's type says which
// of it it takes, the standard decides, whatever the families; else the family does.
#pragma once

#include "core/catalogue/codec.h"
#include "core/model/rows/stream.h"

#include <string>

namespace streamwright::analysis {

/// Whether the type says anything about what the stream packs.
bool speaks_of(const catalogue::Codec& codec, const model::Stream& stream);

/// Each true where the type is silent.
bool takes_coding(const catalogue::Codec& codec, const model::PictureEssence& picture);
bool takes_level(const catalogue::Codec& codec, const model::PictureEssence& picture);
bool takes_flow(const catalogue::Codec& codec, const standards::AudioStream& flow);

/// All of it, at an input of this kind. `sender` is the encoder's codec; null where its type has none.
bool shows_stream(const catalogue::Codec& codec, catalogue::StreamKind input, const model::Stream& stream,
                  const catalogue::Codec* sender);

/// The level that the type states for the coding; empty: none.
const std::string& stated_level(const catalogue::PictureCodings& packed, standards::PictureCoding coding);
/// "4.2", "5.1, high tier"; empty where the coding has no levels.
std::string level_words(const model::PictureEssence& picture);

}  // namespace streamwright::analysis
