package ui

import (
	"cmp"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// rigLeaving opens the release of the rig that is called away most likely.
func (sh *Shell) rigLeaving() {
	if rig := sh.now().calledAway(); rig != "" {
		sh.open(newRelease(sh, rig))
	}
}

// turn turns the screen to another rig. Its own split is as it was left; a
// signature that was begun for the one before is not carried over.
func (r *releaseScreen) turn(rig string) {
	if rig != r.rig {
		r.rig = rig
		r.signer.chosen, r.accept.chosen = "", ""
		r.hold.Disarm()
	}
	r.sh.away, r.sh.said = rig, nil
	r.sh.refresh()
}

// head is the rig that goes, and the others as tabs.
func (r *releaseScreen) head(n *now, v *releaseView) head {
	h := head{title: words.F("%s leaving now", v.Name), mark: n.mark(r.rig), back: true}
	lines := words.N("%d line", "%d lines", v.LinesOut)
	h.sentence = words.F("%s, %s out", lines, words.N("%d piece", "%d pieces", v.PiecesOut))
	says := parts.Or(words.F("leaving now: %s", h.sentence), words.F("leaving: %s", lines), words.L("leaving"))
	switch {
	case v.Left:
		h.title = words.F("%s has left", v.Name)
		says = parts.Or(words.F("has left: %s", h.sentence), words.L("has left"))
	case v.Released > 0:
		signed := words.F("signed %s by %s", n.clock(v.Released), v.ReleasedBy)
		says = parts.Or(signed+": "+h.sentence, signed, words.F("signed %s", n.clock(v.Released)))
		h.sentence = capital(signed) + ": " + h.sentence
	case len(v.Rows) == 0:
		h.sentence = words.L("Nothing of it is out here")
		says = parts.Or(words.F("leaving now: %s", low(h.sentence)), words.L("leaving"))
	}
	wide := n.headRoom() - backRoom
	aloud := parts.KeyView{ID: "read-aloud", Title: words.L("Read\naloud"), Icon: "say"}
	if !n.narrow() { // else it stands beside the sentence that it reads
		aloud.Tone = parts.Header
		h.middle, h.widths = []fyne.CanvasObject{r.aloud}, []float32{aloudWide}
		wide -= aloudWide + look.Gap
	}
	r.aloud.Set(aloud)
	r.tabs.into(&h, n, r.rig, wide, func(rig string) parts.RigTabView {
		if rig == r.rig {
			return parts.RigTabView{Name: v.Name, Count: says}
		}
		return n.releaseTab(rig)
	})
	return h
}

const ( // design pixels
	backRoom  = 128 // of the key that leads back
	aloudWide = 128
)

// releaseTab is a rig that could go instead: whether it is signed for or has
// left already, else how many lines it would have to see to.
func (n *now) releaseTab(rig string) parts.RigTabView {
	v := releaseView{Rig: rig}
	n.signed(&v)
	t := parts.RigTabView{Name: rig}
	switch {
	case v.Left:
		t.Count, t.Icon, t.State = parts.Or(words.L("has left"), ""), "leave", "left"
	case v.Released > 0:
		t.Count, t.Icon, t.State = parts.Or(words.L("signed"), ""), "tick", "signed"
	default:
		k := len(n.s.Leaving(rig))
		t.Count = parts.Or(words.N("%d line", "%d lines", k), fmt.Sprint(k))
	}
	return t
}

// splitOf is what was chosen for a rig on this tablet, since it came.
func (n *now) splitOf(rig string) *split {
	stay := n.scene.ID
	for i := range n.pic.Entries {
		if e := &n.pic.Entries[i]; e.Verb == model.Arrive && e.Rig == rig && e.Taken() {
			stay = n.scene.ID + " " + e.ID.String()
		}
	}
	s := n.splits[rig]
	if s == nil || s.stay != stay {
		s = &split{grab: map[string]int{}, stay: stay}
		n.splits[rig] = s
	}
	return s
}

// calledAway is the rig that is called away most likely: the one that was
// spoken of so last on this tablet, else one that is signed for and has not
// left; else the one that the least keeps here. The rig that the tablet
// belongs to stays with its tarp, and a rig with nothing out needs no split.
func (n *now) calledAway() string {
	var here []string
	for _, r := range n.present() {
		if n.atScene(r) {
			here = append(here, r)
		}
	}
	if len(here) == 0 {
		here = n.present()
	}
	if len(here) == 0 || slices.Contains(here, n.away) {
		return n.away
	}
	own := ""
	if m := n.d.Member(n.by); m != nil {
		own = m.Rig
	}
	ties := func(rig string) int {
		v := releaseView{Rig: rig}
		a := n.account(rig)
		off := a.CameOff - a.Home
		switch n.signed(&v); {
		case v.Released > 0:
			return -1
		case rig == own:
			return 1 << 30
		case off == 0:
			return 1 << 20
		}
		return off
	}
	return slices.MinFunc(here, func(a, b string) int { return cmp.Compare(ties(a), ties(b)) })
}
