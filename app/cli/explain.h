// check --explain: a rule of the page; or, with a design, a rule's findings there, one finding, or a thing of the
// design, with the chains of numbers behind them.
#pragma once

#include "app/cli/commands.h"

namespace streamwright::app {

int explain(const CheckOptions& options, Streams streams);

}  // namespace streamwright::app
