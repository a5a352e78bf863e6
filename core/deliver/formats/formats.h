// The writers of files, one format each.
#pragma once

#include "core/deliver/format.h"

namespace streamwright::deliver {

base::Result<std::vector<OutputFile>> write_csv_files(std::span<const Content> contents, const Stamp& stamp);
base::Result<std::vector<OutputFile>> write_svg_files(std::span<const Content> contents, const Stamp& stamp);
base::Result<std::vector<OutputFile>> write_xlsx_file(std::span<const Content> contents, const Stamp& stamp);

/// One page as a complete SVG document.
std::string svg_page(const PagePart& page);

}  // namespace streamwright::deliver
