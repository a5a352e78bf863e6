// The whole document set, as contents and as the core's formats, and the most memory the program has held.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/format.h"
#include "tests/bench/benches.h"
#include "tests/bench/timing.h"
#include "tests/support/campus.h"

#include <iomanip>
#include <stdexcept>
#include <sys/resource.h>

namespace streamwright::bench {

void bench_deliver(std::ostream& out, int endpoints) {
    const auto design = test::campus(endpoints, 1);
    std::size_t files = 0, bytes = 0;
    const auto time = timed([&] {
        const auto analysis = analysis::analyse(design);
        const deliver::Source source{design, analysis, analysis::report(design, analysis.findings),
                                     analysis::english(design)};
        std::vector<deliver::Content> contents;
        for (const auto& kind : deliver::all_documents()) contents.push_back(kind.make(source));
        for (const auto& format : deliver::core_formats()) {
            const auto made = format.write(contents, deliver::stamp_of(design));
            if (!made.ok()) throw std::runtime_error(made.error().english());
            for (const auto& file : *made) ++files, bytes += file.bytes.size();
        }
    });
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    out << std::fixed << std::setprecision(2) << "Whole document set without pdf, " << endpoints
        << " endpoints: " << time.count() / 1000 << " s, " << files << " files, " << bytes / 1000000
        << " MB; most memory held so far " << usage.ru_maxrss / 1024 << " MiB (goal with pdf: at most 5 s, 300 MB)\n\n";
}

}  // namespace streamwright::bench
