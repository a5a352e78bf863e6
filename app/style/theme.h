// The colours of one theme, read from tokens.json, so that the visual language stays data.
#pragma once

#include "core/analysis/finding.h"
#include "core/base/result.h"
#include "core/catalogue/port_type.h"

#include <QColor>
#include <QMap>
#include <QString>

namespace streamwright::app {

enum class ThemeChoice { system, light, dark };

/// A colour by its group and name in the tokens ("ground", "canvas").
class Theme {
public:
    /// Reads one theme ("light", "dark") of the tokens' text; refuses in words what is not there.
    static base::Result<Theme> read(const QByteArray& tokens, const QString& name);

    const QString& name() const { return name_; }
    bool dark() const { return name_ == QLatin1String("dark"); }
    /// A name that the tokens lack is our own mistake, so it is asserted.
    QColor colour(const char* group, const char* name) const;

    QColor ground(const char* which) const { return colour("ground", which); }
    QColor text(const char* which = "ink") const { return colour("text", which); }
    QColor rule(const char* which) const { return colour("rule", which); }
    QColor signal(catalogue::Signal signal) const;
    QColor on_signal(catalogue::Signal signal) const;
    QColor severity(analysis::Severity severity) const;
    QColor on_severity(analysis::Severity severity) const;
    QColor severity_edge(analysis::Severity severity) const;

private:
    QString name_;
    QMap<QString, QColor> colours_;  // "group/name"
};

/// The theme of the bundled tokens. `system` follows the palette that the platform hands to the program.
Theme bundled_theme(ThemeChoice choice);

}  // namespace streamwright::app
