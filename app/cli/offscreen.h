// A Qt application without a display, for verbs that paint: fonts are loaded, no window system is asked.
#pragma once

#include <memory>

class QGuiApplication;

namespace streamwright::app {

class OffscreenApplication {
public:
    OffscreenApplication();
    ~OffscreenApplication();
    OffscreenApplication(const OffscreenApplication&) = delete;
    OffscreenApplication& operator=(const OffscreenApplication&) = delete;

private:
    std::unique_ptr<QGuiApplication> application_;  // null where one is already running
};

}  // namespace streamwright::app
