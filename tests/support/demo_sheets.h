// Lays plates on a sheet in rows and columns on a grid of 5 mm, draws room frames round them and finds the cables'
// bends.
#pragma once

#include "tests/support/demo_maker.h"

#include <string>
#include <vector>

namespace streamwright::test {

class SheetPlan {
public:
    SheetPlan(DemoMaker& maker, model::SheetId sheet) : maker_(maker), sheet_(sheet) {}

    /// One plate, upper left corner in millimetres; returns the y below it on the grid.
    int put(const std::string& tag, int x_mm, int y_mm, bool turned = false);
    /// Plates side by side at the given x, row by row; an empty tag leaves a hole. Returns the y below the last row.
    int rows(const std::vector<int>& x_mm, int y_mm, const std::vector<std::vector<std::string>>& tags, int gap_mm = 5);
    /// A frame round the named plates.
    void frame(model::RoomId room, const std::string& title, const std::vector<std::string>& tags);
    void note(int x_mm, int y_mm, const std::string& text);
    /// Stores the places, then the bends of all cables with both ends on the sheet.
    void finish();

private:
    model::Place place_of(const std::string& tag) const;

    DemoMaker& maker_;
    model::SheetId sheet_;
    std::vector<model::Place> places_;
    std::vector<model::RoomFrame> frames_;
    std::vector<model::Note> notes_;
};

}  // namespace streamwright::test
