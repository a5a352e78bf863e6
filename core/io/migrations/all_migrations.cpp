#include "core/io/migrations/all_migrations.h"

#include "core/io/detail/parsed_file.h"

#include <algorithm>

namespace streamwright::io {

std::span<const Migration> all_migrations() { return {}; }

base::Result<void> migrate(ParsedFile& file, int to, std::span<const Migration> steps) {
    while (file.version < to) {
        const auto step =
            std::find_if(steps.begin(), steps.end(), [&](const auto& each) { return each.from == file.version; });
        if (step == steps.end())
            return base::Error{"No way leads from version %1 of the form to version %2; update the program.",
                               {std::to_string(file.version), std::to_string(to)}};
        if (auto done = step->run(file); !done) return done;
        ++file.version;
        file.top["version"] = file.version;
    }
    return {};
}

}  // namespace streamwright::io
