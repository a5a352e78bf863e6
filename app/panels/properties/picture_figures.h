// What becomes of pictures, as figures of a port's properties: what an input announces and gets, where an output's
// picture goes and what is left of it there.
#pragma once

#include "app/panels/properties/property_form.h"

namespace streamwright::app {

void show_input_picture(Figures& figures, Document& document, const model::PortRef& port);
void show_output_picture(Figures& figures, Document& document, const model::PortRef& port);

}  // namespace streamwright::app
