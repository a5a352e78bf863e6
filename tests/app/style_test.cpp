// The look is data: both themes of the tokens are whole, and the face is the bundled one, on screen and measured.
#include "app/style/bundled_font.h"
#include "app/style/theme.h"
#include "core/layout/text_width.h"

#include <QFile>
#include <QFont>
#include <QFontInfo>
#include <QFontMetricsF>

#include <gtest/gtest.h>

namespace streamwright::test::style {

TEST(Style, TheFaceIsB612) {
    EXPECT_EQ(QFontInfo(QFont()).family(), "B612");
    QFont bold("B612");
    bold.setBold(true);
    EXPECT_EQ(QFontInfo(bold).family(), "B612");
    EXPECT_TRUE(QFontInfo(bold).bold());
}

TEST(Style, CoreMeasuresAsQtPaints) {
    // Qt reads the font file by itself; the advance table in core must agree with it to a hundredth.
    for (const bool is_bold : {false, true}) {
        QFont font("B612");
        font.setPixelSize(1000);
        font.setBold(is_bold);
        font.setStyleStrategy(QFont::PreferNoShaping);
        font.setHintingPreference(QFont::PreferNoHinting);
        for (const char* text : {"ENC-201", "HDMI in", "111.5 m", "efficient office AVAV"}) {
            const double qt = QFontMetricsF(font).horizontalAdvance(QString::fromLatin1(text));
            const auto weight = is_bold ? layout::Weight::bold : layout::Weight::normal;
            const auto ours = layout::text_width(text, base::Length::from_count(1'000'000), weight);
            EXPECT_NEAR(static_cast<double>(ours.count()) / 1000.0, qt, qt / 100) << text;
        }
    }
}

TEST(Style, BothThemesHaveEveryColour) {
    QFile file(":/tokens.json");
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const auto tokens = file.readAll();
    for (const char* name : {"light", "dark"}) {
        const auto theme = app::Theme::read(tokens, name);
        ASSERT_TRUE(theme.ok()) << theme.error().english();
        for (int i = 0; i < 8; ++i) {
            const auto signal = static_cast<catalogue::Signal>(i);
            EXPECT_TRUE(theme->signal(signal).isValid());
            EXPECT_NE(theme->signal(signal), theme->on_signal(signal));
        }
        for (const auto severity : {analysis::Severity::error, analysis::Severity::warning, analysis::Severity::advice})
            EXPECT_NE(theme->severity(severity), theme->on_severity(severity));
    }
}

TEST(Style, BrokenTokensAreRefusedInWords) {
    EXPECT_FALSE(app::Theme::read("{", "light").ok());
    EXPECT_FALSE(app::Theme::read("{\"themes\": {}}", "light").ok());
    EXPECT_FALSE(app::Theme::read(R"({"themes": {"light": {"ground": {"canvas": "no colour"}}}})", "light").ok());
}

}  // namespace streamwright::test::style
