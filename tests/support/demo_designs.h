// The demo designs, each a list of ordinary edits. The files in demo/ are these designs saved, and a test holds them
// equal.
#pragma once

#include "tests/support/demo_maker.h"

namespace streamwright::test {

/// One encoder, one decoder, one switch.
Demo huddle_room();
/// The conference centre: 34 encoders, 58 decoders, 9 switches, 4 racks.
Demo ferrow_quay();
/// Deliberately faulty: every rule finds something in it.
Demo faulty();

}  // namespace streamwright::test
