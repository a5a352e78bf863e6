// loads: what every direction of every network link carries in a preset and at worst.
#include "app/cli/commands.h"
#include "app/cli/loads_json.h"
#include "core/analysis/analyser.h"
#include "core/analysis/every_failure.h"
#include "core/analysis/report.h"
#include "core/io/design_file.h"

#include <ostream>

namespace streamwright::app {

namespace loads_detail {

/// Index into LinkLoads::presets; the first without a name; none if there is no such preset.
std::optional<std::size_t> chosen_preset(const model::Design& design, const analysis::LinkLoads& loads,
                                         const std::optional<std::string>& name) {
    if (!name) return 0;
    for (std::size_t i = 0; i < loads.presets.size(); ++i) {
        const auto* preset = design.presets.find(loads.presets[i].preset);
        if (preset && preset->name == *name) return i;
    }
    return std::nullopt;
}

std::string preset_names(const model::Design& design) {
    std::string names;
    for (const auto& preset : design.presets) names += (names.empty() ? "" : ", ") + preset.name;
    return names.empty() ? "none" : names;
}

/// The design as opened, or what the failures leave of it.
base::Result<model::Design> remaining(const model::Design& design, const std::vector<std::string>& without) {
    if (without.empty()) return design;
    const auto facts = analysis::Analyser(design).frozen();
    const auto lost = analysis::named_failures(*facts, without);
    if (!lost) return lost.error();
    return analysis::design_after(*facts, *lost);
}

}  // namespace loads_detail

int loads_command(const LoadsOptions& options, Streams streams) {
    using namespace loads_detail;
    const auto opened = io::open_design(options.file);
    if (!opened) {
        streams.err << opened.error().english() << '\n';
        return exit_cannot;
    }
    const auto rest = remaining(opened->design, options.without);
    if (!rest) {
        streams.err << base::printable(rest.error().english()) << '\n';
        return exit_cannot;
    }
    const auto& design = *rest;
    const auto analysis = analysis::analyse(design);
    const auto preset = chosen_preset(design, analysis.facts.get<analysis::LinkLoads>(), options.preset);
    if (!preset) {
        streams.err << base::printable("The design has no preset named '" + *options.preset +
                                       "'; it has: " + preset_names(design) + ".")
                    << '\n';
        return exit_cannot;
    }
    const LoadsView view{design, analysis, *preset, options.worst};
    streams.out << (options.json ? loads_json(view) : loads_text(view)) << '\n';
    return exit_done;
}

}  // namespace streamwright::app
