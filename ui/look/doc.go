// Package look is how the window looks: the colours of night and day, the
// scale of type, hand sizes in millimetres, the icons and the owner marks.
//
// Three rules. One accent and one alarm, and the alarm always comes with a
// word and a shape. The owner colours live only inside the owner marks, so no
// colour on a tile or a column is a code. Sizes are hand sizes: they follow
// the millimetres of the glass, not the pixels.
package look
