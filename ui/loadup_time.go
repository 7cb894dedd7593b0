package ui

import (
	"fmt"

	"tarpside/model/clearup"
	"tarpside/model/sum"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// putBackTime is how long the put-back of a rig still takes, as a range: from
// this crew's own pace tonight where there is enough of it, else by the table.
// Open searches are named; they have no time.
func (n *now) putBackTime(rig string) (a sum.Answer, open []string) {
	work, lines := clearup.Left(n.s, rig)
	for _, i := range lines {
		open = append(open, low(n.d.Items[i].Short()))
	}
	var done []clearup.Done
	for i := range n.pic.Entries {
		if it := n.d.Item(n.pic.Entries[i].Item); it != nil && it.Rig == rig {
			done = append(done, clearup.Stows(n.s, n.pic.Entries[i:i+1], n.scene.ID)...)
		}
	}
	people := n.putBackCrew(rig)
	return clearup.Time(work, people, done, open), open
}

// putBackCrew is how many put back: the figure of the settings, else the
// members of the rig.
func (n *now) putBackCrew(rig string) int {
	if k := n.sumSettings().crew; k > 0 {
		return k
	}
	k := 0
	for _, m := range n.d.Members {
		if m.Rig == rig {
			k++
		}
	}
	return max(k, 1)
}

// roughly says what is left to do: minutes, and searches, which have no time.
func (n *now) roughly(rig string, narrow bool) string {
	a, open := n.putBackTime(rig)
	out := words.Said(sum.Span(a.Low, a.High))
	switch {
	case a.Value == 0 && narrow:
		out = words.L("none to load")
	case a.Value == 0:
		out = words.L("nothing of it lies out")
	case len(open) == 0:
		out = parts.Or(words.F("about %s", out), out)
	}
	switch {
	case narrow: // no room: the foot counts what is unexplained, and the page of the time names it
	case len(open) == 1:
		out += words.L(" + 1 open search")
	case len(open) > 1:
		out += words.F(" + %d open searches", len(open))
	}
	return out
}

// timeWords are how the time left was got, for the page of other work.
func (n *now) timeWords(rig string) string {
	a, _ := n.putBackTime(rig)
	who := words.L("one person")
	if k := n.putBackCrew(rig); k > 1 {
		who = words.F("%d people", k)
	}
	return words.F("%s, with %s at it\n%s %s\n%s %s\n%s %s", parts.B(capital(words.Said(a.Text))), who,
		parts.B(words.L("By:")), words.Said(a.Source), parts.B(words.L("Formula:")), words.Said(a.Formula), parts.B(words.L("Limits:")), words.Said(a.Limits))
}

// workRows are what is still to be put back, as the table of the time counts it.
func workRows(w clearup.Work) (out []rowDo) {
	for _, x := range []struct {
		id         string
		n          int
		one, other string
		each       float64
	}{
		{"singles", w.Singles, words.K("single piece"), words.K("single pieces"), clearup.SingleS},
		{"kits", w.Kits, words.K("kit with its count"), words.K("kits with their counts"), clearup.KitS},
		{"pairs", w.TwoPerson, words.K("piece for two people"), words.K("pieces for two people"), clearup.TwoPersonS},
		{"tens", w.Tens, words.K("armful of ten blocks"), words.K("armfuls of ten blocks"), clearup.TenS},
	} {
		if x.n == 0 {
			continue
		}
		name := words.L(x.other)
		if x.n == 1 {
			name = words.L(x.one)
		}
		each := words.F("%g s each by the table", x.each)
		if x.id == "pairs" {
			each = words.F("%g s of each of the two by the table", x.each)
		}
		out = append(out, rowDo{view: parts.RowView{ID: "work-" + x.id, Number: fmt.Sprint(x.n), Title: name, Second: each, Off: true}})
	}
	return out
}

// newPutBackTime says how long the put-back still takes and how that was got,
// and leads to the searches that are open.
func newPutBackTime(sh *Shell, rig string) screen {
	rows := func(n *now) []rowDo {
		work, lines := clearup.Left(n.s, rig)
		out := workRows(work)
		for _, i := range lines {
			it := &n.d.Items[i]
			out = append(out, rowDo{parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: it.Short(), Second: words.L("open search, no time for it"), Tone: parts.Quiet, Icon: "look", Go: "go"},
				func() {
					sh.screens[ScreenLookFor].(*lookforScreen).chosen = hunting + " " + it.ID
					sh.Go(ScreenLookFor)
				}})
		}
		if len(lines) == 0 {
			out = append(out, rowDo{view: parts.RowView{ID: "no-search", Title: words.L("No search is open"), Off: true}})
		}
		for _, r := range n.present() {
			if r != rig {
				out = append(out, rowDo{view: parts.RowView{ID: "time-" + r, Mark: n.mark(r), Title: n.rigName(r), Right: n.roughly(r, false), Off: true}})
			}
		}
		return out
	}
	return newRowList(words.L("How long still"), words.L("A range, never a promise"), rows, func(n *now) (string, string) { return n.rigName(rig), n.timeWords(rig) })
}
