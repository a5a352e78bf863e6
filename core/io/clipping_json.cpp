#include "core/io/clipping_json.h"

#include "core/io/design_json.h"

namespace streamwright::io {

std::string write_clipping(const model::Design& clipping) { return write_design(clipping); }

base::Result<model::Design> read_clipping(std::string_view text) {
    // The reader's own sentences tell how to mend a file; what is on a clipboard is copied anew.
    auto clipping = read_design(text, {});
    if (clipping && !clipping->devices.empty()) return clipping;
    return base::Error{"The clipboard holds no devices to paste; copy some on a sheet first.", {}};
}

}  // namespace streamwright::io
