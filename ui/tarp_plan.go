package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// plan is how the left side of the Tarp shares its height. The panel comes
// first; what it does not need goes to the doors of the rig, then to the
// pieces that went out last. A full tarp leaves room for what is asked next
// alone: the doors are then behind the tab of the rig.
type plan struct {
	doors bool // the row of doors
	twice bool // a second row: what went out last, or while nothing did, more of what is asked next
	gone  bool // the second row is of what went out last
	more  int  // so many rows more of what is asked next
}

// The heights of the pieces asked next and of those that went out last, in
// design pixels. On a small glass those on the panel are as low: it has another
// row then.
const (
	nextHigh = 104
	lowHigh  = 102
)

// tight tells whether the glass is small.
func (t *tarpScreen) tight() bool { return t.root != nil && t.root.Size().Width < look.U(1000) }

// rowHigh is the height of a row below the panel, and labelHigh that of its
// heading, in pixels.
func (t *tarpScreen) rowHigh() float32 {
	high := float32(nextHigh)
	if t.tight() {
		high = lowHigh
	}
	return look.U(high * look.Current().Options().Text)
}

func labelHigh() float32 { return look.Body.Size() * 1.36 }

// tileHigh is the height of a piece on the panel, in pixels.
func (t *tarpScreen) tileHigh() float32 {
	if t.tight() {
		return min(look.TileSize().Height, t.rowHigh())
	}
	return look.TileSize().Height
}

// leastHigh is how low a piece on the panel may be for another row, in pixels:
// two lines of its name and whose it is.
func leastHigh() float32 { return look.U(96 * look.Current().Options().Text) }

// tileOf makes the size of a tile of one of the heights.
func tileOf(high func() float32) func() fyne.Size {
	return func() fyne.Size { return fyne.NewSize(look.TileSize().Width, high()) }
}

// doorsHigh is the height of the doors, in pixels: over an open one, and on a
// small glass always, as low as may be, so that the panel has another row.
func (t *tarpScreen) doorsHigh() float32 {
	if t.door == "" && !t.tight() {
		return t.rowHigh()
	}
	return look.U(look.Floor * (1 + (look.Current().Options().Text-1)/2))
}

// pickedHigh is the height of what is picked, in pixels: a line of words and
// the handfuls under it, as high as a hand.
func (t *tarpScreen) pickedHigh() float32 {
	return max(t.rowHigh(), labelHigh()+look.U(look.Target+8))
}

// planFor shares a height among the rows, for a panel with so many tiles.
func (t *tarpScreen) planFor(size fyne.Size, tiles int) plan {
	gap, tile := look.U(look.Gap), fyne.NewSize(look.TileSize().Width, t.tileHigh())
	wide := size.Width - t.placesWide(size.Height) - gap - 2*look.U(14)
	cols := max(1, int((wide+gap)/(tile.Width+gap)))
	rows := float32(max(1, (tiles+cols-1)/cols))
	panel := labelHigh()*1.1 + look.U(14) + rows*(tile.Height+gap)
	left := size.Height - look.U(look.Floor) - gap - panel - t.rowHigh() - labelHigh()
	var p plan
	if need := t.doorsHigh() + gap; left >= need {
		p.doors, left = true, left-need
	}
	p.twice = p.doors && left >= t.rowHigh()+labelHigh()
	p.gone = p.twice && t.out > 0
	if p.twice {
		left -= t.rowHigh() + labelHigh()
		p.more = min(int(left/(t.rowHigh()+gap)), (t.nexts+cols-1)/cols-1)
		if !p.gone {
			p.more = min(p.more, (t.nexts+cols-1)/cols-2)
		}
		p.more = max(p.more, 0)
	}
	return p
}

func (t *tarpScreen) layout(size fyne.Size) {
	gap := look.U(look.Gap)
	if t.find.on {
		t.find.layout(size.Width, size.Height)
		return
	}
	wide := t.placesWide(size.Height)
	flush(t.keys, size.Width-wide, 0, wide, size.Height)
	w := size.Width - wide - gap
	y := size.Height - look.U(look.Floor)
	t.layStrip(w, y)
	y -= gap // the foot of the next row above
	if t.number.on {
		place(t.number.Container, 0, 0, w, y)
		return
	}
	picked := len(t.picks) > 0
	p := t.planFor(size, t.onPanel)
	if t.door != "" {
		y = t.layDoorKeys(w, y, picked)
		place(t.panel, 0, 0, w, y)
		return
	}
	t.doors.Hidden, t.gone.Hidden = !p.doors, !p.gone || picked
	t.went.Hidden = t.gone.Hidden
	if p.doors {
		y -= t.doorsHigh()
		place(t.doors, 0, y, w, t.doorsHigh())
		y -= gap
	}
	inset, rowH, labelH := look.U(14), t.rowHigh(), labelHigh()
	more := float32(p.more) * (rowH + gap)
	rest := func(row, label fyne.CanvasObject, high float32) {
		place(row, inset-gap/2, y-high-gap/2, w-2*inset+gap, high+gap) // half a gap of a grid's own lies round it
		place(label, inset+look.U(10), y-high-labelH, w-2*inset, labelH)
		y -= high + labelH
	}
	switch {
	case picked:
		high := max(rowH+labelH-look.U(6), t.pickedHigh())
		place(t.hand.Container, 0, y-high, w, high)
		y -= high + look.U(6)
		if p.twice {
			rest(t.next, t.asked, rowH+more)
		}
	case p.gone:
		rest(t.gone, t.went, rowH)
		rest(t.next, t.asked, rowH+more)
	case p.twice:
		rest(t.next, t.asked, 2*rowH+gap+more)
	default:
		rest(t.next, t.asked, rowH)
	}
	place(t.panel, 0, 0, w, y-look.U(2))
	x := look.U(14) + look.TileSize().Width*1.2 // beside Find, which stands alone
	place(t.empty, x, labelHigh()*1.1+look.U(8), w-x-inset, t.tileHigh())
}

// aided tells whether the keys for what is picked stand beside the strip: not
// while it asks something, which takes all the room.
func (t *tarpScreen) aided() bool { return len(t.picks) > 0 && t.ask == nil }

// layStrip puts the strip, Undo and, beside picked pieces, their keys at the
// foot.
func (t *tarpScreen) layStrip(w, y float32) {
	gap, high := look.U(look.Gap), look.U(look.Floor)
	undoW, aidW := look.U(168), look.U(112)
	if w < look.U(800) {
		undoW, aidW = look.U(124), look.U(96)
	}
	stripW := w - undoW - gap
	if t.aided() {
		stripW -= (aidW + gap) * float32(len(t.aids))
		for i, k := range t.aids {
			place(k, stripW+gap+float32(i)*(aidW+gap), y, aidW, high)
		}
	}
	place(t.strip, 0, y, stripW, high)
	place(t.undo, w-undoW, y, undoW, high)
}

// layDoorKeys puts the doors, or what is picked, over the strip while a door
// is open, and returns where the panel ends.
func (t *tarpScreen) layDoorKeys(w, y float32, picked bool) float32 {
	t.doors.Hidden = picked
	high := t.doorsHigh()
	if picked {
		high = t.pickedHigh()
		place(t.hand.Container, 0, y-high, w, high)
	} else {
		place(t.doors, 0, y-high, w, high)
	}
	return y - high - look.U(look.Gap)
}
