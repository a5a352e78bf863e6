// The faulty design's faults of signals, on plates and on a sheet of their own.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

void signal_faults(Faulty&) {}

void signal_fault_sheet(Faulty&) {}

}  // namespace streamwright::test::demo_faulty_detail
