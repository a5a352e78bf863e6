// The canvas: a frame while panning and while dragging a device, a moved device with 24 cables let go, and how long a
// design takes to open until it can be worked on. Offscreen raster, so that no display is needed.
#include "app/document/library.h"
#include "app/style/bundled_font.h"
#include "app/style/widget_style.h"
#include "app/views/main_window.h"
#include "app/views/schematic/schematic_view.h"
#include "core/io/design_file.h"
#include "core/layout/plate.h"
#include "tests/bench/timing.h"
#include "tests/support/campus.h"
#include "tests/support/design_builder.h"
#include "tests/support/temp_folder.h"

#include <QApplication>
#include <QMouseEvent>

#include <iomanip>
#include <iostream>
#include <stdexcept>
#include <string_view>

namespace streamwright::bench::canvas_bench {

using namespace base::literals;
using Times = std::vector<Milliseconds>;

constexpr int columns = 80, pitch_x = 70, pitch_y = 40;  // of plates, in millimetres

base::Length mm(int value) { return base::Length::from_count(std::int64_t{value} * 1000); }

model::SheetPoint lead_of(const model::Design& design, model::SheetId sheet, const model::PortRef& port) {
    const auto& device = *design.devices.find(port.device);
    const auto* type = design.type_of(device);
    const auto& place = *design.places.find({sheet, port.device});
    for (const auto& spot : layout::plate_of(type, device.roles, place).spots)
        if (type->ports[static_cast<std::size_t>(spot.port)].key == port.port) return spot.lead;
    throw std::runtime_error("no such port");
}

void draw(test::DesignBuilder& b, model::SheetId sheet, model::CableId cable) {
    const auto& row = *b.design.cables.find(cable);
    const auto from = lead_of(b.design, sheet, row.a->port), to = lead_of(b.design, sheet, row.b->port);
    const auto middle = (from.x + to.x) / 2;
    auto line = model::CableLine::blank({sheet, cable});
    line.bends = {{middle, from.y}, {middle, to.y}};
    b.put(std::move(line));
}

/// Pairs of a source and an encoder in rows on one sheet, each with its cable; at the start a switch with 24 encoders.
model::Design wall(int devices) {
    test::DesignBuilder b;
    const auto sheet = b.sheet();
    const auto bridge = b.device(test::types::switch_24(), "SW-1");
    b.place(sheet, bridge, mm(400), mm(60));
    for (int i = 1; i <= 24; ++i) {
        const auto encoder = b.device(test::types::encoder(), "NEAR-" + std::to_string(i));
        b.place(sheet, encoder, mm(i % 2 ? 200 : 600), mm(60 + 35 * (i / 2)));
        const auto cable = b.cable(test::types::cat6a(), test::port_of(encoder, "net"),
                                   test::port_of(bridge, std::to_string(i)), 20_m, "N" + std::to_string(i));
        draw(b, sheet, cable);
    }
    for (int i = 0; i < (devices - 25) / 2; ++i) {
        const auto number = std::to_string(i);
        const int x = 60 + 2 * pitch_x * (i % (columns / 2)), y = 700 + pitch_y * (i / (columns / 2));
        const auto source = b.device(test::types::source(), "SRC-" + number);
        const auto encoder = b.device(test::types::encoder(), "ENC-" + number);
        b.place(sheet, source, mm(x), mm(y));
        b.place(sheet, encoder, mm(x + pitch_x), mm(y));
        draw(b, sheet,
             b.cable(test::types::hdmi(), test::port_of(source, "out"), test::port_of(encoder, "in"), 2_m,
                     "V" + number));
    }
    return b.design;
}

struct Bench {
    test::TempFolder folder;
    app::MainWindow window;

    explicit Bench(const std::shared_ptr<const app::Library>& library) : window(library, {}) {
        window.resize(1920, 1080);
        window.show();
        QApplication::processEvents();
    }
    void open(const model::Design& design) {
        const auto path = folder / "wall.streamwright";
        if (const auto saved = io::save_design(path, design); !saved.ok())
            throw std::runtime_error(saved.error().english());
        if (const auto opened = window.document().open(path); !opened.ok())
            throw std::runtime_error(opened.error().english());
        QApplication::processEvents();
        // The canvas as large as the screen of the goal, the window around it larger.
        window.resize(window.size() + QSize(1920, 1080) - canvas().size());
        QApplication::processEvents();
        if (canvas().size() != QSize(1920, 1080)) throw std::runtime_error("the canvas is of another size");
    }
    app::Viewport& canvas() { return window.schematic().viewport(); }
};

void say(std::ostream& out, std::string_view what, const Times& times, std::string_view goal) {
    out << std::fixed << std::setprecision(1) << "  " << std::left << std::setw(46) << what << std::right << " median "
        << std::setw(6) << quantile(times, 0.5).count() << "  p95 " << std::setw(6) << quantile(times, 0.95).count()
        << "  p99 " << std::setw(6) << quantile(times, 0.99).count() << " ms   " << goal << '\n';
}

Times pan(app::Viewport& canvas, double zoom, int frames) {
    Times times;
    for (int i = 0; i < frames; ++i) {
        times.push_back(timed([&] {
            canvas.set_view({QPointF(100.0 + 7.0 * i / zoom, 650.0 + 4.0 * i / zoom), zoom});
            canvas.repaint();
        }));
        QApplication::processEvents();
    }
    return times;
}

void mouse(app::Viewport& canvas, QEvent::Type type, QPointF at, Qt::MouseButtons held) {
    QMouseEvent event(type, at, canvas.mapToGlobal(at), type == QEvent::MouseMove ? Qt::NoButton : Qt::LeftButton, held,
                      Qt::NoModifier);
    QApplication::sendEvent(&canvas, &event);
}

/// Drags the plate there and back some times; the times of frames, and of letting go until all is drawn again.
std::pair<Times, Times> drag(app::Viewport& canvas, QPointF from_mm, QPointF by_mm, int times_over) {
    std::pair<Times, Times> times;
    for (int round = 0; round < times_over; ++round) {
        const QPointF from = canvas.view().to_view(round % 2 ? from_mm + by_mm : from_mm);
        const QPointF way = by_mm * canvas.view().scale() * (round % 2 ? -1 : 1);
        mouse(canvas, QEvent::MouseButtonPress, from, Qt::LeftButton);
        for (int i = 1; i <= 20; ++i) {
            times.first.push_back(timed([&] {
                mouse(canvas, QEvent::MouseMove, from + way * i / 20, Qt::LeftButton);
                canvas.repaint();
            }));
        }
        times.second.push_back(timed([&] {
            mouse(canvas, QEvent::MouseButtonRelease, from + way, Qt::NoButton);
            canvas.repaint();
        }));
        QApplication::processEvents();
    }
    return times;
}

void bench_wall(const std::shared_ptr<const app::Library>& library, int devices, std::string_view goal, int rounds) {
    Bench bench(library);
    bench.open(wall(devices));
    auto& canvas = bench.canvas();
    std::cout << "Canvas, " << devices << " devices on one sheet, 1920 x 1080:\n";
    say(std::cout, "panning at 100 %", pan(canvas, 1, rounds * 10), goal);
    say(std::cout, "panning at 25 %", pan(canvas, 0.25, rounds * 10), goal);
    say(std::cout, "panning, far out (5 %)", pan(canvas, 0.05, rounds * 5), goal);
    canvas.set_view({QPointF(150, 40), 0.8});
    canvas.repaint();
    const auto before = bench.window.document().history().index();
    const auto [frames, releases] = drag(canvas, QPointF(430, 63), QPointF(20, 15), rounds);
    if (bench.window.document().history().index() == before) throw std::runtime_error("nothing was dragged");
    say(std::cout, "dragging the switch with 24 cables", frames, goal);
    say(std::cout, "letting it go, routes drawn again", releases, devices <= 1000 ? "goal: at most 50 ms" : "");
    std::cout << '\n';
}

void bench_start(int endpoints) {
    test::TempFolder folder;
    const auto path = folder / "campus.streamwright";
    if (const auto saved = io::save_design(path, test::campus(endpoints, 1)); !saved.ok())
        throw std::runtime_error(saved.error().english());
    const auto time = timed([&] {
        auto read = app::bundled_library();
        if (!read) throw std::runtime_error(read.error().english());
        app::MainWindow window(std::make_shared<const app::Library>(std::move(*read)), {});
        window.resize(1920, 1080);
        if (const auto opened = window.document().open(path); !opened.ok())
            throw std::runtime_error(opened.error().english());
        window.show();
        QApplication::processEvents();
        window.schematic().viewport().repaint();
    });
    std::cout << "Window, library, design of " << endpoints << " endpoints read, checked and painted: " << std::fixed
              << std::setprecision(0) << time.count() << " ms (goal at 1000, with the program's start: 1 s)\n\n";
}

}  // namespace streamwright::bench::canvas_bench

int main(int argc, char** argv) try {
    using namespace streamwright;
    const bool quick = argc > 1 && std::string_view(argv[1]) == "--quick";
    qputenv("QT_QPA_PLATFORM", "offscreen");
    app::prefer_bundled_font();
    QApplication application(argc, argv);
    QApplication::setOrganizationName("streamwright-bench");
    app::dress(application, app::bundled_theme(app::ThemeChoice::light));
    auto read = app::bundled_library();
    if (!read) throw std::runtime_error(read.error().english());
    const auto library = std::make_shared<const app::Library>(std::move(*read));
    const int rounds = quick ? 3 : 20;
    bench::canvas_bench::bench_start(1000);
    bench::canvas_bench::bench_wall(library, 1000, "", rounds);
    bench::canvas_bench::bench_wall(library, 5000, "goal: p95 at most 8 ms", rounds);
    bench::canvas_bench::bench_wall(library, 20000, "goal: p95 at most 16.7 ms", rounds);
    if (!quick) bench::canvas_bench::bench_wall(library, 50000, "goal: p95 at most 33 ms", rounds);
    return 0;
} catch (const std::exception& trouble) {
    std::cerr << trouble.what() << '\n';
    return 2;
}
