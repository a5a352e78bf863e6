// How the bill of materials names a part and says how it was counted, so that each line can be checked by hand.
#pragma once

#include "core/analysis/facts/parts.h"

#include <string>

namespace streamwright::deliver {

/// "Patch lead, category 6A, screened, RJ45", or the name of its type.
std::string part_name(const analysis::Part& part);
/// "drawn", "one for each cage that holds one", "16 encoders: 2 for each 10 begun", with what spares were counted from.
std::string part_counting(const model::Design& design, const analysis::Part& part);

}  // namespace streamwright::deliver
