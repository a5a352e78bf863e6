// Who shows what at Ferrow Quay, preset by preset.
#include "tests/support/ferrow_quay_parts.h"

namespace streamwright::test::ferrow_quay_parts {

namespace {

using Pairs = std::vector<std::pair<std::string, std::string>>;

void show_all(Quay& quay, model::PresetId preset, const Pairs& pairs) {
    for (const auto& [decoder, stream] : pairs) quay.show(preset, decoder, stream);
}

/// The side displays and monitors of a seminar room.
void seminar(Quay& quay, model::PresetId preset, int number, const std::string& main, const std::string& side) {
    const auto stem = "DEC-2" + std::to_string(number);
    show_all(quay, preset, {{stem + "1", main}, {stem + "2", side}, {stem + "3", main}});
}

std::string seminar_stream(int number, int end) { return "S-2" + std::to_string(number) + std::to_string(end); }

void signage(Quay& quay, model::PresetId preset, int loops) {
    for (int n = 11; n <= 24; ++n)
        quay.show(preset, "DEC-4" + std::to_string(n), "S-40" + std::to_string((n - 11) % loops + 1));
}

void lecture(Quay& quay) {
    show_all(
        quay, quay.lecture,
        {{"DEC-101", "S-101"}, {"DEC-102", "S-105"}, {"DEC-103", "S-101"}, {"DEC-104", "S-107"}, {"DEC-105", "S-107"},
         {"DEC-106", "S-107"}, {"DEC-107", "S-107"}, {"DEC-108", "S-102"}, {"DEC-109", "S-101"}, {"DEC-110", "S-107"},
         {"DEC-111", "S-107"}, {"DEC-112", "S-101"}, {"EP-311", "S-301"},  {"EP-312", "S-303"},  {"EP-313", "S-301"},
         {"EP-314", "S-302"},  {"DEC-511", "S-106"}, {"DEC-512", "S-107"}, {"DEC-513", "S-502"}, {"DEC-514", "S-101"},
         {"DEC-521", "S-601"}, {"DEC-611", "S-110"}, {"DEC-612", "S-109"}, {"DEC-613", "S-552"}, {"DEC-614", "S-601"},
         {"GW-501", "S-107"}});
    for (int room = 1; room <= 6; ++room)
        seminar(quay, quay.lecture, room, seminar_stream(room, 1), seminar_stream(room, room == 6 ? 1 : 2));
    signage(quay, quay.lecture, 4);
}

void conference(Quay& quay) {
    show_all(
        quay, quay.conference,
        {{"DEC-101", "S-102"}, {"DEC-102", "S-107"}, {"DEC-103", "S-103"}, {"DEC-104", "S-501"}, {"DEC-105", "S-501"},
         {"DEC-106", "S-502"}, {"DEC-107", "S-502"}, {"DEC-108", "S-102"}, {"DEC-109", "S-103"}, {"DEC-110", "S-106"},
         {"DEC-111", "S-107"}, {"DEC-112", "S-501"}, {"EP-311", "S-303"},  {"EP-312", "S-302"},  {"DEC-511", "S-106"},
         {"DEC-512", "S-107"}, {"DEC-513", "S-102"}, {"DEC-514", "S-105"}, {"DEC-521", "S-211"}, {"DEC-611", "S-110"},
         {"DEC-612", "S-109"}, {"DEC-613", "S-211"}, {"DEC-614", "S-110"}});
    for (int room = 1; room <= 6; ++room)
        seminar(quay, quay.conference, room, seminar_stream(1, 1), seminar_stream(1, 2));
    signage(quay, quay.conference, 2);
}

void evening(Quay& quay) {
    show_all(quay, quay.evening,
             {{"DEC-101", "S-502"},
              {"DEC-102", "S-502"},
              {"DEC-103", "S-502"},
              {"DEC-104", "S-108"},
              {"DEC-105", "S-108"},
              {"DEC-106", "S-108"},
              {"DEC-107", "S-108"},
              {"DEC-110", "S-106"},
              {"DEC-511", "S-106"},
              {"DEC-512", "S-107"},
              {"DEC-513", "S-502"},
              {"DEC-514", "S-108"},
              {"DEC-611", "S-109"},
              {"DEC-612", "S-109"},
              {"DEC-613", "S-109"}});
    signage(quay, quay.evening, 1);
}

}  // namespace

void subscriptions(Quay& quay) {
    lecture(quay);
    conference(quay);
    evening(quay);
}

}  // namespace streamwright::test::ferrow_quay_parts
