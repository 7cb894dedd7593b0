package parts

import (
	"slices"

	"fyne.io/fyne/v2"
)

// showing visits what can be touched in a canvas just now, parents first.
func showing(c fyne.Canvas, visit func(o fyne.CanvasObject, seen rect)) {
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	walk(root, fyne.Position{}, rectOf(fyne.Position{}, c.Size()), func(o fyne.CanvasObject, seen rect) {
		if !seen.empty() {
			visit(o, seen)
		}
	})
}

// OpenPads finds the pads that are on screen in a canvas; nil for none.
func OpenPads(c fyne.Canvas) (letters *LetterPad, digits *DigitPad) {
	showing(c, func(o fyne.CanvasObject, _ rect) {
		switch p := o.(type) {
		case *LetterPad:
			letters = p
		case *DigitPad:
			digits = p
		}
	})
	return letters, digits
}

// Press does what a tap on the first of some acts would that is on screen,
// and says whether one was.
func Press(c fyne.Canvas, ids ...string) bool {
	best, at := activates(nil), len(ids)
	showing(c, func(o fyne.CanvasObject, _ rect) {
		a, ok := o.(activates)
		l, listed := o.(lister)
		if !ok || !listed || l.Part().Kind != KindAct {
			return
		}
		if k := slices.Index(ids, l.Part().ID); k >= 0 && k < at {
			best, at = a, k
		}
	})
	if best == nil {
		return false
	}
	best.Activate()
	return true
}

// Type writes a character as a key of the pad would.
func (l *LetterPad) Type(r rune) { l.typed(string(r)) }

// Press does what a tap on a key of the pad would: "0" to "9", "delete",
// "done".
func (d *DigitPad) Press(id string) {
	for _, k := range d.keys {
		if k.view.ID == id {
			k.Activate()
		}
	}
}
