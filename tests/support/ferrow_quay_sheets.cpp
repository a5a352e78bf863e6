// The drawings of Ferrow Quay: one sheet a room group, one for comms South, one for the network as a whole.
#include "tests/support/demo_sheets.h"
#include "tests/support/ferrow_quay_parts.h"

namespace streamwright::test::ferrow_quay_parts {

namespace {

using model::PaperSize;
using Rows = std::vector<std::vector<std::string>>;

std::vector<std::string> all_of(const Rows& rows) {
    std::vector<std::string> tags;
    for (const auto& row : rows)
        for (const auto& tag : row)
            if (!tag.empty()) tags.push_back(tag);
    return tags;
}

/// Rows of plates with one frame round them all.
void block(SheetPlan& plan, model::RoomId room, const std::string& title, const std::vector<int>& x_mm, int y_mm,
           const Rows& rows, int gap_mm) {
    plan.rows(x_mm, y_mm, rows, gap_mm);
    plan.frame(room, title, all_of(rows));
}

void hall_sheet(Quay& quay) {
    SheetPlan plan(quay.make, quay.make.sheet(1, "Quay Hall", "signal flow, 1.01 and 0.10", PaperSize::a1));
    block(plan, quay.hall, "Quay Hall, stage and lecterns", {45, 130, 205}, 60,
          {{"PC-101", "ENC-101", "ENC-110"},
           {"PC-102", "ENC-102"},
           {"LP-103", "ENC-103"},
           {"LP-104", "ENC-104"},
           {"DC-105", "ENC-105"},
           {"CAM-106", "ENC-106"},
           {"CAM-107", "ENC-107", "ENC-109"},
           {"MP-108", "ENC-108"}},
          15);
    plan.put("SW-N1", 310, 385);
    plan.frame(quay.north, "Comms North", {"SW-N1"});
    block(plan, quay.hall, "Quay Hall, projection and wall", {425, 510}, 60,
          {{"DEC-101", "PRJ-101"},
           {"DEC-102", "PRJ-102"},
           {"DEC-103", "PRJ-103"},
           {"DEC-104", "WT-104"},
           {"DEC-105", "WT-105"},
           {"DEC-106", "WT-106"},
           {"DEC-107", "WT-107"}},
          15);
    block(plan, quay.hall, "Quay Hall, stage monitors and lobby", {645, 730}, 60,
          {{"DEC-108", "MON-108"},
           {"DEC-109", "MON-109"},
           {"DEC-110", "DSP-110"},
           {"DEC-111", "DSP-111"},
           {"DEC-112", "DSP-112"}},
          15);
    plan.put("SPK-108", 730, 90);
    plan.put("SPK-109", 730, 150);
    plan.put("AMP-101", 645, 380);
    plan.put("SPK-101", 730, 380);
    plan.put("SPK-102", 730, 415);
    plan.frame(quay.hall, "Quay Hall, under the stage", {"AMP-101", "SPK-102"});
    plan.finish();
}

void seminar_block(SheetPlan& plan, const Quay& quay, int number, int x_mm, int y_mm) {
    const auto n = "2" + std::to_string(number);
    const auto room = quay.seminars[static_cast<std::size_t>(number - 1)];
    Rows rows{{"PC-" + n + "1", "ENC-" + n + "1", "DEC-" + n + "1", "DSP-" + n + "1"},
              {"LP-" + n + "2", "ENC-" + n + "2", "DEC-" + n + "2", "DSP-" + n + "2"}};
    if (number == 6) rows[1][0].clear();
    const std::vector<int> columns{x_mm, x_mm + 75, x_mm + 240, x_mm + 310};
    const int third = plan.rows(columns, y_mm, rows, 5);
    plan.put("TP-" + n + "1", columns[1], third, true);
    rows.push_back({"", "", "DEC-" + n + "3", "MON-" + n + "3"});
    plan.rows(columns, third, {rows.back()});
    auto tags = all_of(rows);
    if (number >= 5) {  // the older extenders
        rows.push_back({"LP-" + n + "3", "TX-" + n + "1", "", "RX-" + n + "1"});
        plan.rows(columns, third + 25, {rows.back()});
        tags = all_of(rows);
    }
    plan.frame(room, "", tags);
}

void seminar_sheet(Quay& quay) {
    SheetPlan plan(quay.make, quay.make.sheet(2, "Seminar rooms", "signal flow, 2.01 to 2.06", PaperSize::a1));
    for (int number = 1; number <= 6; ++number)
        seminar_block(plan, quay, number, number <= 3 ? 40 : 440, 50 + 160 * ((number - 1) % 3));
    plan.finish();
}

void board_sheet(Quay& quay) {
    SheetPlan plan(quay.make, quay.make.sheet(3, "Board room", "signal flow and KVM, 3.01 and 0.10", PaperSize::a2));
    block(plan, quay.board, "Board room, table", {45, 130}, 60,
          {{"PC-301", "EP-301"}, {"PC-302", "EP-302"}, {"LP-303", "EP-303"}, {"CAM-301"}}, 15);
    plan.put("SW-N2", 265, 190);
    plan.frame(quay.north, "Comms North", {"SW-N2"});
    plan.rows({395, 490}, 60,
              {{"EP-311", "DSP-311"}, {"EP-312", "DSP-312"}, {"EP-313", "MON-313"}, {"EP-314", "MON-314"}}, 15);
    plan.put("KM-313", 490, 210, true);
    plan.put("KM-314", 490, 265, true);
    plan.frame(quay.board, "Board room, screens and desks", {"EP-311", "DSP-311", "MON-314", "KM-314"});
    plan.finish();
}

void foyer_sheet(Quay& quay) {
    SheetPlan plan(quay.make, quay.make.sheet(4, "Foyer signage", "signal flow, 0.01 and 0.10", PaperSize::a1));
    block(plan, quay.north, "Comms North, players and cards", {45, 130}, 60,
          {{"MP-401", "ENC-401"}, {"MP-402", "ENC-402"}, {"MP-403", "ENC-403"}, {"MP-404", "ENC-404"}, {"", "CH-401"}},
          15);
    plan.put("SW-N3", 250, 150);
    plan.put("PC-N3", 370, 75);
    plan.frame(quay.north, "Comms North, rack B", {"SW-N3", "PC-N3"});
    Rows first, second, corridor;
    for (int n = 11; n <= 24; ++n) {
        const auto number = "4" + std::to_string(n);
        (n <= 16 ? first : n <= 22 ? second : corridor).push_back({"DEC-" + number, "DSP-" + number});
    }
    block(plan, quay.foyer, "Foyer, quay side", {490, 565}, 60, first, 15);
    block(plan, quay.foyer, "Foyer, street side", {685, 760}, 60, second, 15);
    block(plan, quay.foyer, "Foyer, welcome banner", {45, 130, 235, 315}, 440,
          {{"SP-430", "LED-430", "LEDC-431", "LEDC-432"},
           {"", "", "LEDC-433", "LEDC-434"},
           {"", "", "LEDC-435", "LEDC-436"}},
          10);
    block(plan, quay.control, "Corridor at the control room", {490, 565}, 395, corridor, 15);
    plan.finish();
}

void control_sheet(Quay& quay) {
    SheetPlan plan(quay.make, quay.make.sheet(5, "Control room", "signal flow, 1.10", PaperSize::a2));
    plan.rows({45, 130}, 60, {{"PC-501", "ENC-501"}, {"MP-502", "ENC-502"}}, 10);
    plan.put("WEB-501", 130, 190);
    plan.put("SW-CR", 235, 185);
    plan.put("CP-501", 130, 235, true);
    plan.put("GW-501", 235, 300);
    plan.rows({365, 440, 520}, 60,
              {{"DEC-511", "MON-511"},
               {"DEC-512", "MON-512"},
               {"DEC-513", "WP-501", "MON-513"},
               {"DEC-514"},
               {"DEC-521", "MON-521"},
               {"DEC-522"}},
              5);
    plan.rows({70, 150}, 280, {{"MIC-541", "NA-541"}}, 10);
    plan.frame(quay.control, "", {"PC-501", "CP-501", "SW-CR", "DEC-522", "MON-513", "MIC-541", "NA-541"});
    plan.finish();
}

void marquee_sheet(Quay& quay) {
    SheetPlan plan(quay.make,
                   quay.make.sheet(6, "Overflow marquee", "signal flow, 340 m by fibre from 0.10", PaperSize::a2));
    plan.rows({45, 130}, 60, {{"CAM-601", "ENC-601"}, {"LP-602", "ENC-602"}}, 15);
    plan.put("SW-MQ", 255, 215);
    plan.rows({385, 470}, 60,
              {{"DEC-611", "PRJ-611"}, {"DEC-612", "DSP-612"}, {"DEC-613", "DSP-613"}, {"DEC-614", "MON-614"}}, 15);
    plan.put("SPK-612", 535, 110);
    plan.put("SPK-613", 535, 160);
    plan.rows({385, 470}, 255, {{"NA-615", "SPK-615"}}, 15);
    plan.frame(quay.marquee, "", {"CAM-601", "ENC-602", "SW-MQ", "DEC-614", "SPK-613", "MON-614", "NA-615", "SPK-615"});
    plan.finish();
}

void comms_south_sheet(Quay& quay) {
    SheetPlan plan(quay.make, quay.make.sheet(7, "Comms South", "switches and panels, 0.11", PaperSize::a1));
    plan.put("PF-S", 90, 90, true);
    plan.put("SW-S1", 225, 90);
    plan.put("SW-S2", 370, 110);
    plan.put("SW-S3", 370, 310);
    plan.put("PC-S2", 520, 60);
    plan.put("PC-S3", 520, 270);
    plan.frame(quay.south, "Comms South, rack A", {"PF-S", "SW-S1", "SW-S2", "SW-S3", "PC-S2", "PC-S3"});
    plan.finish();
}

void network_sheet(Quay& quay) {
    SheetPlan plan(quay.make, quay.make.sheet(8, "Network", "switches, trunks and panels", PaperSize::a1));
    plan.put("MS-001", 85, 60, true);
    plan.put("SW-N2", 85, 130);
    plan.put("SW-N3", 85, 260);
    plan.put("SW-N1", 85, 390);
    plan.put("SW-CORE", 225, 160);
    plan.put("PF-N", 350, 180);
    plan.frame(quay.north, "Comms North", {"MS-001", "SW-N1", "SW-CORE", "PF-N"});
    plan.put("SW-CR", 430, 370, true);
    plan.frame(quay.control, "", {"SW-CR"});
    plan.put("SW-MQ", 610, 370, true);
    plan.frame(quay.marquee, "", {"SW-MQ"});
    plan.put("PF-S", 470, 180, true);
    plan.put("SW-S1", 585, 150);
    plan.put("SW-S2", 715, 70, true);
    plan.put("SW-S3", 715, 230, true);
    plan.frame(quay.south, "Comms South", {"PF-S", "SW-S1", "SW-S2", "SW-S3"});
    plan.finish();
}

}  // namespace

void sheets(Quay& quay) {
    hall_sheet(quay);
    seminar_sheet(quay);
    board_sheet(quay);
    foyer_sheet(quay);
    control_sheet(quay);
    marquee_sheet(quay);
    comms_south_sheet(quay);
    network_sheet(quay);
}

}  // namespace streamwright::test::ferrow_quay_parts
