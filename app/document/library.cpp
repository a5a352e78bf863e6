#include "app/document/library.h"

#include <QDirIterator>
#include <QFile>

#include <algorithm>

namespace streamwright::app {

namespace library_detail {

template <class Type>
std::shared_ptr<const Type> by_key(const std::vector<std::shared_ptr<const Type>>& all,
                                   const decltype(Type::key)& key) {
    const auto found = std::ranges::find_if(all, [&](const auto& each) { return each->key == key; });
    return found == all.end() ? nullptr : *found;
}

template <class Type, class Read>
base::Result<std::vector<std::shared_ptr<const Type>>> read_all(const QString& folder, Read read) {
    std::vector<std::shared_ptr<const Type>> types;
    QDirIterator files(folder, {QStringLiteral("*.json")}, QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile file(files.next());
        if (!file.open(QIODevice::ReadOnly))
            return base::Error{"The bundled type %1 cannot be read.", {file.fileName().toStdString()}};
        auto type = read(file.readAll().toStdString(), file.fileName().toStdString());
        if (!type) return type.error();
        types.push_back(std::make_shared<const Type>(std::move(*type)));
    }
    std::ranges::sort(types, {}, [](const auto& each) { return each->key; });
    return types;
}

}  // namespace library_detail

std::shared_ptr<const catalogue::DeviceType> Library::device(const catalogue::TypeKey& key) const {
    return library_detail::by_key(devices, key);
}

std::shared_ptr<const catalogue::CableType> Library::cable(const catalogue::CableTypeKey& key) const {
    return library_detail::by_key(cables, key);
}

Library library_of(const catalogue::Catalogue& catalogue) {
    Library library;
    for (const auto& type : catalogue.devices)
        library.devices.push_back(std::make_shared<const catalogue::DeviceType>(type));
    for (const auto& type : catalogue.cables)
        library.cables.push_back(std::make_shared<const catalogue::CableType>(type));
    return library;
}

base::Result<Library> bundled_library() {
    auto devices =
        library_detail::read_all<catalogue::DeviceType>(QStringLiteral(":/types/devices"), catalogue::read_device_type);
    if (!devices) return devices.error();
    auto cables =
        library_detail::read_all<catalogue::CableType>(QStringLiteral(":/types/cables"), catalogue::read_cable_type);
    if (!cables) return cables.error();
    return Library{std::move(*devices), std::move(*cables)};
}

}  // namespace streamwright::app
