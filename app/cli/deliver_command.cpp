// deliver: the document set of a design, written to a folder.
#include "app/cli/commands.h"
#include "app/cli/offscreen.h"
#include "app/render/deliver_set.h"
#include "core/io/design_file.h"

#include <ostream>

namespace streamwright::app {

namespace deliver_detail {

void print_lists(std::ostream& out) {
    out << "documents:";
    for (const auto& kind : deliver::all_documents()) out << ' ' << kind.name;
    out << "\nformats:";
    for (const auto& format : all_formats()) out << ' ' << format.name;
    out << '\n';
}

}  // namespace deliver_detail

int deliver_command(const DeliverOptions& options, Streams streams) {
    const OffscreenApplication application;
    if (options.list) {
        deliver_detail::print_lists(streams.out);
        return exit_done;
    }
    if (options.file.empty() || options.to.empty()) {
        streams.err << "deliver needs a design file and a folder: streamwright deliver FILE --to FOLDER.\n";
        return exit_cannot;
    }
    const auto opened = io::open_design(options.file);
    if (!opened) {
        streams.err << opened.error().english() << '\n';
        return exit_cannot;
    }
    const auto written = deliver_set(opened->design, {options.to, options.only, options.formats}, {}, {});
    if (!written) {
        streams.err << written.error().english() << '\n';
        return exit_cannot;
    }
    for (const auto& path : *written) streams.out << base::printable(path.string()) << '\n';
    return exit_done;
}

}  // namespace streamwright::app
