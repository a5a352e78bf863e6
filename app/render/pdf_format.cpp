#include "app/render/pdf_format.h"

#include "app/render/paint_fragment.h"
#include "app/render/table_pages.h"

#include <QBuffer>
#include <QHashSeed>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>

#include <algorithm>

namespace streamwright::app {

namespace pdf_format_detail {

constexpr int dots_per_inch = 1200;
constexpr double dots_per_mm = dots_per_inch / 25.4;

std::vector<deliver::PagePart> pages_of(const deliver::Content& content, const deliver::Stamp& stamp) {
    std::vector<deliver::PagePart> pages;
    for (const auto& part : content.parts) {
        if (const auto* page = std::get_if<deliver::PagePart>(&part)) {
            pages.push_back(*page);
        } else {
            auto set = table_pages(std::get<deliver::TablePart>(part), stamp);
            std::move(set.begin(), set.end(), std::back_inserter(pages));
        }
    }
    return pages;
}

QPageLayout layout_of(const deliver::PagePart& page) {
    const QSizeF size(static_cast<double>(page.width.count()) / 1000.0,
                      static_cast<double>(page.height.count()) / 1000.0);
    return {QPageSize(size, QPageSize::Millimeter, QString(), QPageSize::ExactMatch), QPageLayout::Portrait,
            QMarginsF(0, 0, 0, 0)};
}

/// The writer stamps the time of day; a fixed date of the same length keeps the cross-reference table right and makes
/// the same input give the same bytes.
void fix_date(QByteArray& bytes) {
    const QByteArray key = "/CreationDate (D:";
    const auto at = bytes.indexOf(key);
    if (at < 0) return;
    const QByteArray fixed = "20000101000000";
    bytes.replace(at + key.size(), fixed.size(), fixed);
}

QByteArray paint(const std::vector<deliver::PagePart>& pages, const QString& title) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(dots_per_inch);
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Streamwright"));
    writer.setPageLayout(layout_of(pages.front()));
    QPainter painter(&writer);
    const PaperStyle style;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        if (i > 0) {
            writer.setPageLayout(layout_of(pages[i]));
            writer.newPage();
        }
        painter.resetTransform();
        painter.scale(dots_per_mm, dots_per_mm);
        for (const auto& fragment : pages[i].fragments) paint_fragment(painter, fragment, style);
    }
    painter.end();
    fix_date(bytes);
    return bytes;
}

base::Result<std::vector<deliver::OutputFile>> write(std::span<const deliver::Content> contents,
                                                     const deliver::Stamp& stamp) {
    std::vector<deliver::OutputFile> files;
    // Qt orders fonts in the file by hash; a fixed seed keeps that order. The zone is written with the date; UTC keeps
    // its length.
    QHashSeed::setDeterministicGlobalSeed();
    qputenv("TZ", "UTC");
    for (const auto& content : contents) {
        const auto pages = pages_of(content, stamp);
        if (pages.empty()) continue;
        const auto bytes = paint(pages, QString::fromStdString(content.title));
        files.push_back({content.name + ".pdf", bytes.toStdString()});
    }
    return files;
}

}  // namespace pdf_format_detail

deliver::Format pdf_format() { return {"pdf", false, pdf_format_detail::write}; }

}  // namespace streamwright::app
