// A video wall in the properties of its tiles and of the design: its shape, its seams, a drawing of it, and who stands
// where.
#include "app/panels/properties/editors.h"
#include "app/panels/properties/wall_preview.h"
#include "app/tools/wall_making.h"
#include "app/words/words.h"
#include "core/analysis/wall_picture.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace wall_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

const model::Wall* row(PropertyForm& form, model::WallId id) { return form.design().walls.find(id); }

std::optional<QString> put(PropertyForm& form, const QString& words, model::Wall wall) {
    return form.change(model::SetWall{std::move(wall)}, words);
}

template <class Change>
std::optional<QString> change(PropertyForm& form, model::WallId id, const QString& words, Change&& change_row) {
    const auto* held = row(form, id);
    if (!held) return std::nullopt;
    auto wall = *held;
    change_row(wall);
    return put(form, words, std::move(wall));
}

void add_count(PropertyForm& form, model::WallId id, const QString& label, int model::Wall::*side) {
    form.field(
        label,
        [&form, id, side] {
            const auto* wall = row(form, id);
            return wall ? QString::number(wall->*side) : QString();
        },
        [&form, id, side](const QString& text) -> std::optional<QString> {
            const auto* wall = row(form, id);
            bool number = false;
            const int count = text.trimmed().toInt(&number);
            if (!wall) return std::nullopt;
            if (!number) return tr("'%1' is no number of tiles; write a whole one, such as 2.").arg(text);
            const bool across = side == &model::Wall::columns;
            return put(form, tr("Change the shape of the wall"),
                       model::resized(*wall, across ? count : wall->columns, across ? wall->rows : count));
        });
}

void add_gap(PropertyForm& form, model::WallId id, const QString& label, base::Length model::Wall::*gap) {
    form.field(
        label,
        [&form, id, gap] {
            const auto* wall = row(form, id);
            return wall ? shown(base::print(wall->*gap, phrasebook(form.design()).numbers)) : QString();
        },
        [&form, id, gap](const QString& text) -> std::optional<QString> {
            const auto length = base::parse_length(text.toStdString(), phrasebook(form.design()).numbers.system);
            if (!length) return sentence(length.error());
            return change(form, id, tr("Change the gap between tiles"),
                          [&](model::Wall& wall) { wall.*gap = *length; });
        });
}

void add_words(PropertyForm& form, model::WallId id) {
    const std::pair<QString, std::string model::Wall::*> texts[] = {{tr("Wall"), &model::Wall::name},
                                                                    {tr("Wall note"), &model::Wall::note}};
    for (const auto& [label, member] : texts)
        form.field(
            label,
            [&form, id, member = member] {
                const auto* wall = row(form, id);
                return wall ? shown(wall->*member) : QString();
            },
            [&form, id, member = member](const QString& text) {
                return change(form, id, tr("Change wall"),
                              [&](model::Wall& wall) { wall.*member = text.trimmed().toStdString(); });
            });
    form.choice(
        tr("Wall in room"), [&form] { return room_options(form.design()); },
        [&form, id] {
            const auto* wall = row(form, id);
            return wall && wall->room ? shown(wall->room->text()) : QString();
        },
        [&form, id](const QString& room) {
            change(form, id, tr("Change room of the wall"),
                   [&](model::Wall& wall) { wall.room = model::RoomId::parse(room.toStdString()); });
        });
}

void show_figures(Figures& figures, const Document& document, model::WallId id) {
    const auto& facts = document.analyser().facts();
    const auto numbers = phrasebook(document.design()).numbers;
    for (const auto& wall : analysis::find_wall_pictures(facts.get<graph::Wiring>(), facts.get<graph::SignalGraph>())) {
        if (wall.row->id != id) continue;
        if (wall.raster) {
            const auto canvas = standards::wall_canvas(*wall.raster);
            figures.figure(tr("Canvas"), QStringLiteral("%1 x %2").arg(canvas.width).arg(canvas.height));
            figures.figure(tr("Hidden in a seam"),
                           tr("%1 across, %2 down").arg(wall.raster->hidden_columns).arg(wall.raster->hidden_rows));
        } else {
            figures.figure(tr("Canvas"), tr("not known"));
        }
        figures.words(tr("In the drawing: the part of the picture that each tile shows in the chosen preset, else its "
                         "place on the canvas."),
                      "faint");
        if (wall.width && wall.height)
            figures.figure(tr("Lit image"), tr("%1 x %2").arg(shown(base::print(*wall.width, numbers)),
                                                              shown(base::print(*wall.height, numbers))));
    }
}

/// "column 2, row 1" by the number of the place.
std::vector<PropertyForm::Option> place_options(PropertyForm& form, model::WallId id) {
    std::vector<PropertyForm::Option> options;
    const auto* wall = row(form, id);
    if (!wall) return options;
    for (int place = 0; place < wall->columns * wall->rows; ++place)
        options.push_back({tr("column %1, row %2").arg(place % wall->columns + 1).arg(place / wall->columns + 1),
                           QString::number(place)});
    return options;
}

/// The display goes there; who stands there takes its old place.
void add_place(PropertyForm& form, model::WallId id, model::DeviceId display) {
    const auto place_of = [&form, id, display]() -> std::optional<std::size_t> {
        const auto* wall = row(form, id);
        if (!wall) return std::nullopt;
        const auto at = std::ranges::find(wall->tiles, std::optional(display));
        if (at == wall->tiles.end()) return std::nullopt;
        return static_cast<std::size_t>(at - wall->tiles.begin());
    };
    form.choice(
        tr("Place in wall"), [&form, id] { return place_options(form, id); },
        [place_of] {
            const auto place = place_of();
            return place ? QString::number(*place) : QString();
        },
        [&form, id, place_of](const QString& value) {
            const auto from = place_of();
            const auto to = value.toULongLong();
            change(form, id, tr("Move in the wall"), [&](model::Wall& wall) {
                if (from && to < wall.tiles.size()) std::swap(wall.tiles[*from], wall.tiles[to]);
            });
        });
}

/// Displays of no wall that may fill the first empty place.
void add_filling(PropertyForm& form, model::WallId id) {
    const auto* wall = row(form, id);
    if (!wall || std::ranges::find(wall->tiles, std::optional<model::DeviceId>()) == wall->tiles.end()) return;
    form.choice(
        tr("Fill a place"),
        [&form] {
            std::vector<model::DeviceId> all;
            for (const auto& device : form.design().devices) all.push_back(device.id);
            std::vector<PropertyForm::Option> options{{tr("with…"), {}}};
            for (const auto free : model::tiles_among(form.design(), all))
                options.push_back({shown(form.design().devices.find(free)->tag), shown(free.text())});
            std::sort(options.begin() + 1, options.end(),
                      [](const auto& a, const auto& b) { return a.label < b.label; });
            return options;
        },
        [] { return QString(); },
        [&form, id](const QString& value) {
            const auto display = model::DeviceId::parse(value.toStdString());
            if (!display) return;
            change(form, id, tr("Fill a place of the wall"), [&](model::Wall& each) {
                const auto place = std::ranges::find(each.tiles, std::optional<model::DeviceId>());
                if (place != each.tiles.end()) *place = display;
            });
        });
}

/// Queued: the click's own button is thrown away by the change it makes.
void add_button(Figures& figures, PropertyForm& form, const QString& words, std::function<void()> act) {
    figures.button(words,
                   [&form, act = std::move(act)] { QMetaObject::invokeMethod(&form, act, Qt::QueuedConnection); });
}

void add_whole_wall(PropertyForm& form, const EditorContext& context, model::WallId id) {
    add_words(form, id);
    add_count(form, id, tr("Columns"), &model::Wall::columns);
    add_count(form, id, tr("Rows"), &model::Wall::rows);
    add_gap(form, id, tr("Gap across"), &model::Wall::gap_across);
    add_gap(form, id, tr("Gap down"), &model::Wall::gap_down);
    add_filling(form, id);
    auto* preview = new WallPreview(form.document(), context.selection, id, context.theme, &form);
    form.add(preview, [preview] { preview->refresh(); });
    form.live([&form, id](Figures& figures) { show_figures(figures, form.document(), id); });
}

}  // namespace wall_editor_detail

void add_wall_of(PropertyForm& form, const EditorContext& context, model::DeviceId display) {
    using namespace wall_editor_detail;
    const auto* wall = model::wall_of(form.design(), display);
    if (!wall) return;
    const auto id = wall->id;
    form.section(tr("Video wall"));
    add_place(form, id, display);
    add_whole_wall(form, context, id);
    form.live([&form, id, display](Figures& figures) {
        add_button(figures, form, tr("Take out of the wall"),
                   [&form, display] { take_out_of_wall(form.document(), display); });
        add_button(figures, form, tr("Dissolve the wall"), [&form, id] {
            form.document().edit(model::Remove{{id}, false}, tr("Dissolve the wall"));
        });
    });
}

void add_walls(PropertyForm& form, const EditorContext& context) {
    for (const auto& wall : form.design().walls) {
        form.section(wall_editor_detail::tr("Video wall"));
        wall_editor_detail::add_whole_wall(form, context, wall.id);
    }
}

}  // namespace streamwright::app
