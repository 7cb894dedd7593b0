// Package parts holds the widgets of our own that the screens are made of.
//
// A part is told what to show by Set with a plain comparable view; an equal
// view costs nothing. It draws itself with a [Pen] from few primitives and
// asks the theme for its colours each time. It knows nothing of the model:
// every string in a view is finished.
//
// A touch is a tap as long as the finger stays within 12 px of where it came
// down; past that it scrolls what it is in. No part takes the keyboard focus,
// because a focused part swallows the runes of a scanner; [Cursor] gives the
// arrow keys instead.
//
// Text is wrapped by us and is never cut in silence: a part that had to cut
// says so in Cut, and [Cuts] collects it from a whole screen.
package parts
