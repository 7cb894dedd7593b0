package ui

import (
	"fmt"
	"slices"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// nothing is the screen while no search is open: what was missed in this scene
// and what came of it, and the two ways to miss a piece, by its letters and by
// eyes.
func (l *lookforScreen) nothing(hunts []hunt, reply parts.StripView, said bool) []node {
	n := l.n
	v := leadView{id: "empty", title: words.L("Nothing is being looked for"), under: words.L("A count that comes out short, or an empty slot that nobody logged, opens a search here by itself: what the piece looks like, where it was last, and where to look, the best place first.")}
	kids := []node{{id: "empty", view: v}}
	story := n.missedStory()
	if len(hunts) > 0 || len(story) > 0 {
		kids[0].size = 140
	}
	if len(hunts) > 0 {
		lost := l.list(hunts, hunt{line: -1})
		v := lost.view.(listOf)
		v.panel = parts.PanelView{ID: "hunts", Title: words.L("Given up as lost; touch one that turned up"), Rule: true}
		lost.view = v
		if len(story) > 0 {
			lost.size = float32(min(len(hunts), 3))*(look.Floor+look.Gap) + 60
		}
		kids = append(kids, lost)
	}
	if len(story) > 0 && (len(hunts) == 0 || l.room() > 500) {
		kids = append(kids, node{id: "story", view: listOf{panel: parts.PanelView{ID: "story", Title: words.L("Missed in this scene"), Rule: true}, gap: 4}, kids: story})
	}
	kids = append(kids, row(104,
		keyNode(parts.KeyView{ID: "to-find", Title: words.L("Where is a piece?"), Second: words.L("three letters: where the log has it"), Icon: "find", Lay: parts.LayLeft}),
		keyNode(parts.KeyView{ID: "to-slots", Title: words.L("Look at every slot"), Second: words.L("the log may not know all"), Icon: "glance", Lay: parts.LayLeft})))
	if said {
		kids = append(kids, sized(node{id: "reply", view: reply}, look.Floor))
	}
	return kids
}

// missedStory is what was missed in this scene, found again or given up, the
// last first.
func (n *now) missedStory() (rows []node) {
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		said := n.missedLine(e)
		if !e.Taken() || e.Scene != n.scene.ID || said == "" {
			continue
		}
		v := parts.RowView{ID: "missed", Title: said, Right: n.clock(e.At()), Off: true}
		if e.By != "" {
			v.Right += ", " + n.memberName(e.By)
		}
		rows = append(rows, row(52, node{id: fmt.Sprint("missed-", i), view: v}))
	}
	slices.Reverse(rows)
	return rows
}

// missedLine says what an entry did to what is missing; "" for nothing.
func (n *now) missedLine(e *model.Entry) string {
	for _, m := range e.Moves {
		it := n.d.Item(m.Item)
		if it == nil {
			continue
		}
		what := some(it, m.N)
		switch {
		case m.To.Kind == model.Lost:
			return words.F("Given up: %s", what)
		case m.To.Kind == model.Unexplained:
			return words.F("Missed: %s", what)
		case m.From.Kind == model.Unexplained || m.From.Kind == model.Lost:
			where, _ := n.whereWord(m.To)
			return words.F("Found: %s, %s", what, where)
		}
	}
	return ""
}
