// The table of formats, by name, and the stamp every file carries.
#include "core/deliver/drawing/paper.h"
#include "core/deliver/formats/formats.h"

namespace streamwright::deliver {

std::vector<Format> core_formats() {
    return {{"csv", false, write_csv_files}, {"svg", false, write_svg_files}, {"xlsx", true, write_xlsx_file}};
}

Stamp stamp_of(const model::Design& design) {
    const auto fields = title_fields(design);
    return {fields.title, fields.owner, fields.revision, fields.date, fields.status};
}

}  // namespace streamwright::deliver
