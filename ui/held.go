package ui

import (
	"slices"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// unlessHeld does acts, but asks before one that moves a held piece. Left as
// it lies, the rest of the acts are done without it.
func (sh *Shell) unlessHeld(acts []model.Act, do func(acts []model.Act)) {
	n := sh.now()
	for _, a := range acts {
		if e := n.heldBy(a.Item); e != nil && a.To != "" && a.From != a.To {
			sh.open(newHeld(sh, e, acts, do))
			return
		}
	}
	do(acts)
}

// newHeld asks about a held piece that acts would move.
func newHeld(sh *Shell, e *model.Entry, acts []model.Act, do func(acts []model.Act)) *rowList {
	freed := func() {
		sh.log(board.Tap{Acts: []model.Act{{Verb: model.Note, Item: e.Item, Quantity: model.Blank, Reading: noteFreed}}})
		sh.back()
		sh.unlessHeld(acts, do)
	}
	leave := func() {
		sh.back()
		if rest := slices.DeleteFunc(slices.Clone(acts), func(a model.Act) bool { return a.Item == e.Item }); len(rest) > 0 {
			sh.unlessHeld(rest, do)
		}
	}
	rows := func(*now) []rowDo {
		return []rowDo{
			{parts.RowView{ID: "leave-it", Title: words.L("Leave it"), Second: words.L("nothing is logged of it"), Tone: parts.Quiet, Go: "go"}, leave},
			{parts.RowView{ID: "freed", Title: words.L("Freed"), Second: words.L("somebody was asked: it may be moved"), Tone: parts.Quiet, Go: "go"}, freed},
		}
	}
	return newRowList(words.F("%s: ask first", capital(sh.now().itemName(e.Item))), words.L("It is held as it lies"), rows,
		func(n *now) (string, string) { return words.F("Held at %s", n.clock(e.At())), e.Note })
}
