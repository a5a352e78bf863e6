// What must hold between rows: every id named exists, keys are in range. Loading refuses a file that breaks it;
// debug builds check it after each edit.
#pragma once

#include "core/base/error.h"
#include "core/model/design.h"

#include <string>
#include <string_view>
#include <vector>

namespace streamwright::model {

/// One sentence per broken bond, in the order of the tables; empty if the design is sound. A cable end naming a port
/// that its device's type does not have is sound here (types change) and found by a rule.
std::vector<base::Error> broken_bonds(const Design& design);

/// The same with where each stands: the table by its name in the file, the row by its key's text.
struct BrokenBond {
    std::string_view table;
    std::string row;
    base::Error error;
};
std::vector<BrokenBond> broken_bonds_with_places(const Design& design);

}  // namespace streamwright::model
