package ui

import (
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// newSlotPage is one slot: what belongs in it and where that is now, and a key
// for the rig's slot sheets on paper. A scanned slot label opens it.
func newSlotPage(sh *Shell, id string) screen {
	n := sh.now()
	slot := n.d.Slot(id)
	var l *lineList
	l = newLineList(sh, n.slotName(id), "", func(n *now) (out []int) {
		home, lines := 0, 0
		for i := range n.d.Items {
			if it := &n.d.Items[i]; it.Kit == "" && it.Slot == id {
				out = append(append(out, i), n.insideOf(i)...)
				lines++
				if n.s.Out(i) == 0 {
					home++
				}
			}
		}
		l.sentence = words.F("Slot %s: %d of %d lines all here", id, home, lines)
		if lines == 0 {
			l.sentence = words.F("Slot %s: nothing lives here", id)
		}
		return out
	})
	l.mark = n.mark(slot.Rig)
	l.paper = parts.NewKey(parts.KeyView{ID: "paper", Title: words.L("Paper"), Icon: "paper", Tone: parts.Header}, func() { sh.onPaper("slots_" + slot.Rig) })
	return l
}
