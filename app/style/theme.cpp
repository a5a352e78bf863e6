#include "app/style/theme.h"

#include <QFile>
#include <QGuiApplication>
#include <QJsonDocument>
#include <QJsonObject>
#include <QPalette>

namespace streamwright::app {

namespace theme_detail {

const char* signal_name(catalogue::Signal signal) {
    static constexpr const char* names[] = {"V", "X", "N", "F", "A", "U", "C", "P"};
    return names[static_cast<int>(signal)];
}

const char* severity_name(analysis::Severity severity) { return base::enum_text(severity).data(); }

bool system_is_dark() {
    // The palette before ours is set is the platform's own: light text on dark ground means a dark desktop.
    static const bool dark = [] {
        const QPalette palette = QGuiApplication::palette();
        return palette.color(QPalette::WindowText).lightness() > palette.color(QPalette::Window).lightness();
    }();
    return dark;
}

}  // namespace theme_detail

base::Result<Theme> Theme::read(const QByteArray& tokens, const QString& name) {
    QJsonParseError wrong;
    const auto document = QJsonDocument::fromJson(tokens, &wrong);
    if (document.isNull())
        return base::Error{"The tokens of the visual language are not JSON: %1.", {wrong.errorString().toStdString()}};
    const auto groups = document.object().value("themes").toObject().value(name).toObject();
    if (groups.isEmpty())
        return base::Error{"The tokens of the visual language have no theme '%1'.", {name.toStdString()}};
    Theme theme;
    theme.name_ = name;
    for (auto group = groups.begin(); group != groups.end(); ++group) {
        const auto members = group.value().toObject();
        for (auto each = members.begin(); each != members.end(); ++each) {
            const QColor colour(each.value().toString());
            if (!colour.isValid())
                return base::Error{"The tokens of the visual language give no colour for %1 %2.",
                                   {group.key().toStdString(), each.key().toStdString()}};
            theme.colours_.insert(group.key() + '/' + each.key(), colour);
        }
    }
    return theme;
}

QColor Theme::colour(const char* group, const char* name) const {
    const auto found = colours_.find(QLatin1String(group) + '/' + QLatin1String(name));
    Q_ASSERT_X(found != colours_.end(), group, name);
    return found == colours_.end() ? QColor(Qt::black) : *found;
}

QColor Theme::signal(catalogue::Signal signal) const { return colour("kind", theme_detail::signal_name(signal)); }
QColor Theme::on_signal(catalogue::Signal signal) const { return colour("on_kind", theme_detail::signal_name(signal)); }
QColor Theme::severity(analysis::Severity severity) const {
    return colour("severity", theme_detail::severity_name(severity));
}
QColor Theme::on_severity(analysis::Severity severity) const {
    return colour("on_severity", theme_detail::severity_name(severity));
}
QColor Theme::severity_edge(analysis::Severity severity) const {
    return colour("severity_edge", theme_detail::severity_name(severity));
}

Theme bundled_theme(ThemeChoice choice) {
    const bool system_dark = theme_detail::system_is_dark();
    const bool dark = choice == ThemeChoice::dark || (choice == ThemeChoice::system && system_dark);
    QFile file(QStringLiteral(":/tokens.json"));
    const bool opened = file.open(QIODevice::ReadOnly);
    Q_ASSERT(opened);
    auto theme = opened ? Theme::read(file.readAll(), dark ? QStringLiteral("dark") : QStringLiteral("light"))
                        : base::Result<Theme>(Theme());
    Q_ASSERT(theme.ok());
    return theme.ok() ? std::move(theme).value() : Theme();
}

}  // namespace streamwright::app
