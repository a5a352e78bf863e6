// A finding printed for people.
#pragma once

#include "core/analysis/report.h"

#include <iosfwd>

namespace streamwright::app {

void print_finding(std::ostream& out, const analysis::Reported& reported, const base::Phrasebook& book);

}  // namespace streamwright::app
