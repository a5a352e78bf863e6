#include "core/standards/citation.h"

namespace streamwright::standards {

std::string Citation::text() const {
    std::string words;
    for (const auto part : {body, document, clause})
        if (!part.empty()) words += (words.empty() ? "" : " ") + std::string(part);
    switch (standing) {
        case Standing::read:
        case Standing::computed:
            return words;
        case Standing::practice:
            return words.empty() ? "common practice" : words + ", common practice";
        case Standing::memory:
            return words + ", from memory";
    }
    return words;
}

}  // namespace streamwright::standards
