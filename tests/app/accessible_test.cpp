// The canvas for screen readers: a child per device, port, cable and badge, with name, role, place and state.
#include "tests/app/window_rig.h"

#include <QAccessible>

#include <gtest/gtest.h>

namespace streamwright::test::accessible {

QAccessibleInterface* child_named(QAccessibleInterface& canvas, const QString& start) {
    for (int i = 0; i < canvas.childCount(); ++i)
        if (auto* child = canvas.child(i); child && child->text(QAccessible::Name).startsWith(start)) return child;
    return nullptr;
}

TEST(AccessibleCanvas, ChildrenFollowTheSheet) {
    WindowRig rig;
    rig.drop_type("tern-encoder", {80, 80});
    auto* canvas = QAccessible::queryAccessibleInterface(&rig.viewport());
    ASSERT_NE(canvas, nullptr);
    const auto& encoder = *rig.design().devices.begin();
    const auto* type = rig.design().type_of(encoder);
    const auto badges = static_cast<int>(rig.viewport().scene().badges().size());
    EXPECT_GE(badges, 1) << "an encoder without a source has a finding";
    EXPECT_EQ(canvas->childCount(), 1 + static_cast<int>(type->ports.size()) + badges);

    auto* device = child_named(*canvas, QString::fromStdString(encoder.tag));
    ASSERT_NE(device, nullptr);
    EXPECT_EQ(device->role(), QAccessible::ListItem);
    EXPECT_EQ(device->parent(), canvas);
    const auto body = app::to_mm(rig.viewport().scene().plate(encoder.id)->plate.body);
    const auto centre = rig.viewport().mapToGlobal(rig.at(body.center()));
    EXPECT_TRUE(device->rect().contains(centre));
    EXPECT_EQ(canvas->childAt(centre.x(), centre.y()), device);
    EXPECT_TRUE(device->state().selected) << "what was just placed is selected";
    rig.selection().clear();
    EXPECT_FALSE(device->state().selected);

    auto* port = child_named(*canvas, "port " + QString::fromStdString(encoder.tag) + " Network");
    ASSERT_NE(port, nullptr);
    EXPECT_EQ(port->role(), QAccessible::PushButton);
    EXPECT_TRUE(port->text(QAccessible::Name).contains("free"));
    rig.viewport().setFocus();
    rig.viewport().set_focused(app::Chosen(rig.port(encoder.tag, "net")));
    EXPECT_TRUE(port->state().focused);
    EXPECT_EQ(canvas->focusChild(), port);

    rig.document().history().undo();
    EXPECT_EQ(canvas->childCount(), 0);
    EXPECT_FALSE(device->isValid());
}

}  // namespace streamwright::test::accessible
