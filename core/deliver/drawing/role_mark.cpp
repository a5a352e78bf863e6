// The marks, in hundredths of a canvas unit, after the drawings of the visual language.
#include "core/deliver/drawing/role_mark.h"

#include "core/deliver/drawing/shapes.h"

#include <algorithm>

namespace streamwright::deliver {

namespace mark_detail {

using catalogue::DeviceKind;

/// Draws in units of the 16-unit grid, given in hundredths.
class Pen {
public:
    explicit Pen(SheetPoint origin) : origin_(origin) {}

    SheetPoint at(int x, int y) const {
        return moved(origin_, base::Length::from_count(x * 5 / 2), base::Length::from_count(y * 5 / 2));
    }
    void line(std::initializer_list<std::pair<int, int>> points) { paths.push_back(stroke(all(points), Role::mark)); }
    void loop(std::initializer_list<std::pair<int, int>> points, bool filled) {
        auto path = stroke(all(points), filled ? Role::solid : Role::mark);
        path.closed = true;
        path.filled = filled;
        paths.push_back(std::move(path));
    }
    void square(int x, int y, int width, int height, bool filled = true) {
        loop({{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}}, filled);
    }
    void dot(int x, int y, int radius, bool filled) {
        paths.push_back(
            circle(at(x, y), base::Length::from_count(radius * 5 / 2), filled ? Role::solid : Role::mark, filled));
    }
    std::vector<Path> paths;

private:
    std::vector<SheetPoint> all(std::initializer_list<std::pair<int, int>> points) const {
        std::vector<SheetPoint> found;
        for (const auto& [x, y] : points) found.push_back(at(x, y));
        return found;
    }
    SheetPoint origin_;
};

void packets(Pen& pen, int x) {
    for (const int y : {100, 625, 1150}) pen.square(x, y, 350, 350);
}

void encoder(Pen& pen) {  // a strand becomes packets
    pen.loop({{0, 600}, {500, 600}, {500, 350}, {1000, 800}, {500, 1250}, {500, 1000}, {0, 1000}}, true);
    packets(pen, 1250);
}

void decoder(Pen& pen) {  // packets become a strand; the network is on the left
    packets(pen, 0);
    pen.loop({{1600, 600}, {1100, 600}, {1100, 350}, {600, 800}, {1100, 1250}, {1100, 1000}, {1600, 1000}}, true);
}

void both_roles(Pen& pen) {
    packets(pen, 625);
    pen.line({{0, 800}, {500, 800}});
    pen.line({{1100, 800}, {1600, 800}});
}

void network_switch(Pen& pen) {  // packets joined crosswise
    for (const int x : {0, 1250})
        for (const int y : {100, 1150}) pen.square(x, y, 350, 350);
    pen.line({{350, 370}, {1250, 1220}});
    pen.line({{350, 1220}, {1250, 370}});
}

void source(Pen& pen) {
    pen.dot(500, 800, 425, false);
    pen.line({{500, 800}, {1400, 800}});
    pen.line({{1150, 450}, {1500, 800}, {1150, 1150}});
}

void display(Pen& pen) {
    pen.square(1300, 100, 300, 1400);
    pen.line({{0, 800}, {1100, 800}});
    pen.line({{700, 450}, {1050, 800}, {700, 1150}});
}

void projector(Pen& pen) {
    pen.line({{1300, 200}, {100, 800}, {1300, 1400}});
    pen.line({{1450, 100}, {1450, 1500}});
    pen.dot(200, 800, 200, true);
}

void speaker(Pen& pen) {
    pen.loop({{100, 600}, {500, 600}, {1000, 200}, {1000, 1400}, {500, 1000}, {100, 1000}}, false);
    pen.line({{1250, 350}, {1430, 570}, {1500, 800}, {1430, 1030}, {1250, 1250}});
}

void rack(Pen& pen) {
    for (const int y : {100, 625, 1150}) pen.square(0, y, 1600, 350, false);
}

void extender(Pen& pen, bool sends) {
    pen.square(sends ? 0 : 1100, 550, 500, 500, false);
    pen.line({{sends ? 500 : 1100, 800}, {sends ? 1500 : 100, 800}});
    pen.line({{sends ? 1150 : 450, 450}, {sends ? 1500 : 100, 800}, {sends ? 1150 : 450, 1150}});
}

void panel(Pen& pen) {
    pen.square(0, 350, 1600, 900, false);
    for (const int x : {300, 700, 1100}) pen.square(x, 650, 250, 300);
}

void controller(Pen& pen) {
    pen.square(100, 100, 1400, 1400, false);
    pen.line({{400, 550}, {1200, 550}});
    pen.line({{400, 1050}, {1200, 1050}});
    pen.square(850, 400, 250, 300);
    pen.square(500, 900, 250, 300);
}

void microphone(Pen& pen) {
    pen.dot(800, 450, 400, false);
    pen.line({{800, 850}, {800, 1500}});
    pen.line({{450, 1500}, {1150, 1500}});
}

void audio_processor(Pen& pen) {  // a block that sound goes through
    pen.square(400, 350, 800, 900, false);
    for (const int y : {600, 1000}) {
        pen.line({{0, y}, {400, y}});
        pen.line({{1200, y}, {1600, y}});
    }
}

void video_processor(Pen& pen) {  // one picture made of windows
    pen.square(100, 250, 1400, 1100, false);
    pen.line({{800, 250}, {800, 1350}});
    pen.line({{100, 800}, {1500, 800}});
}

void touch_panel(Pen& pen) {
    pen.square(100, 250, 1400, 1100, false);
    pen.dot(1050, 900, 225, true);
}

void power_supply(Pen& pen) {  // long and short plates of a battery
    pen.line({{0, 800}, {500, 800}});
    pen.line({{500, 200}, {500, 1400}});
    pen.line({{800, 500}, {800, 1100}});
    pen.line({{1100, 200}, {1100, 1400}});
    pen.line({{1100, 800}, {1600, 800}});
}

void other(Pen& pen) { pen.square(200, 200, 1200, 1200, false); }

void codec_mark(Pen& pen, const catalogue::DeviceType& type, const std::vector<catalogue::Role>& roles) {
    using catalogue::Role;
    const auto& shown = roles.empty() && type.codec ? type.codec->roles : roles;
    const bool encodes = std::ranges::find(shown, Role::encoder) != shown.end();
    const bool decodes = std::ranges::find(shown, Role::decoder) != shown.end();
    encodes == decodes ? both_roles(pen) : encodes ? encoder(pen) : decoder(pen);
}

void draw(Pen& pen, const catalogue::DeviceType& type, const std::vector<catalogue::Role>& roles) {
    if (type.codec && type.kind != DeviceKind::chassis) return codec_mark(pen, type, roles);
    switch (type.kind) {
        case DeviceKind::source:
        case DeviceKind::camera:
            return source(pen);
        case DeviceKind::network_switch:
            return network_switch(pen);
        case DeviceKind::display:
        case DeviceKind::wall_tile:
            return display(pen);
        case DeviceKind::projector:
            return projector(pen);
        case DeviceKind::speaker:
        case DeviceKind::amplifier:
            return speaker(pen);
        case DeviceKind::rack:
        case DeviceKind::chassis:
            return rack(pen);
        case DeviceKind::extender_sender:
        case DeviceKind::extender_receiver:
            return extender(pen, type.kind == DeviceKind::extender_sender);
        case DeviceKind::patch_panel:
            return panel(pen);
        case DeviceKind::control_processor:
        case DeviceKind::management_server:
        case DeviceKind::authentication_server:
            return controller(pen);
        case DeviceKind::microphone:
            return microphone(pen);
        case DeviceKind::audio_processor:
            return audio_processor(pen);
        case DeviceKind::video_processor:
            return video_processor(pen);
        case DeviceKind::touch_panel:
            return touch_panel(pen);
        case DeviceKind::ups:
            return power_supply(pen);
        default:
            return other(pen);
    }
}

}  // namespace mark_detail

std::vector<Path> role_mark(const catalogue::DeviceType* type, const std::vector<catalogue::Role>& roles,
                            SheetPoint at) {
    mark_detail::Pen pen(at);
    type ? mark_detail::draw(pen, *type, roles) : mark_detail::other(pen);
    return std::move(pen.paths);
}

}  // namespace streamwright::deliver
