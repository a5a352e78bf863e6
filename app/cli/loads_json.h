// The loads of all arcs as JSON, in the form that the command line promises, and as a table for people.
#pragma once

#include "core/analysis/analyser.h"
#include "core/model/design.h"

#include <cstddef>
#include <string>

namespace streamwright::app {

struct LoadsView {
    const model::Design& design;
    const analysis::Analysis& analysis;
    std::size_t preset = 0;  // index into LinkLoads::presets; a design without presets shows what flows unasked
    bool worst = false;      // add terms and witness
};

std::string loads_json(const LoadsView& view);
std::string loads_text(const LoadsView& view);

}  // namespace streamwright::app
