package ui

import (
	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// partyPlace is the place of the scene that the party's pieces go to.
const partyPlace = "Trail"

// load takes up what was chosen for the scene that is worked on.
func (t *trailScreen) load(n *now) {
	if t.scene != nil && *t.scene == n.scene.ID {
		return
	}
	id := n.scene.ID
	t.scene, t.p = &id, n.opts.Board.Party(id)
	t.rest()
}

// keep writes what was chosen: it is there again after a crash. What could not
// be kept holds until the window closes, and the strip says so.
func (t *trailScreen) keep() {
	if err := t.sh.opts.Board.SetParty(t.n.scene.ID, t.p); err != nil {
		t.sh.said = &said{trouble: inWords(err)}
	}
}

// walkerName is one who walks, in words.
func (n *now) walkerName(id string) string {
	if k, ok := litter.NoName(id); ok {
		return words.F("Helper %s", k)
	}
	return n.memberName(id)
}

// chooseList asks for the pull list where none is one for a trail.
func (t *trailScreen) chooseList() node {
	kids := []node{}
	for _, l := range t.n.pullLists() {
		kids = append(kids, sized(node{id: "list-" + l, view: parts.RowView{ID: "list-" + l, Title: l, Tone: parts.Quiet, Go: "go"}}, look.Floor))
	}
	lead := leadView{id: "empty", title: words.L("Which list?"), under: words.L("No pull list has trail or carry in its name. Touch the one to walk with.")}
	if len(kids) == 0 {
		lead.title, lead.under = words.L("No pull list"), words.L("The department's tables have none, so nothing can be proposed. Send pieces to the place Trail on the Tarp; the count works all the same.")
	}
	return col(0, sized(node{id: "empty", view: lead}, 130), node{id: "lists", view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap}, kids: kids})
}
