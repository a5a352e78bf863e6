// The faulty design's faults of the venue, on plates and on a sheet of their own. It also has more endpoints of one
// family than its type allows without a management server; nothing needs adding for that.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

void venue_faults(Faulty& f) {
    auto& make = f.make;
    const auto rack = make.rack("Faulty rack", "rack-24u", f.room);
    make.mount(f.device("amplifier", "AMP-971"), rack, 10);
    make.mount(f.device("amplifier", "AMP-972"), rack, 10);
    const auto processor = f.device("audio-processor", "DSP-A-971");
    make.cable("audio-line", f.device("media-player", "MP-971"), "audio-out", processor, "in-1", 3);
    make.cable("audio-line", processor, "out-1", make.tagged("AMP-971"), "audio-in-1", 3);
    make.cable("audio-line", processor, "out-2", make.tagged("AMP-972"), "audio-in-1", 3);

    const auto chassis = f.device("loom-chassis", "CH-971");
    make.mount(chassis, rack, 12);
    const auto card = f.device("loom-decoder-card", "DEC-971");
    make.slot(card, chassis, 3);
    make.slot(make.tagged("ENC-915"), chassis, 1);
    make.cable("hdmi-2m", card, "hdmi-out", f.device("display-24", "MON-971"), "hdmi-in");
    // The hand is refused a slot that does not exist; a type whose copy changes later is not.
    auto smaller = *make.device_type("loom-chassis");
    smaller.chassis->slots = 2;
    smaller.name = "Card chassis, 2 slots, 3 RU";
    make.run(model::EmbedTypes{{std::make_shared<const catalogue::DeviceType>(smaller)}, {}});
}

void venue_fault_sheet(Faulty& f) {
    SheetPlan venue(f.make, f.make.sheet(4, "Faulty design", "racks and chassis", model::PaperSize::a3));
    venue.rows({60, 160}, 60, {{"AMP-971", "AMP-972"}, {"CH-971", "DEC-971"}, {"", "MON-971"}}, 10);
    venue.rows({270}, 60, {{"MP-971"}, {"DSP-A-971"}}, 10);
    venue.finish();
}

}  // namespace streamwright::test::demo_faulty_detail
