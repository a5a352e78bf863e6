// The faulty design's faults of the venue, on plates and on a sheet of their own.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

void venue_faults(Faulty&) {}

void venue_fault_sheet(Faulty&) {}

}  // namespace streamwright::test::demo_faulty_detail
