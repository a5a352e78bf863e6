// Where a published figure comes from.
#pragma once

#include <string>
#include <string_view>

namespace streamwright::standards {

/// read: confirmed in a document; computed: arithmetic on read values; practice: common practice without a source;
/// memory: remembered, not confirmed, and therefore to be treated as a setting.
enum class Standing { read, computed, practice, memory };

struct Citation {
    std::string_view body;      // "IEEE"
    std::string_view document;  // "802.3"
    std::string_view clause;    // "clause 55"
    Standing standing = Standing::read;

    /// "IEEE 802.3 clause 55", with "common practice" or "from memory" said where it is so.
    std::string text() const;
};

}  // namespace streamwright::standards
