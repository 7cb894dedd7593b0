package ui

import (
	litter "tarpside/model/trail"
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
