#include "tests/support/demo_designs.h"
#include "tests/support/ferrow_quay_parts.h"

namespace streamwright::test {

namespace demo_ferrow_quay_detail {

void settle(DemoMaker& make, model::VlanId usual) {
    model::Settings row;
    row.title = "Ferrow Quay Conference Centre";
    row.owner = "Ferrow Quay Conference Centre";
    row.department = "AV design";
    row.reference = "Site AV";
    row.number = "FQ-AV";
    row.status = "in preparation";
    row.created_by = "design";
    row.usual_vlan = usual;
    row.security = {true, true, "2028-06-30", true};
    row.spares = {.endpoints_percent = 5, .of_each_module = 2, .of_each_lead = 5};
    row.cable_temperature = base::Temperature::from_count(25000);
    make.run(model::SetSettings{row});
}

/// A finding of the check accepted with its reason.
void accept_spare(DemoMaker& make) {
    auto row = model::Waiver::blank(make.fresh<model::WaiverId>());
    row.rule = "decoder-without-display";
    row.subjects = {"device:" + make.tagged("DEC-522").text()};
    row.reason = "Kept as a spare at the operator's desk.";
    row.by = "site";
    make.run(model::Waive{row});
}

}  // namespace demo_ferrow_quay_detail

Demo ferrow_quay() {
    using namespace ferrow_quay_parts;
    DemoMaker make(0xFE44);
    Quay quay(make);
    demo_ferrow_quay_detail::settle(make, quay.av);
    make.revision(1, "A", "2026-09-18", "First issue for comment");
    make.revision(2, "B", "2026-10-30", "Marquee added, fibre by PF-N");
    make.revision(3, "C", "2026-11-24", "Ring between comms rooms closed");
    switches_and_trunks(quay);
    quay_hall(quay);
    seminar_rooms(quay);
    board_room(quay);
    foyer(quay);
    control_room(quay);
    marquee(quay);
    subscriptions(quay);
    sheets(quay);
    demo_ferrow_quay_detail::accept_spare(make);
    return std::move(make).done();
}

}  // namespace streamwright::test
