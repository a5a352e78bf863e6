#include "core/standards/seamless_protection.h"

namespace streamwright::standards {

base::Duration path_differential(SkewClass of) {
    using namespace base::literals;
    switch (of) {
        case SkewClass::low:
            return 10_ms;
        case SkewClass::moderate:
            return 50_ms;
        case SkewClass::high:
            return 450_ms;
        case SkewClass::ultra_low:
            return 150'000_ns;
    }
    return {};
}

Citation path_differential_source(SkewClass of) {
    if (of == SkewClass::low) return {"SMPTE", "ST 2022-7", "Table 1"};
    if (of == SkewClass::ultra_low) return {"SMPTE", "ST 2022-7:2019", "class D", Standing::memory};
    return {"SMPTE", "ST 2022-7", "Table 1", Standing::memory};
}

}  // namespace streamwright::standards
